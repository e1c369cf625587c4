import { isProved } from "../../is-proved.ts";
import { NEVER, type ShouldStop } from "../../should-stop.ts";
import { planByHand } from "../by-hand.ts";
import { type StepGrid, stepGridOf } from "../grid.ts";
import { quickBound } from "../lower-bound.ts";
import type { Bound, ClothAnswer, ClothCutPlan, ClothProblem } from "../problem.ts";
import { ClothSearch } from "../search.ts";
import type { ClothSearching } from "../searching.ts";
import { verifyCloth } from "../verify.ts";
import { type BandChoice, type FreeFill, layRound, type Round } from "./lay-round.ts";
import { byBolt, type NotHeld, type PieceOnBolt, placeHeld } from "./place-held.ts";

/** Of many pieces a first plan takes long, and fewer bands and ways to fill them are tried. */
const SOME_PIECES = 10;
const MANY_PIECES = 100;
const BANDS_OF_MANY = 2;
const FILLS: readonly FreeFill[] = [
  { first: "narrow", aim: "full" },
  { first: "large", aim: "dense" },
  { first: "narrow", aim: "dense" },
  { first: "large", aim: "full" },
];
const FILLS_OF_SOME = FILLS.slice(0, 2);
const FILLS_OF_MANY = FILLS.slice(0, 1);

/** Held pieces, the way their bands are laid, the search for all that is left, and the plan of all of it. */
interface Attempt {
  choice: BandChoice;
  round: Round;
  search: ClothSearch;
  plan: ClothCutPlan;
}

const NO_ROOM = "no place was found for the other pieces with it there";

/**
 * Cuts the rest of the pieces round those that somebody has laid. Each run of held pieces gets a band of cloth between
 * two cuts right across the bolt, with other pieces stacked beside it; what is left is cut before, between and behind
 * the bands, as any cloth is. A held piece that cannot stay where it lies is let go, and the plan says so.
 */
export class HeldSearch implements ClothSearching {
  readonly problem: ClothProblem;
  readonly #grid: StepGrid;
  readonly #bound: Bound;
  readonly #notHeld: NotHeld[];
  /** For what is left beside the bands, or for all where nothing is held any more. */
  readonly #search: ClothSearch;
  /** The bands, and the best plan round them when the search for what is left came to that cost. */
  readonly #known: { round: Round; cost: number; plan: ClothCutPlan } | undefined;
  #spent = 0;

