import { type ClearStretch, clearStretches, stretchStarts } from "./clear-stretches.ts";
import { ALL_LAID, type Decoder } from "./decoder.ts";
import type { FitMasks } from "./fit-masks.ts";
import { ANY_LOT, type GridBolt, type Lattice, leadTo, modulo, type StepGrid } from "./grid.ts";

/** Items looked at for a free rectangle, those that cannot be told apart as one: on a repeat many have no place there. */
const MOST_LOOKS = 128;
/** Lengths that the item which opens a layer may choose from; on a repeat each with nearest first, or without. */
const LENGTHS = 4;
/** The same for a layer among flaws: what finds no place here finds one below them. */
const MOST_AMONG_FLAWS = 400;

/**
 * Straight cuts in stages, from several bolts, round flaws, on the repeat.
 *
 * A bolt is cut across into layers, a layer along into columns, a column across into pieces, and so on to the last
 * stage. The item of the first place that fits opens a layer, a column or a cell; on plain cloth one that fills the
 * space or a side of it goes before. On a repeat the first item may stand back, as its choice says, for the one that
 * loses least to reach its place. A layer is as long as the item that opens it, or, as that item's choice says, as
 * the item and one or two below it, or as all the cloth that is left.
 */
export class LayerDecoder implements Decoder {
  readonly masks: FitMasks;
  readonly bits: Uint8Array;
  readonly choices: number;
  readonly chosenLots: Int32Array;
  readonly lotChoices: readonly (readonly number[])[];
  readonly x: Int32Array;
  readonly y: Float64Array;
  readonly bolt: Int16Array;
  private readonly grid: StepGrid;
  /** Bolts in the order in which they are cut. */
  private readonly sequence: readonly number[];
  private readonly stages: number;
  private readonly longest: number;
  private readonly plain: boolean;
  private readonly latticed: boolean;
  private readonly lengths: Float64Array;
  private readonly lotGroup: Int32Array;
  private readonly lotOf: Int32Array;
  private readonly join: Int32Array;
  private readonly phaseX: Int32Array;
  private readonly phaseY: Int32Array;
  /** Start of each join within the repeat, −1 while none of it is laid. */
  private readonly joinStart: Float64Array;
  private readonly rx: Int32Array;
  private readonly ry: Float64Array;
  private readonly rw: Int32Array;
  private readonly rh: Float64Array;
  private readonly level: Uint8Array;
  private readonly on: Int16Array;
  private top = 0;
  private lost = 0;
  /** What the item last looked at needs before it, to lie on the repeat. */
  private leadX = 0;
  private leadY = 0;

  constructor(grid: StepGrid, masks: FitMasks, sequence: readonly number[], stages: number) {
    this.longest = grid.longestLayer;
    this.grid = grid;
    this.masks = masks;
    this.sequence = sequence;
    this.stages = stages;
    const { count } = masks;
    this.bits = new Uint8Array(count);
    this.x = new Int32Array(count);
    this.y = new Float64Array(count);
    this.bolt = new Int16Array(count);
    this.lengths = new Float64Array(grid.bolts.length);
    this.lotGroup = Int32Array.from(grid.items, (item) => item.lotGroup);
    this.lotOf = new Int32Array(grid.lotAreas.length);
    this.lotChoices = lotChoices(grid, sequence);
    this.chosenLots = Int32Array.from(this.lotChoices, (choices) => choices[0] ?? -1);
    this.join = Int32Array.from(grid.items, (item) => item.join);
    this.phaseX = Int32Array.from(grid.items, (item) => item.phaseX);
    this.phaseY = Int32Array.from(grid.items, (item) => item.phaseY);
    this.joinStart = new Float64Array(grid.joins);
    this.plain = !grid.lattice && grid.lotAreas.length === 0;
    this.latticed = grid.lattice !== undefined;
    this.choices = this.latticed ? 2 * LENGTHS : LENGTHS;
    const most = 4 * count + 4 * grid.bolts.length + 16 + grid.bolts.reduce((n, b) => n + b.flaws.length, 0);
    this.rx = new Int32Array(most);
    this.ry = new Float64Array(most);
    this.rw = new Int32Array(most);
    this.rh = new Float64Array(most);
    this.level = new Uint8Array(most);
    this.on = new Int16Array(most);
  }

  setLengths(lengths: ArrayLike<number>): void {
    for (const at of this.sequence) {
      const length = lengths[at] ?? 0;
      this.lengths[at] = length > 0 ? length + this.grid.gap : 0;
    }
  }

