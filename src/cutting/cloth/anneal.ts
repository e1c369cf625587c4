import { ALL_LAID, type Decoder } from "./decoder.ts";

/** Pieces laid between two pauses, where the search may be stopped, and plans at the most. */
const LAID_BETWEEN = 6400;
const MOST_BETWEEN = 64;
/** A worse plan is taken while it loses no more than this share of the area of the cloth beyond the last. */
const FIRST_THRESHOLD = 0.004;
/**
 * In a short period no more than this part of a mean piece, in longer ones more by the root of their length: many
 * pieces need longer to cool (tried on strips of 25 to 197 pieces).
 */
const BY_PIECE = 0.1;
const SHORT_PERIOD = 1000;
/** Without a better plan in so many periods the aim is given up. */
const STALL = 3;
/** Of so few pieces each is too large a part of the cloth for the threshold: they begin in a new order instead. */
const FEW = 12;
/** Places up to which an item moves in a near exchange. */
const NEAR = 6;

/**
 * Looks for an order and choices that lay all items on the lengths set: threshold accepting (Dueck and Scheuer, Journal
 * of Computational Physics 90, 1990) on the area left over, the threshold lowered and raised again. Pauses after some
 * plans and gives their number; the end tells whether all items were laid.
 *
 * @param period plans until the threshold has sunk to nothing and begins anew
 */
export function* anneal(decoder: Decoder, draw: () => number, period: number): Generator<number, boolean> {
  const { masks } = decoder;
  const pause = Math.max(1, Math.min(MOST_BETWEEN, Math.floor(LAID_BETWEEN / masks.count)));
  const moves = new Moves(decoder, draw);
  const byPiece = (BY_PIECE * Math.sqrt(period / SHORT_PERIOD)) / masks.count;
  const threshold = Math.min(FIRST_THRESHOLD, byPiece) * masks.area;
  let current = decoder.lay(Number.POSITIVE_INFINITY);
  if (current === ALL_LAID) return true;
  if (masks.count < 2 && !moves.any) {
    yield 1;
    return false;
  }
  let best = current;
  let stale = 0;
  for (let n = 1; ; n++) {
    if (n % pause === 0) yield pause;
    if (n % period === 0 && masks.count <= FEW) {
      for (let k = 0; k < masks.count; k++) moves.make();
      current = decoder.lay(Number.POSITIVE_INFINITY);
      if (current === ALL_LAID) return true;
    }
    const sunk = 1 - (n % period) / period;
    const limit = current + threshold * sunk * sunk * draw();
    moves.make();
    const lost = decoder.lay(limit);
    if (lost === ALL_LAID) return true;
    if (lost > limit) {
      moves.unmake();
    } else {
      current = lost;
      if (current < best) {
        best = current;
        stale = 0;
      }
    }
    if (++stale > STALL * period) return false;
  }
}

/** One small change of order, choices, turns or lots, and the way back. */
class Moves {
  readonly any: boolean;
  private readonly decoder: Decoder;
  private readonly draw: () => number;
  private readonly turning: number[];
  private readonly lots: readonly (readonly number[])[];
  private undo: () => void = () => {};

  constructor(decoder: Decoder, draw: () => number) {
    this.decoder = decoder;
    this.draw = draw;
    this.turning = decoder.masks.turning;
    this.lots = decoder.lotChoices;
    this.any = this.turning.length > 0 || this.lots.length > 0;
  }

  unmake(): void {
    this.undo();
  }

  make(): void {
    const kind = this.draw();
    if (kind < 0.3) this.flip();
    else if (kind < 0.4 && this.turning.length > 0) this.turn();
    else if (kind < 0.43 && this.lots.length > 0) this.holdLot();
    else this.exchange(kind < 0.65);
  }

  private below(count: number): number {
    return Math.floor(this.draw() * count);
  }

  private flip(): void {
    const { bits, choices } = this.decoder;
    const item = this.below(bits.length);
    const before = bits[item] as number;
    bits[item] = (before + 1 + this.below(choices - 1)) % choices;
    this.undo = () => {
      bits[item] = before;
    };
  }

  private turn(): void {
    const { masks } = this.decoder;
    const place = masks.order.indexOf(this.turning[this.below(this.turning.length)] as number);
    masks.turn(place);
    this.undo = () => masks.turn(place);
  }

  private holdLot(): void {
    const { chosenLots } = this.decoder;
    const group = this.below(this.lots.length);
    const choices = this.lots[group] as readonly number[];
    const before = chosenLots[group] as number;
    chosenLots[group] = choices[this.below(choices.length)] as number;
    this.undo = () => {
      chosenLots[group] = before;
    };
  }

  private exchange(near: boolean): void {
    const { masks } = this.decoder;
    const { count, order, w, h } = masks;
    // Equal items change nothing; after some tries one such exchange does no harm.
    for (let tries = 0; ; tries++) {
      const p = this.below(count);
      const q = near ? (p + 1 + this.below(Math.min(NEAR, count - 1 || 1))) % count : this.below(count);
      const a = order[p] as number;
      const b = order[q] as number;
      if (tries < 8 && (a === b || (w[a] === w[b] && h[a] === h[b]))) continue;
      masks.swap(p, q);
      this.undo = () => masks.swap(p, q);
      return;
    }
  }
}
