import type {
  BoltPlan,
  ClothAnswer,
  ClothProblem,
  LaidOnBolt,
  LengthCut,
  LengthsAnswer,
  LengthsProblem,
} from "../../cutting/index.ts";
import type { UnitChoice } from "../../units/index.ts";

export const CUTTING_FORMAT = "shadewright-cutting";
export const CUTTING_VERSION = 1;

/** All pieces of one cloth, of all shades, on the bolts and remnants at hand and on new cloth. */
export interface ClothCutting {
  clothId: string;
  clothName: string;
  /** Id of the bolt that is to be bought. */
  newBoltId: string;
  /** What bolts are called. */
  boltNames: { [boltId: string]: string };
  problem: ClothProblem;
  answer: ClothAnswer;
}

/** All cuts of one bar, rib, board, tube or cord. */
export interface LengthsCutting {
  /** Id of the line of the shopping list, and of the part. */
  id: string;
  partId: string;
  name: string;
  /** What one is called: length, spool. */
  noun: string;
  /** Ids of the lengths that are to be bought, where it is sold in lengths: the usual one first. */
  newStockIds: string[];
  stockNames: { [stockId: string]: string };
  /** What one of the lengths that are to be bought costs, where that is known. */
  stockPrices: { [stockId: string]: number };
  problem: LengthsProblem;
  answer: LengthsAnswer;
  /** Longer than any that is sold: bought to their own length, and not part of the plan. */
  tooLong: LengthCut[];
}

/** How everything of a job is cut. Derived from job and plan; the same seed and tries give the same. */
export interface CuttingPlan {
  format: typeof CUTTING_FORMAT;
  version: typeof CUTTING_VERSION;
  jobId: string;
  jobName: string;
  units: UnitChoice;
  cloths: ClothCutting[];
  lengths: LengthsCutting[];
}

/** How the pieces of one cloth lie, on bolts by their ids. */
export interface KnownCloth {
  clothId: string;
  laid: LaidOnBolt[];
}

/** Every bolt that is cut, with its cloth. */
export function boltsCut({ cloths }: Pick<CuttingPlan, "cloths">): { cloth: ClothCutting; bolt: BoltPlan }[] {
  return cloths.flatMap((cloth) =>
    "bolts" in cloth.answer ? cloth.answer.bolts.map((bolt) => ({ cloth, bolt })) : [],
  );
}

/** What a bolt is called. */
export function boltName({ boltNames }: ClothCutting, boltId: string): string {
  return boltNames[boltId] ?? boltId;
}

/** What each piece of a cloth is called, by its id: `Window 1: Face 1`; and each lot group. */
export function pieceNames({ problem }: ClothCutting): ReadonlyMap<string, string> {
  return new Map(
    problem.pieces.flatMap(({ id, shade, part, lotGroup }) => [
      ...(lotGroup === undefined ? [] : [[lotGroup, shade] as const]),
      [id, `${shade}: ${part}`] as const,
    ]),
  );
}

/** How much new cloth some bolts take, mm along it; those of the plan unless given. */
export function newClothMm(
  { newBoltId, answer }: ClothCutting,
  bolts = "bolts" in answer ? answer.bolts : [],
): number {
  return bolts.find(({ boltId }) => boltId === newBoltId)?.usedMm ?? 0;
}

/** Cuts that are bought to their own length: off a reel, or longer than what is sold. */
export function boughtToMeasure({ answer, tooLong, problem }: LengthsCutting): LengthsCutting["tooLong"] {
  if (answer.kind === "infeasible") return [...tooLong, ...problem.cuts];
  return [...tooLong, ...answer.plan.toMeasure];
}
