import { ALL_LAID, type Decoder } from "./decoder.ts";
import { type FitMasks, NO_FIT } from "./fit-masks.ts";

/** Changed places up to which it pays to look how far the last plan still holds. */
const MOST_CHANGED = 4;

/**
 * Straight cuts without a limit of stages, from one length of plain cloth.
 *
 * The item of the first place that fits goes into the corner of a free rectangle, but one that fills it, or one side
 * of it, goes before. Its bit says whether the cut beside it or the cut below it goes through.
 *
 * The last plan that was laid to its end is kept step by step: an order that differs a little is laid only from the
 * first step on at which it makes a difference.
 */
export class BoxDecoder implements Decoder {
  readonly masks: FitMasks;
  readonly bits: Uint8Array;
  readonly choices = 2;
  readonly chosenLots = new Int32Array(0);
  readonly lotChoices = [];
  readonly x: Int32Array;
  readonly y: Float64Array;
  readonly bolt: Int16Array;
  private readonly width: number;
  private readonly gap: number;
  private length = 0;
  /** Most steps, and most free rectangles, of a plan. */
  private readonly most: number;
  /** Free rectangles: those of the kept plan, and behind `most` those of the plan that is being laid. */
  private readonly rx: Int32Array;
  private readonly ry: Float64Array;
  private readonly rw: Int32Array;
  private readonly rh: Float64Array;
  /** The rectangle that is filled after this one; −1: none. */
  private readonly next: Int32Array;
  /** Steps, in two halves like the rectangles: which one is filled, from which place, and how well that fits. */
  private readonly filled: Int32Array;
  private readonly place: Int32Array;
  private readonly fit: Uint8Array;
  /** Before each step: area lost, and free rectangles made. */
  private readonly lostBefore: Float64Array;
  private readonly madeBefore: Int32Array;
  /** What the kept plan was laid from; a length of −1: none is kept. */
  private keptLength = -1;
  private readonly keptOrder: Int32Array;
  private readonly keptBits: Uint8Array;
  private readonly keptW: Int32Array;
  private readonly stepOf: Int32Array;
  private keptSteps = 0;
  private keptLost = 0;
  private readonly changed = new Int32Array(MOST_CHANGED);
  private changes = 0;

  /** Sizes of items and the width of the cloth hold the gap already. */
  constructor(masks: FitMasks, width: number, gap: number) {
    this.masks = masks;
    this.width = width;
    this.gap = gap;
    const { count } = masks;
    this.bits = new Uint8Array(count);
    this.x = new Int32Array(count);
    this.y = new Float64Array(count);
    this.bolt = new Int16Array(count).fill(-1);
    this.most = 2 * count + 4;
    const both = 2 * this.most;
    this.rx = new Int32Array(both);
    this.ry = new Float64Array(both);
    this.rw = new Int32Array(both);
    this.rh = new Float64Array(both);
    this.next = new Int32Array(both);
    this.filled = new Int32Array(both);
    this.place = new Int32Array(both);
    this.fit = new Uint8Array(both);
    this.lostBefore = new Float64Array(both);
    this.madeBefore = new Int32Array(both);
    this.keptOrder = new Int32Array(count);
    this.keptBits = new Uint8Array(count);
    this.keptW = new Int32Array(count);
    this.stepOf = new Int32Array(count);
  }

  setLengths(lengths: ArrayLike<number>): void {
    this.length = (lengths[0] ?? 0) + this.gap;
  }

  lay(limit: number): number {
    const { masks, bits, most, rx, ry, rw, rh, next, filled, place, fit, lostBefore, madeBefore } = this;
    const { order, w, h, count } = masks;
    const same = this.sameSteps();
    const isWhole = same === this.keptSteps && this.keptLength >= 0;
    let lost = isWhole ? this.keptLost : 0;
    if (!isWhole && same > 0) lost = lostBefore[same] as number;
    if (lost > limit) return lost;
    if (isWhole) {
      this.keep(same, same, 0, lost);
      return lost;
    }
    masks.openAll();
    let laid = 0;
    for (let step = 0; step < same; step++) {
      const taken = place[step] as number;
      if (taken < 0) continue;
      masks.close(taken);
      laid++;
    }
    let top = most;
    let made = most + 1;
    if (same > 0) {
      top = filled[same] as number;
      made = most + (madeBefore[same] as number);
    } else {
      rx[top] = 0;
      ry[top] = 0;
      rw[top] = this.width;
      rh[top] = this.length;
      next[top] = -1;
    }
    let step = most + same;
    while (top >= 0) {
      const freeW = rw[top] as number;
      const freeH = rh[top] as number;
      const taken = masks.bestFit(freeW, freeH);
      filled[step] = top;
      place[step] = taken;
      fit[step] = masks.fitFound;
      lostBefore[step] = lost;
      madeBefore[step++] = made - most;
      const at = top;
      top = next[at] as number;
      if (taken < 0) {
        lost += freeW * freeH;
        if (lost > limit) return lost;
        continue;
      }
      masks.close(taken);
      if (++laid === count) {
        lost = ALL_LAID;
        break;
      }
      const item = order[taken] as number;
      const freeX = rx[at] as number;
      const freeY = ry[at] as number;
      // The free rectangle may be without end.
      const itemW = w[item] as number;
      const itemH = h[item] as number;
      const besideW = freeW - itemW;
      const belowH = freeH - itemH;
      const isThrough = bits[item] === 0;
      // The cut that goes through leaves the larger of the two rectangles; it is filled last where it lies below.
      if (isThrough && belowH > 0) {
        rx[made] = freeX;
        ry[made] = freeY + itemH;
        rw[made] = freeW;
        rh[made] = belowH;
        next[made] = top;
        top = made++;
      }
      if (besideW > 0) {
        rx[made] = freeX + itemW;
        ry[made] = freeY;
        rw[made] = besideW;
        rh[made] = isThrough ? itemH : freeH;
        next[made] = top;
        top = made++;
      }
      if (!isThrough && belowH > 0) {
        rx[made] = freeX;
        ry[made] = freeY + itemH;
        rw[made] = itemW;
        rh[made] = belowH;
        next[made] = top;
        top = made++;
      }
    }
    this.keep(same, step - most, made - most, lost);
    return lost;
  }

