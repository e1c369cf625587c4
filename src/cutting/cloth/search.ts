import { chance } from "../chance.ts";
import { isProved, SAME_COST } from "../is-proved.ts";
import { NEVER, type ShouldStop } from "../should-stop.ts";
import { anneal } from "./anneal.ts";
import { type DecoderSetting, MANY_STAGES, settingsFor } from "./choose-decoder.ts";
import type { Decoder } from "./decoder.ts";
import { everyWay, isSmall, largestFirst } from "./exact/every-way.ts";
import { firstPacking } from "./first-packing.ts";
import { type StepGrid, stepGridOf } from "./grid.ts";
import { layLayers } from "./lay-layers.ts";
import { layOutBolts } from "./lay-out.ts";
import { layerColumns } from "./layer-columns.ts";
import { layersOn, type PackedLayer, partOf, withLayers } from "./layers-of.ts";
import { quickBound, strictBound } from "./lower-bound.ts";
import { type Packing, packingOf, packingOfLaid } from "./packing.ts";
import { beyondAll, impossible } from "./possible.ts";
import type { Bound, ClothAnswer, ClothCutPlan, ClothProblem, LaidOnBolt } from "./problem.ts";
import { regroup } from "./regroup.ts";
import type { ClothSearching } from "./searching.ts";
import { verifyCloth } from "./verify.ts";

/** Once the least savings have failed, larger ones are tried again from here. */
const AGAIN = 0.08;
/** A round of the bound costs about as much as so many plans. */
const PLANS_PER_ROUND = 20;
/** Pieces laid one after the other, each with its bound, take as long as a plan. */
const NODES_PER_PLAN = 10;
/** A new aim saves this share of what lies between the best plan and the bound; half as much after each failure. */
const FIRST_SAVING = 0.35;
/** An aim that would save less than this share of the cost is not worth a try before the others. */
const LEAST_SAVING = 0.0005;
/** Plans in a period of the search, at first and after many failures (tried on strips of 16 to 200 pieces). */
const FIRST_PERIOD = 1000;
const PERIOD_BY_PAIRS = 16;
const LONGEST_PERIOD = 20_000;
/** From so many pieces on, and so many of each size, layers are found by a linear programme. */
const MANY_PIECES = 60;
const EQUAL_PIECES = 1.5;
/** Fewer layers than that are better searched as a whole. */
const LEAST_LAYERS = 8;
/** Plans tried in one way before the next has its turn: a few at first, so that a short search tries them all. */
const FIRST_TURN = 64;
const TURN = 1024;

/**
 * Looks for the cheapest way to cut the pieces, a few plans at a time. A plan is there from the beginning; the same
 * problem and number of plans tried give the same answer, in however many portions they are asked for.
 */
export class ClothSearch implements ClothSearching {
  readonly problem: ClothProblem;
  private readonly grid: StepGrid;
  private readonly impossible: ClothAnswer | undefined;
  private readonly steps: Generator<number, void>;
  private best: Packing | undefined;
  /** The best as its decoder laid it. */
  private laid: Packing | undefined;
  private bound: Bound = { cost: 0, which: "area" };
  private leftOver: string[] = [];
  private spent = 0;
  /** A first plan is there, or there is none to be had at once. */
  private begun = false;
  private ended = false;

  /**
   * @param known a plan of an earlier state, taken where it can still be cut and is cheaper than the first that is found
   * @throws where a measure, cost or gap is none, two pieces or bolts share an id, or two bolts are endless: a bug
   */
  constructor(problem: ClothProblem, known: readonly LaidOnBolt[] = []) {
    refuseNonsense(problem);
    this.problem = problem;
    this.grid = stepGridOf(problem);
    this.impossible = impossible(this.grid);
    this.steps = this.run();
    if (this.impossible || this.grid.items.length === 0) this.ended = true;
    else {
      this.bound = quickBound(this.grid);
      while (!this.ended && !this.begun) this.advance();
      if (known.length > 0) this.takeKnown(packingOfLaid(this.grid, known));
    }
  }

  /** Nothing more to look for. */
  get done(): boolean {
    return this.ended;
  }

  get cost(): number {
    return this.best?.cost ?? Number.POSITIVE_INFINITY;
  }

  get lowerBound(): Bound {
    return this.bound;
  }

