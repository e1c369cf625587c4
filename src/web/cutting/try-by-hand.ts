import { type BoltPlan, type ClothPlan, type Placement, verifyCloth } from "../../cutting/index.ts";
import type { ClothCutting } from "../../plan/index.ts";

/** Pieces moved by hand on the bolts of one cloth: what is wrong with that, and the new cloth that it takes. */
export interface HandTry {
  bolts: BoltPlan[];
  faults: string[];
  usedMm: number;
  /** Against the plan as it was found, mm; less is better. */
  moreMm: number;
}

/** The plan with one piece at another place; the cuts of its bolt are no longer known. */
export function moved(bolts: readonly BoltPlan[], boltId: string, placement: Placement): BoltPlan[] {
  return bolts.map((bolt) => {
    if (bolt.boltId !== boltId) return bolt;
    const placements = bolt.placements.map((one) => (one.pieceId === placement.pieceId ? placement : one));
    const usedMm = placements.reduce((most, { yMm, lengthMm }) => Math.max(most, yMm + lengthMm), 0);
    return { ...bolt, placements, usedMm, cuts: [], leaves: [], remnants: [] };
  });
}

/** Checks pieces that were moved by hand, cut as the scissors go: by the same check that every plan must pass. */
export function tryByHand(cutting: ClothCutting, plan: ClothPlan, bolts: BoltPlan[]): HandTry {
  const { problem } = cutting;
  const cost = bolts.reduce(
    (sum, { boltId, usedMm }) =>
      sum + usedMm * (problem.bolts.find(({ id }) => id === boltId)?.costPerMm ?? 0),
    0,
  );
  const free = { ...problem, cutting: { kind: "free" as const } };
  const bound = { ...plan.bound, cost: 0 };
  const faults = verifyCloth(free, { ...plan, status: "feasible", bolts, cost, bound });
  return {
    bolts,
    faults: faults.map((fault) => named(cutting, fault)),
    usedMm: newClothMm(cutting, bolts),
    moreMm: newClothMm(cutting, bolts) - newClothMm(cutting, plan.bolts),
  };
}

function newClothMm({ newBoltId }: ClothCutting, bolts: readonly BoltPlan[]): number {
  return bolts.find(({ boltId }) => boltId === newBoltId)?.usedMm ?? 0;
}

/** The check knows pieces and bolts by id; people know them by name. */
function named({ problem, boltNames }: ClothCutting, fault: string): string {
  let text = fault;
  for (const { id, shade, part } of problem.pieces) text = text.replaceAll(id, `${shade}: ${part}`);
  for (const [id, name] of Object.entries(boltNames)) text = text.replaceAll(`bolt ${id}`, name);
  return text;
}
