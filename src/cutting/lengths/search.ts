import { chance } from "../chance.ts";
import { isProved, SAME_COST } from "../is-proved.ts";
import { barsCost, type PatternBar } from "./bar-pattern.ts";
import { dive } from "./dive.ts";
import { dualBound } from "./dual-bound.ts";
import { fillFirst } from "./fill-first.ts";
import { generatePatterns, type Pattern } from "./generate-patterns.ts";
import { layBars } from "./lay-bars.ts";
import { materialBound } from "./material-bound.ts";
import { answerOf, type LengthsAnswer, type LengthsBound, type LengthsProblem } from "./problem.ts";
import { tidyBars } from "./tidy-bars.ts";
import { tryAll } from "./try-all.ts";
import { type WholeLengths, wholeLengths } from "./whole-lengths.ts";

/** Beyond so many rows the pattern programme would take minutes: the first answer stands, with its bound. */
const MOST_ROWS = 600;
/** Dives after the first, each with other picks. */
const MORE_DIVES = 12;
/** So few cuts are at last placed in every way. */
const FEW_CUTS = 12;

/**
 * Looks for the cheapest way to cut the lengths, a step at a time: first-fit and the material bound at once, then
 * patterns with their bound, then dives to whole bars. An answer is there after each step; the same steps give the same
 * answer.
 */
export class LengthsSearch {
  readonly problem: LengthsProblem;
  readonly whole: WholeLengths;
  readonly #typeOf: number[];
  readonly #steps: Generator<void, void, void>;
  #bars: PatternBar[] | undefined;
  #cost = Number.POSITIVE_INFINITY;
  #bound: LengthsBound;
  #done = false;

  /** @throws where a length, cost or kerf is none: a bug */
  constructor(problem: LengthsProblem) {
    refuseNonsense(problem);
    this.problem = problem;
    const { whole, typeOf } = wholeLengths(problem);
    this.whole = whole;
    this.#typeOf = typeOf;
    this.#bound = { cost: materialBound(whole), by: "material" };
    const first = fillFirst(whole);
    if (first) this.#offer(first);
    this.#steps = this.#run();
    if (this.isSettled) this.#done = true;
  }

  /** Nothing more to look for: proved, impossible, or the method is at its end. */
  get done(): boolean {
    return this.#done;
  }

  /** The best plan costs no more than the bound, or there is none. */
  get isSettled(): boolean {
    return this.#bars === undefined || isProved(this.#cost, this.#bound.cost);
  }

  get cost(): number {
    return this.#cost;
  }

  get bound(): LengthsBound {
    return this.#bound;
  }

  /** One round of patterns; true while there is more to do. */
  step(): boolean {
    if (!this.#done && (this.#steps.next().done === true || this.isSettled)) this.#done = true;
    return !this.#done;
  }

  /** The best so far; `unless` it is known to be the end of the search, why that is no end. */
  answer(unless: "feasible" | "stopped" = "stopped"): LengthsAnswer {
    if (this.#bars === undefined) return tooLong(this.problem);
    const plan = layBars(this.problem, this.whole, this.#typeOf, tidyBars(this.whole, this.#bars));
    return answerOf(plan, this.#bound, this.#done ? "feasible" : unless);
  }

  /** A plan or a bound found elsewhere, in the terms of `whole`. */
  learn({ bars, bound }: { bars?: PatternBar[]; bound?: LengthsBound }): void {
    if (bars) this.#offer(bars);
    if (bound) this.#raise(bound);
  }

  #offer(bars: PatternBar[]): boolean {
    const cost = barsCost(this.whole, bars);
    if (cost < this.#cost - SAME_COST * Math.max(1, cost)) [this.#bars, this.#cost] = [bars, cost];
    return this.isSettled;
  }

  #raise(bound: LengthsBound): void {
    if (bound.cost > this.#bound.cost) this.#bound = bound;
  }

  *#run(): Generator<void, void, void> {
    const { whole } = this;
    const limited = whole.stock.filter(({ available }) => Number.isFinite(available)).length;
    if (whole.sizes.length + limited > MOST_ROWS) return;
    const pool: Pattern[] = [];
    const rest = { demand: whole.demand, available: whole.stock.map(({ available }) => available) };
    const fractions = yield* generatePatterns(whole, rest, pool);
    this.#raise({ cost: dualBound(whole, fractions.duals), by: "patterns" });
    if (this.isSettled) return;
    const offer = (bars: PatternBar[]) => this.#offer(bars);
    yield* dive({ whole, pool, pick: () => 0, offer }, fractions);
    const draw = chance(this.problem.seed);
    for (let n = 0; n < MORE_DIVES && !this.isSettled; n++) {
      const pick = (count: number) => Math.floor(draw() * Math.min(3, count));
      yield* dive({ whole, pool, pick, offer }, fractions);
    }
    if (!this.isSettled && this.problem.cuts.length <= FEW_CUTS) this.#tryAll();
  }

  /** A few cuts are placed in every way there is: that finds the best and proves it. */
  #tryAll(): void {
    const { bars, proved } = tryAll(this.whole, this.#cost);
    if (bars) this.#offer(bars);
    if (proved) this.#raise({ cost: this.#cost, by: "every-placing" });
  }
}

function tooLong({ cuts, stock }: LengthsProblem): LengthsAnswer {
  const sold = stock.filter(({ available }) => available === undefined);
  const longestStockMm = sold.reduce((most, { lengthMm }) => Math.max(most, lengthMm), 0);
  const cutIds = cuts.filter(({ lengthMm }) => lengthMm > longestStockMm).map(({ id }) => id);
  return { kind: "infeasible", reason: { kind: "longer-than-stock", cutIds, longestStockMm } };
}

function refuseNonsense({ cuts, stock, kerfMm }: LengthsProblem): void {
  for (const { lengthMm } of cuts) if (!(lengthMm > 0)) throw new Error(`invalid cut lengthMm: ${lengthMm}`);
  for (const { lengthMm, cost } of stock) {
    if (!(lengthMm > 0)) throw new Error(`invalid stock lengthMm: ${lengthMm}`);
    if (!(cost >= 0)) throw new Error(`invalid stock cost: ${cost}`);
  }
  if (!(kerfMm >= 0)) throw new Error(`invalid kerfMm: ${kerfMm}`);
}

/**
 * The cheapest plan that so many steps find; the same problem and steps give the same answer. Without steps it is
 * first-fit with the material bound.
 */
export function solveLengths(problem: LengthsProblem, steps: number): LengthsAnswer {
  const search = new LengthsSearch(problem);
  for (let n = 0; n < steps && search.step(); n++);
  return search.answer();
}