  get evaluations(): number {
    return Math.floor(this.spent);
  }

  /** Tries about so many plans more, or fewer where it is time to stop; true while there is more to do. */
  improve(evaluations: number, shouldStop: ShouldStop = NEVER): boolean {
    const until = this.evaluations + evaluations;
    while (!this.ended && this.spent < until && !shouldStop()) this.advance();
    return !this.ended;
  }

  /** The best so far, checked. */
  answer(status: "feasible" | "stopped" = "feasible"): ClothAnswer {
    if (this.impossible) return this.impossible;
    const { problem, grid, best, bound, evaluations } = this;
    const none = beyondAll(grid, bound);
    if (none) return none;
    if (!best && grid.items.length > 0) {
      return {
        status: "not-found",
        reason: "no place was found for all pieces",
        pieceIds: this.leftOver,
        bound,
        evaluations,
      };
    }
    const cost = best?.cost ?? 0;
    const optimal = this.isSettled;
    const plan: ClothCutPlan = {
      status: optimal ? "optimal" : status,
      bolts: best ? layOutBolts(problem, grid, best) : [],
      cost,
      bound,
      gap: optimal || bound.cost <= 0 ? 0 : (cost - bound.cost) / bound.cost,
      evaluations,
    };
    const reasons = verifyCloth(problem, plan);
    return reasons.length > 0 ? { status: "withheld", reasons } : plan;
  }

  private takeKnown(packing: Packing | undefined): void {
    if (packing && packing.cost < this.cost * (1 - SAME_COST) && this.isSound(packing)) this.best = packing;
  }

  /** Keeps which pieces find no place on all the cloth there is. */
  private noteLeftOver(grid: StepGrid, decoder: Decoder): void {
    decoder.setLengths(grid.bolts.map(({ h }) => h - grid.gap));
    decoder.lay(Number.POSITIVE_INFINITY);
    const left = grid.items.flatMap(({ piece }, item) => ((decoder.bolt[item] ?? 0) < 0 ? [piece.id] : []));
    if (this.leftOver.length === 0 || left.length < this.leftOver.length) this.leftOver = left;
  }

  private get isSettled(): boolean {
    if (this.grid.items.length === 0) return true;
    return this.best !== undefined && isProved(this.cost, this.bound.cost);
  }

  private advance(): void {
    const step = this.steps.next();
    if (step.done) this.ended = true;
    else this.spent += step.value;
    if (this.isSettled) this.ended = true;
  }

  private raise(bound: Bound): void {
    if (bound.cost > this.bound.cost) this.bound = bound;
  }

  private offer(laid: Packing | undefined, { finish }: DecoderSetting): boolean {
    const packing = laid && finish(laid);
    if (!packing || packing.cost >= this.cost * (1 - SAME_COST)) return false;
    this.best = packing;
    this.laid = laid;
    return true;
  }

  private *run(): Generator<number, void> {
    const { grid } = this;
    const draw = chance(this.problem.seed);
    const settings = yield* this.tryFirst();
    this.begun = true;
    this.raise(yield* byRounds(strictBound(grid)));
    if (this.isSettled || beyondAll(grid, this.bound)) return;
    yield* this.layByColumns(settings);
    if (this.isSettled) return;
    const searchers = settings.map((setting) => this.searchWith(setting, draw));
    const [setting] = settings;
    if (setting && grid.items.length >= MANY_PIECES) searchers.unshift(this.regroupOn(setting, draw));
    if (isSmall(grid, this.stages)) searchers.unshift(this.lookEveryWay(this.stages ?? MANY_STAGES));
    // Each in turn, as long as it gains: which of them suits the pieces shows only on the way.
    for (let turn = FIRST_TURN; ; turn = Math.min(TURN, 2 * turn)) {
      for (const searcher of [...searchers]) {
        let spent = 0;
        let { cost } = this;
        while (spent < turn) {
          const step = searcher.next();
          if (step.done) {
            searchers.splice(searchers.indexOf(searcher), 1);
            if (searchers.length === 0) return;
            break;
          }
          // Nothing to do for this one as the plan lies.
          if (step.value === 0) break;
          spent += step.value;
          yield step.value;
          if (this.cost < cost) spent = 0;
          cost = this.cost;
        }
      }
    }
  }