  lay(limit: number): number {
    this.begin();
    const { masks, rw, rh, level } = this;
    let laid = 0;
    while (this.top > 0) {
      const at = --this.top;
      const deep = level[at] as number;
      if (deep === 0 && this.flawBelow(at)) {
        if (this.layAmongFlaws(at) && ++laid === masks.count) return ALL_LAID;
      } else {
        const place = this.choose(at);
        if (place >= 0) {
          this.put(at, place);
          if (++laid === masks.count) return ALL_LAID;
          this.split(at, place);
        } else {
          this.lost += (rw[at] as number) * (rh[at] as number);
        }
      }
      if (this.lost > limit) return this.lost;
    }
    return this.lost;
  }

  private begin(): void {
    this.masks.openAll();
    this.bolt.fill(-1);
    this.lotOf.set(this.chosenLots);
    this.joinStart.fill(-1);
    this.top = 0;
    this.lost = 0;
    for (let k = this.sequence.length - 1; k >= 0; k--) {
      const at = this.sequence[k] as number;
      const length = this.lengths[at] as number;
      if (length > 0) this.push(0, 0, this.boltAt(at).w, length, 0, at);
    }
  }

  private boltAt(at: number): GridBolt {
    return this.grid.bolts[at] as GridBolt;
  }

  private push(x: number, y: number, w: number, h: number, level: number, on: number): void {
    if (w <= 0 || h <= 0) return;
    if (level >= this.stages) {
      this.lost += w * h;
      return;
    }
    const top = this.top++;
    this.rx[top] = x;
    this.ry[top] = y;
    this.rw[top] = w;
    this.rh[top] = h;
    this.level[top] = level;
    this.on[top] = on;
  }

  /** Place of the item that goes into a free rectangle, its lead set; −1 when none fits. */
  private choose(at: number): number {
    this.leadX = 0;
    this.leadY = 0;
    return this.pick(
      this.rx[at] as number,
      this.ry[at] as number,
      this.rw[at] as number,
      this.rh[at] as number,
      this.on[at] as number,
      0,
      // What opens a layer must be found wherever it stands in the order.
      this.level[at] === 0 ? Number.POSITIVE_INFINITY : MOST_LOOKS,
    );
  }

  private pick(
    x: number,
    y: number,
    w: number,
    h: number,
    on: number,
    from: number,
    mostLooks = MOST_LOOKS,
  ): number {
    const { masks } = this;
    if (this.plain) return from === 0 ? masks.bestFit(w, h) : masks.nextFit(w, h, from);
    let fallback = -1;
    let fallbackX = 0;
    let fallbackY = 0;
    let least = Number.POSITIVE_INFINITY;
    masks.skipNone();
    let place = masks.nextFit(w, h, from);
    for (let looks = 0; place >= 0 && looks < (fallback < 0 ? mostLooks : MOST_LOOKS); looks++) {
      const item = masks.order[place] as number;
      if (this.suits(item, x, y, on)) {
        const needW = this.leadX + (masks.w[item] as number);
        const needH = this.leadY + (masks.h[item] as number);
        if (needW === w && needH <= h) return place;
        if (needH === h && needW <= w) return place;
        const lost = this.leadX * h + this.leadY * w;
        if (needW <= w && needH <= h && lost < least) {
          const standsBack = fallback >= 0 || (this.bits[item] as number) >= LENGTHS;
          fallback = place;
          fallbackX = this.leadX;
          fallbackY = this.leadY;
          least = standsBack ? lost : 0;
        }
      }
      masks.skipAlike(place);
      place = masks.nextFit(w, h, place + 1);
    }
    masks.skipNone();
    this.leadX = fallbackX;
    this.leadY = fallbackY;
    return fallback;
  }

  /** Whether the item may come from this bolt; sets how far from the corner it must lie. */
  private suits(item: number, x: number, y: number, on: number): boolean {
    const group = this.lotGroup[item] as number;
    if (group >= 0) {
      const held = this.lotOf[group] as number;
      if (held >= 0 && held !== this.boltAt(on).lot) return false;
    }
    this.leadX = 0;
    this.leadY = 0;
    if (this.latticed) this.setLead(item, x, y, on);
    return true;
  }