  constructor(problem: ClothProblem) {
    this.problem = problem;
    const { held: _, ...plain } = problem;
    this.#grid = stepGridOf(problem);
    this.#bound = quickBound(this.#grid);
    const { laid, notHeld } = placeHeld(problem, this.#grid);
    this.#notHeld = [...notHeld];
    for (let held = laid; held.length > 0; held = held.slice(0, -1)) {
      const best = this.#bestRound(held);
      if (best) {
        const { round, search, plan } = best;
        this.#search = search;
        this.#known = { round, cost: search.cost, plan };
        return;
      }
      const last = held[held.length - 1];
      if (last) this.#notHeld.push({ pieceId: last.placement.pieceId, reason: NO_ROOM });
    }
    this.#search = new ClothSearch(plain);
  }

  get done(): boolean {
    return this.#search.done;
  }

  get cost(): number {
    return this.#best()?.cost ?? this.#search.cost;
  }

  get lowerBound(): Bound {
    return this.#known ? this.#bound : this.#search.lowerBound;
  }

  get evaluations(): number {
    return this.#spent + this.#search.evaluations;
  }

  improve(evaluations: number, shouldStop: ShouldStop = NEVER): boolean {
    return this.#search.improve(evaluations, shouldStop);
  }

  answer(status: "feasible" | "stopped" = "feasible"): ClothAnswer {
    const notHeld = this.#notHeld.length > 0 ? { notHeld: this.#notHeld } : {};
    const best = this.#best();
    if (best === undefined) {
      const answer = this.#search.answer(status);
      return "bolts" in answer ? { ...answer, evaluations: this.evaluations, ...notHeld } : answer;
    }
    const isOptimal = isProved(best.cost, this.#bound.cost);
    const plan: ClothCutPlan = {
      ...best,
      status: isOptimal ? "optimal" : status,
      gap: isOptimal ? 0 : best.gap,
      evaluations: this.evaluations,
      ...notHeld,
    };
    const reasons = verifyCloth(this.problem, plan);
    return reasons.length > 0 ? { status: "withheld", reasons } : plan;
  }

  /** The best plan round what is held, if anything is. */
  #best(): ClothCutPlan | undefined {
    const known = this.#known;
    if (known === undefined || known.cost === this.#search.cost) return known?.plan;
    known.cost = this.#search.cost;
    const plan = this.#whole(known.round, this.#search);
    // The parts of a bolt do not cost what the whole does: a cheaper rest may be no cheaper plan.
    if (plan && plan.cost <= known.plan.cost) known.plan = plan;
    return known.plan;
  }

  /** The plan of all pieces on whole bolts; undefined where it cannot be cut. */
  #whole(round: Round, search: ClothSearch): ClothCutPlan | undefined {
    const answer = search.answer();
    if (!("bolts" in answer)) return undefined;
    const rest = answer.bolts.flatMap(({ boltId, placements }): PieceOnBolt[] => {
      const part = round.parts.get(boltId) ?? { boltId, fromMm: 0 };
      return placements.map((one) => ({
        boltId: part.boltId,
        placement: { ...one, yMm: one.yMm + part.fromMm },
      }));
    });
    const { plan, faults } = planByHand(this.problem, byBolt([...round.laid, ...rest]), this.#bound);
    return faults.length === 0 ? plan : undefined;
  }

  /** Tries where each band may begin and end, one band after the other, and keeps the cheapest that can be cut. */
  #bestRound(held: readonly PieceOnBolt[]): Attempt | undefined {
    let best: Attempt | undefined;
    const offer = (choice: BandChoice): Round => {
      const round = layRound(this.problem, this.#grid, held, choice);
      const search = new ClothSearch(this.#inOneLot(round));
      this.#spent += search.evaluations;
      const plan = this.#whole(round, search);
      if (plan && (best === undefined || plan.cost < best.plan.cost)) best = { choice, round, search, plan };
      return round;
    };
    const count = this.problem.pieces.length;
    const most = count > MANY_PIECES ? BANDS_OF_MANY : Number.POSITIVE_INFINITY;
    const fills = count > MANY_PIECES ? FILLS_OF_MANY : count > SOME_PIECES ? FILLS_OF_SOME : FILLS;
    const offerFilled = (reaches: BandChoice["reaches"]) => {
      for (const fill of fills) offer({ reaches, fill });
    };
    offerFilled([]);
    const { otherReaches } = offer({ reaches: [] });
    for (const [band, tries] of otherReaches.entries()) {
      for (const reach of tries.slice(0, most)) {
        const known = best?.choice.reaches ?? [];
        offerFilled(otherReaches.map((_, k) => (k === band ? reach : known[k])));
      }
    }
    return best;
  }

  /** Pieces that must come from the lot of a held one are cut from no other. */
  #inOneLot({ rest, laid }: Round): ClothProblem {
    const groups = new Map(this.problem.pieces.map(({ id, lotGroup }) => [id, lotGroup]));
    const left = new Set(rest.pieces.map(({ lotGroup }) => lotGroup));
    const bound = laid.flatMap(({ boltId, placement }) => {
      const group = groups.get(placement.pieceId);
      return group !== undefined && left.has(group) ? [[group, this.#lotOf(boltId)] as const] : [];
    });
    if (bound.length === 0) return rest;
    return { ...rest, boundLots: { ...rest.boundLots, ...Object.fromEntries(bound) } };
  }

  /** The parts of a bolt without a lot are of one that is called after it (`layRound`). */
  #lotOf(boltId: string): string {
    return this.problem.bolts.find(({ id }) => id === boltId)?.lot ?? `bolt ${boltId}`;
  }
}