  /**
   * A few pieces are cut in every way that may cost less: that proves the best, or finds it. Some of them alone cost no
   * more than all: the largest come first, which often prove as much.
   */
  private *lookEveryWay(stages: number): Generator<number, void> {
    const { grid } = this;
    for (const part of largestFirst(grid)) {
      const ways = everyWay(part, stages, () => this.cost);
      for (let step = ways.next(); ; step = ways.next()) {
        const { least, packing, nodes } = step.value;
        const isWhole = part === grid;
        if (isWhole && packing && packing.cost < this.cost && this.isSound(packing)) this.best = packing;
        this.raise({ cost: Math.min(least, this.cost), which: "every-way" });
        if (step.done) break;
        yield 1 + Math.floor(nodes / NODES_PER_PLAN);
      }
    }
  }

  private isSound(packing: Packing): boolean {
    const { problem, grid } = this;
    const { cost } = packing;
    const bolts = layOutBolts(problem, grid, packing);
    const plan: ClothCutPlan = { status: "feasible", bolts, cost, bound: this.bound, gap: 0, evaluations: 0 };
    return verifyCloth(problem, plan).length === 0;
  }

  private *tryFirst(): Generator<number, DecoderSetting[]> {
    const settings = settingsFor(this.problem, this.grid);
    for (const setting of settings) {
      const { decoder, grid } = setting;
      const packing = yield* this.offering(setting, firstPacking(grid, decoder, this.bound.cost));
      if (!packing) this.noteLeftOver(grid, decoder);
    }
    return settings;
  }

  /** Takes each plan on the way, and pauses after it. */
  private *offering(
    setting: DecoderSetting,
    plans: Generator<Packing | undefined, Packing | undefined>,
  ): Generator<number, Packing | undefined> {
    for (let plan = plans.next(); ; plan = plans.next()) {
      if (this.offer(plan.value, setting)) this.begun = true;
      if (plan.done) return plan.value;
      yield 1;
    }
  }

  private *searchWith(setting: DecoderSetting, draw: () => number): Generator<number, void> {
    if (!this.best) yield* this.findAny(setting, draw);
    yield* this.improveOn(setting, draw);
  }

  /** Where many pieces of the last bolt in use are equal: those in layers that a linear programme finds. */
  private *layByColumns([setting]: readonly DecoderSetting[]): Generator<number, void> {
    const stages = this.stages ?? MANY_STAGES;
    const { laid } = this;
    if (!setting || !laid || stages < 3) return;
    const { grid } = setting;
    const at = lastInUse(setting, laid);
    const bolt = at === undefined ? undefined : grid.bolts[at];
    if (at === undefined || !bolt || bolt.flaws.length > 0 || grid.lattice) return;
    const items = Array.from(laid.bolt.keys()).filter((item) => laid.bolt[item] === at);
    const part = partOf(grid, bolt, items);
    const sizes = new Set(part.items.map(({ w, h }) => `${w} ${h}`)).size;
    if (items.length < MANY_PIECES || items.length < EQUAL_PIECES * sizes) return;
    const anew = layLayers(part, stages, yield* byRounds(layerColumns(part, bolt.w)));
    // What is longer than the bolt costs more than the plan at hand, which lies on it.
    if (anew) this.offer(withLayers(grid, laid, [], { items, ...anew }), setting);
  }

  private get stages(): number | undefined {
    const { cutting } = this.problem;
    return cutting.kind === "straight" ? cutting.stages : undefined;
  }

  /** Lays pieces of a few layers anew, on the last bolt in use, where layers can be moved. */
  private *regroupOn(setting: DecoderSetting, draw: () => number): Generator<number, void> {
    const { grid } = setting;
    const { stages } = this;
    let known: { laid: Packing; layers: PackedLayer[] } | undefined;
    while (!this.isSettled) {
      const { laid } = this;
      const at = laid && lastInUse(setting, laid);
      const plain = !grid.lattice && at !== undefined && grid.bolts[at]?.flaws.length === 0;
      if (laid && plain && known?.laid !== laid) known = { laid, layers: layersOn(laid, at) };
      if (!laid || !plain || !known || known.layers.length < LEAST_LAYERS) {
        yield 0;
        continue;
      }
      this.offer(yield* regroup({ grid, at, stages, draw }, laid, known.layers), setting);
    }
  }