  private setLead(item: number, x: number, y: number, on: number): void {
    const { lattice, slack } = this.grid;
    if (!lattice) return;
    const { rowY, columnX } = this.boltAt(on);
    const phaseX = this.phaseX[item] as number;
    if (phaseX >= 0) this.leadX = leadTo(phaseX + columnX - x, lattice.across, slack);
    const drop = this.dropAt(lattice, item, x + this.leadX, on);
    const phaseY = this.phaseY[item] as number;
    if (phaseY < 0) return;
    const group = this.join[item] as number;
    const start = group >= 0 ? (this.joinStart[group] as number) : 0;
    // The first panel of a join may lie anywhere; the others follow it.
    if (start >= 0) this.leadY = leadTo(start + phaseY + drop + rowY - y, lattice.along, slack);
  }

  private put(at: number, place: number): void {
    this.putAt(
      place,
      (this.rx[at] as number) + this.leadX,
      (this.ry[at] as number) + this.leadY,
      this.on[at] as number,
    );
  }

  private putAt(place: number, x: number, y: number, on: number): void {
    const { masks } = this;
    masks.close(place);
    const item = masks.order[place] as number;
    this.x[item] = x;
    this.y[item] = y;
    this.bolt[item] = on;
    const group = this.lotGroup[item] as number;
    if (group >= 0) this.lotOf[group] = this.boltAt(on).lot;
    const joined = this.join[item] as number;
    if (joined >= 0 && (this.joinStart[joined] as number) < 0) this.setJoinStart(item, joined, x, y, on);
    this.lost +=
      this.leadX * (masks.h[item] as number) + this.leadY * (this.leadX + (masks.w[item] as number));
  }

  private setJoinStart(item: number, joined: number, x: number, y: number, on: number): void {
    const { lattice } = this.grid;
    if (!lattice) return;
    const drop = this.dropAt(lattice, item, x, on);
    this.joinStart[joined] = modulo(
      y - this.boltAt(on).rowY - (this.phaseY[item] as number) - drop,
      lattice.along,
    );
  }

  /** How far on the rows begin in the column where the item lies: half a row in every second one of a half drop. */
  private dropAt(lattice: Lattice, item: number, x: number, on: number): number {
    const phaseX = this.phaseX[item] as number;
    if (!lattice.half || phaseX < 0) return 0;
    const column = Math.round((x - phaseX - this.boltAt(on).columnX) / lattice.across);
    return modulo(column, 2) === 1 ? lattice.along / 2 : 0;
  }

  /** Leaves the rest of the rectangle, and what lies beside and below the item, to be filled. */
  private split(at: number, place: number): void {
    const { masks } = this;
    const item = masks.order[place] as number;
    const x = this.rx[at] as number;
    const y = this.ry[at] as number;
    const w = this.rw[at] as number;
    const h = this.rh[at] as number;
    const deep = this.level[at] as number;
    const on = this.on[at] as number;
    const usedW = this.leadX + (masks.w[item] as number);
    const usedH = this.leadY + (masks.h[item] as number);
    if (deep & 1) {
      this.push(x + usedW, y, w - usedW, h, deep, on);
      this.push(x, y + usedH, usedW, h - usedH, deep + 1, on);
      return;
    }
    const layer = deep === 0 && this.stages > 2 ? this.layerLength(item, x, y, usedW, usedH, h, on) : usedH;
    this.push(x, y + layer, w, h - layer, deep, on);
    this.push(x + usedW, y, w - usedW, layer, deep + 1, on);
    if (layer > usedH) this.push(x, y + usedH, usedW, layer - usedH, deep + 2, on);
  }

  /** As long as the item that opens it and so many below it as its choice says; the last choice is all that is left. */
  private layerLength(
    item: number,
    x: number,
    y: number,
    usedW: number,
    usedH: number,
    h: number,
    on: number,
  ): number {
    const choice = (this.bits[item] as number) % LENGTHS;
    if (choice === 0 || h <= usedH) return usedH;
    if (choice === LENGTHS - 1) return h <= this.longest ? h : usedH;
    const { leadX, leadY } = this;
    let length = usedH;
    let from = 0;
    for (let more = 0; more < choice; more++) {
      const below = this.pick(x, y + length, usedW, h - length, on, from);
      if (below < 0) break;
      const longer = length + this.leadY + (this.masks.h[this.masks.order[below] as number] as number);
      if (longer > this.longest) break;
      length = longer;
      // Those looked at are not laid yet: the next is one of those behind them.
      from = below + 1;
    }
    this.leadX = leadX;
    this.leadY = leadY;
    return length;
  }

  private flawBelow(at: number): boolean {
    const { flaws } = this.boltAt(this.on[at] as number);
    const y = this.ry[at] as number;
    for (const flaw of flaws) if (flaw.y2 > y) return true;
    return false;
  }

