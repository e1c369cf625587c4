import { type PatternBar, TO_MEASURE } from "./bar-pattern.ts";
import { fillFirst } from "./fill-first.ts";
import { type Fractions, generatePatterns, type Pattern } from "./generate-patterns.ts";
import type { WholeLengths } from "./whole-lengths.ts";

/** An amount this close below a whole number is that number. */
const WHOLE = 1e-5;

export interface Dive {
  whole: WholeLengths;
  pool: Pattern[];
  /** Which of the fractions, the largest first, is taken at a step. */
  pick: (count: number) => number;
  /** Called with every plan on the way; true where nothing better can come. */
  offer: (bars: PatternBar[]) => boolean;
}

/**
 * From fractions to whole bars: takes every whole part, or else one of the largest fractions, meets the rest with new
 * patterns and so on; at each depth first-fit fills what is left. Yields after each round of patterns.
 */
export function* dive({ whole, pool, pick, offer }: Dive, first?: Fractions): Generator<void, void, void> {
  const rest: Left = { demand: [...whole.demand], available: whole.stock.map(({ available }) => available) };
  const fixed: PatternBar[] = [];
  let fractions = first;
  while (rest.demand.some((count) => count > 0)) {
    fractions ??= yield* generatePatterns(whole, rest, pool);
    const before = fixed.length;
    take(fractions, rest, fixed, pick);
    fractions = undefined;
    const filled = fillFirst(whole, rest.demand, rest.available);
    if (filled && offer(fixed.concat(filled))) return;
    if (fixed.length === before || !filled) return;
  }
}

interface Left {
  demand: number[];
  available: number[];
}

/** Takes bars into `fixed`, and off the rest what they hold. */
function take({ used }: Fractions, rest: Left, fixed: PatternBar[], pick: Dive["pick"]): void {
  const real = used.filter(({ pattern }) => pattern.stock >= TO_MEASURE);
  const before = fixed.length;
  for (const { pattern, amount } of real) {
    for (let n = Math.floor(amount + WHOLE); n > 0; n--) cut(pattern, rest, fixed);
  }
  if (fixed.length > before) return;
  real.sort((a, b) => b.amount - a.amount);
  const one = real[pick(real.length)];
  if (one) cut(one.pattern, rest, fixed);
}

function cut({ stock, types, counts }: Pattern, rest: Left, fixed: PatternBar[]): void {
  const held: number[] = [];
  types.forEach((type, k) => {
    const count = Math.min(counts[k] as number, rest.demand[type] as number);
    for (let n = 0; n < count; n++) held.push(type);
    rest.demand[type] = (rest.demand[type] as number) - count;
  });
  if (held.length === 0) return;
  if (stock >= 0) rest.available[stock] = (rest.available[stock] as number) - 1;
  fixed.push({ stock, types: held });
}