  /** Steps of the kept plan that the order, turns and choices as they are now would take just so. */
  private sameSteps(): number {
    if (this.keptLength !== this.length) return 0;
    const { masks, bits, keptBits, stepOf, keptSteps, rw, rh, filled, place, fit, changed } = this;
    this.changes = 0;
    if (!this.findChanged()) return 0;
    let end = keptSteps;
    for (let item = 0; item < bits.length; item++) {
      if (bits[item] !== keptBits[item]) end = Math.min(end, stepOf[item] as number);
    }
    const { changes } = this;
    if (changes === 0) return end;
    for (let step = 0; step < end; step++) {
      const at = filled[step] as number;
      const freeW = rw[at] as number;
      const freeH = rh[at] as number;
      const taken = place[step] as number;
      const found = fit[step] as number;
      for (let k = 0; k < changes; k++) {
        const other = changed[k] as number;
        if (other === taken) return step;
        const now = masks.fitOf(masks.order[other] as number, freeW, freeH);
        if (now > found || (now === found && now !== NO_FIT && other < taken)) return step;
      }
    }
    return end;
  }

  /** Notes the places whose item is another than in the kept plan or lies otherwise; false where they are many. */
  private findChanged(): boolean {
    const { keptOrder, keptW, changed } = this;
    const { order, w, turning } = this.masks;
    const mayTurn = turning.length > 0;
    for (let at = 0; at < order.length; at++) {
      const item = order[at] as number;
      if (item === keptOrder[at] && !(mayTurn && w[item] !== keptW[item])) continue;
      if (this.changes === MOST_CHANGED) return false;
      changed[this.changes++] = at;
    }
    return true;
  }

  /** Keeps a plan that was laid to its end: the first steps are those of the last. */
  private keep(same: number, steps: number, made: number, lost: number): void {
    const { masks, most, rx, ry, rw, rh, next, filled, place, bolt, stepOf, keptOrder, keptSteps } = this;
    if (this.keptLength >= 0) {
      for (let step = same; step < keptSteps; step++) {
        const taken = place[step] as number;
        if (taken < 0) continue;
        const item = keptOrder[taken] as number;
        bolt[item] = -1;
        stepOf[item] = this.most;
      }
    } else stepOf.fill(most);
    const own = (at: number) => (at >= most ? at - most : at);
    // Of a plan that is the kept one as a whole none is made.
    const from = same > 0 ? (this.madeBefore[most + same] as number) : 0;
    for (let at = from; at < made; at++) {
      rx[at] = rx[most + at] as number;
      ry[at] = ry[most + at] as number;
      rw[at] = rw[most + at] as number;
      rh[at] = rh[most + at] as number;
      next[at] = own(next[most + at] as number);
    }
    for (let step = same; step < steps; step++) {
      const at = own(filled[most + step] as number);
      const taken = place[most + step] as number;
      filled[step] = at;
      place[step] = taken;
      this.fit[step] = this.fit[most + step] as number;
      this.lostBefore[step] = this.lostBefore[most + step] as number;
      this.madeBefore[step] = this.madeBefore[most + step] as number;
      if (taken < 0) continue;
      const item = masks.order[taken] as number;
      this.x[item] = rx[at] as number;
      this.y[item] = ry[at] as number;
      bolt[item] = 0;
      stepOf[item] = step;
    }
    keptOrder.set(masks.order);
    this.keptBits.set(this.bits);
    this.keptW.set(masks.w);
    this.keptLength = this.length;
    this.keptSteps = steps;
    this.keptLost = lost;
  }
}