  /**
   * Opens a layer where flaws lie below: the layer falls into the clear stretches beside them. Where no item fits at
   * this height, everything down to the end of the next flaw is lost. Tells whether an item was laid.
   */
  private layAmongFlaws(at: number): boolean {
    const { masks } = this;
    const y = this.ry[at] as number;
    const w = this.rw[at] as number;
    const h = this.rh[at] as number;
    const on = this.on[at] as number;
    masks.skipNone();
    let place = masks.nextFit(w, h, 0);
    for (let looks = 0; place >= 0 && looks < MOST_AMONG_FLAWS; looks++) {
      const stretch = this.stretchFor(masks.order[place] as number, y, w, h, on);
      if (stretch) {
        masks.skipNone();
        this.layInStretch(place, stretch, y, w, h, on);
        return true;
      }
      masks.skipAlike(place);
      place = masks.nextFit(w, h, place + 1);
    }
    masks.skipNone();
    const next = this.boltAt(on).flaws.reduce((end, { y2 }) => (y2 > y ? Math.min(end, y2) : end), y + h);
    this.lost += w * (next - y);
    this.push(0, next, w, y + h - next, 0, on);
    return false;
  }

  /** The first stretch beside the flaws that holds the item, its lead set. */
  private stretchFor(item: number, y: number, w: number, h: number, on: number): ClearStretch | undefined {
    const { masks } = this;
    const itemW = masks.w[item] as number;
    const itemH = masks.h[item] as number;
    const reach = y + itemH + (this.grid.lattice?.along ?? 0);
    let cleared = 0;
    let stretches: ClearStretch[] = [];
    // The lead along the bolt depends on the stretch only where the repeat has columns.
    for (const from of stretchStarts(this.boltAt(on).flaws, y, reach)) {
      if (w - from < itemW) break;
      if (!this.suits(item, from, y, on)) return undefined;
      const layer = this.leadY + itemH;
      if (layer > h) continue;
      if (layer !== cleared) {
        stretches = this.clear(y, layer, w, on);
        cleared = layer;
      }
      const stretch = stretches.find((one) => one.from === from);
      if (stretch && this.leadX + itemW <= stretch.to - from) return stretch;
    }
    return undefined;
  }

  private clear(y: number, layer: number, w: number, on: number): ClearStretch[] {
    return clearStretches(this.boltAt(on).flaws, y, layer, w, this.grid.gap);
  }

  private layInStretch(
    place: number,
    stretch: ClearStretch,
    y: number,
    w: number,
    h: number,
    on: number,
  ): void {
    const { masks } = this;
    const item = masks.order[place] as number;
    const usedW = this.leadX + (masks.w[item] as number);
    const usedH = this.leadY + (masks.h[item] as number);
    const width = stretch.to - stretch.from;
    this.putAt(place, stretch.from + this.leadX, y + this.leadY, on);
    const stages = this.stages > 2;
    const wished = stages ? this.layerLength(item, stretch.from, y, usedW, usedH, h, on) : usedH;
    const kept = this.clear(y, wished, w, on).some((s) => s.from === stretch.from && s.to === stretch.to);
    const layer = kept ? wished : usedH;
    this.push(0, y + layer, w, h - layer, 0, on);
    let clearWidth = 0;
    for (const other of this.clear(y, layer, w, on)) {
      clearWidth += other.to - other.from;
      if (other.from === stretch.from) continue;
      this.push(other.from, y, other.to - other.from, layer, 1, on);
    }
    this.push(stretch.from + usedW, y, width - usedW, layer, 1, on);
    if (layer > usedH) this.push(stretch.from, y + usedH, usedW, layer - usedH, 2, on);
    this.lost += (w - clearWidth) * layer;
  }
}

/** For each lot group the lot that it is bound to, or those with area enough for it, those with the most first. */
function lotChoices(grid: StepGrid, sequence: readonly number[]): number[][] {
  const areas = new Map<number, number>();
  for (const at of sequence) {
    const { lot, w, h } = grid.bolts[at] as GridBolt;
    areas.set(lot, (areas.get(lot) ?? 0) + w * h);
  }
  const lots = [...areas].sort((a, b) => (b[1] === a[1] ? 0 : b[1] - a[1]));
  return grid.lotAreas.map((need, group) => {
    const bound = grid.boundLots[group] ?? ANY_LOT;
    if (bound !== ANY_LOT) return [bound];
    return lots.filter(([, area]) => area >= need).map(([lot]) => lot);
  });
}