  /** Tries to lay all pieces on all the cloth there is. */
  private *findAny(setting: DecoderSetting, draw: () => number): Generator<number, void> {
    const { decoder, grid: seen } = setting;
    decoder.setLengths(seen.bolts.map(({ h }) => h - seen.gap));
    while (!this.best) {
      const laid = yield* this.whileUseful(anneal(decoder, draw, LONGEST_PERIOD), 0);
      if (laid) this.offer(packingOf(seen, decoder), setting);
      else this.noteLeftOver(seen, decoder);
    }
  }

  /** Aims at ever less cloth: a third of what may be saved at most, less after each failure. */
  private *improveOn(setting: DecoderSetting, draw: () => number): Generator<number, void> {
    const { decoder, grid: seen, aim } = setting;
    let share = FIRST_SAVING;
    let tight = false;
    // A few pieces have few orders.
    let period = Math.min(FIRST_PERIOD, PERIOD_BY_PAIRS * seen.items.length ** 2);
    while (this.best && !this.isSettled) {
      const saving = Math.max(share * (this.cost - this.bound.cost), this.leastSaving());
      decoder.setLengths(aim(this.best, saving, tight));
      const goal = this.cost - saving;
      const laid = yield* this.whileUseful(anneal(decoder, draw, period), goal);
      if (laid) {
        const better = this.offer(packingOf(seen, decoder), setting);
        tight = !better;
        if (better) share = FIRST_SAVING;
        yield 1;
      } else if (this.cost > goal) {
        if (share * (this.cost - this.bound.cost) > this.leastSaving()) share /= 2;
        else {
          period = Math.min(LONGEST_PERIOD, 2 * period);
          share = AGAIN;
        }
      }
    }
  }

  /** Breaks off where another way has come so low meanwhile. */
  private *whileUseful(search: Generator<number, boolean>, goal: number): Generator<number, boolean> {
    for (;;) {
      const step = search.next();
      if (step.done) return step.value;
      yield step.value;
      if (this.cost <= goal * (1 + SAME_COST)) return false;
    }
  }

  private leastSaving(): number {
    const steps = this.grid.bolts
      .map(({ costPerStep }) => costPerStep * this.grid.stepY)
      .filter((cost) => cost > 0);
    return Math.max(Math.min(...steps, Number.MAX_VALUE), LEAST_SAVING * this.cost);
  }
}

/** Rounds counted as the plans that they cost as much as. */
function* byRounds<T>(rounds: Generator<void, T>): Generator<number, T> {
  for (let round = rounds.next(); ; round = rounds.next()) {
    if (round.done) return round.value;
    yield PLANS_PER_ROUND;
  }
}

/** The bolt that is cut last. */
function lastInUse({ sequence }: DecoderSetting, { used }: Packing): number | undefined {
  return sequence.findLast((at) => (used[at] ?? 0) > 0);
}

function refuseNonsense({ pieces, bolts, gapMm, repeat }: ClothProblem): void {
  const positive = (name: string, value: number) => {
    if (!(value > 0)) throw new Error(`invalid ${name}: ${value}`);
  };
  for (const { widthMm, lengthMm } of pieces) {
    positive("piece widthMm", widthMm);
    positive("piece lengthMm", lengthMm);
  }
  for (const { widthMm, lengthMm, costPerMm } of bolts) {
    positive("bolt widthMm", widthMm);
    if (lengthMm !== undefined) positive("bolt lengthMm", lengthMm);
    if (!(costPerMm >= 0)) throw new Error(`invalid bolt costPerMm: ${costPerMm}`);
  }
  if (!(gapMm >= 0)) throw new Error(`invalid gapMm: ${gapMm}`);
  if (repeat) positive("repeat alongMm", repeat.alongMm);
  for (const list of [pieces, bolts]) {
    if (new Set(list.map(({ id }) => id)).size < list.length)
      throw new Error("invalid ids: one is given twice");
  }
  if (bolts.filter(({ lengthMm }) => lengthMm === undefined).length > 1)
    throw new Error("invalid bolts: more than one is endless");
}

/** The cheapest plan that about so many tries find; the same problem and number give the same answer. */
export function solveCloth(problem: ClothProblem, evaluations: number): ClothAnswer {
  const search = new ClothSearch(problem);
  search.improve(evaluations);
  return search.answer();
}
