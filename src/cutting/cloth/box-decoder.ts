import { ALL_LAID, type Decoder } from "./decoder.ts";
import type { FitMasks } from "./fit-masks.ts";

/**
 * Straight cuts without a limit of stages, from one length of plain cloth.
 *
 * The item of the first place that fits goes into the corner of a free rectangle, but one that fills it, or one side
 * of it, goes before. Its bit says whether the cut beside it or the cut below it goes through.
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
  /** The free rectangles yet to be filled. */
  private readonly rx: Int32Array;
  private readonly ry: Float64Array;
  private readonly rw: Int32Array;
  private readonly rh: Float64Array;

  /** Sizes of items and the width of the cloth hold the gap already. */
  constructor(masks: FitMasks, width: number, gap: number) {
    this.masks = masks;
    this.width = width;
    this.gap = gap;
    const { count } = masks;
    this.bits = new Uint8Array(count);
    this.x = new Int32Array(count);
    this.y = new Float64Array(count);
    this.bolt = new Int16Array(count);
    const most = 2 * count + 4;
    this.rx = new Int32Array(most);
    this.ry = new Float64Array(most);
    this.rw = new Int32Array(most);
    this.rh = new Float64Array(most);
  }

  setLengths(lengths: ArrayLike<number>): void {
    this.length = (lengths[0] ?? 0) + this.gap;
  }

  lay(limit: number): number {
    const { masks, bits, x, y, bolt, rx, ry, rw, rh } = this;
    const { order, w, h, count } = masks;
    masks.openAll();
    bolt.fill(-1);
    let lost = 0;
    let laid = 0;
    let top = 1;
    rx[0] = 0;
    ry[0] = 0;
    rw[0] = this.width;
    rh[0] = this.length;
    while (top > 0) {
      top--;
      const freeW = rw[top] as number;
      const freeH = rh[top] as number;
      const place = masks.bestFit(freeW, freeH);
      if (place < 0) {
        lost += freeW * freeH;
        if (lost > limit) return lost;
        continue;
      }
      masks.close(place);
      const item = order[place] as number;
      const itemW = w[item] as number;
      const itemH = h[item] as number;
      const freeX = rx[top] as number;
      const freeY = ry[top] as number;
      x[item] = freeX;
      y[item] = freeY;
      bolt[item] = 0;
      if (++laid === count) return ALL_LAID;
      const through = bits[item] as number;
      if (through === 0) {
        if (freeH > itemH) {
          rx[top] = freeX;
          ry[top] = freeY + itemH;
          rw[top] = freeW;
          rh[top++] = freeH - itemH;
        }
        if (freeW > itemW) {
          rx[top] = freeX + itemW;
          ry[top] = freeY;
          rw[top] = freeW - itemW;
          rh[top++] = itemH;
        }
      } else {
        if (freeW > itemW) {
          rx[top] = freeX + itemW;
          ry[top] = freeY;
          rw[top] = freeW - itemW;
          rh[top++] = freeH;
        }
        if (freeH > itemH) {
          rx[top] = freeX;
          ry[top] = freeY + itemH;
          rw[top] = itemW;
          rh[top++] = freeH - itemH;
        }
      }
    }
    return lost;
  }
}
