import { type BoltPlan, type ClothCutPlan, type Placement, planByHand } from "../../cutting/index.ts";
import { boltName, type ClothCutting, newClothMm, pieceNames } from "../../plan/index.ts";

/** Pieces moved by hand on the bolts of one cloth: what is wrong with that, and the new cloth that it takes. */
export interface HandTry {
  bolts: readonly BoltPlan[];
  faults: string[];
  usedMm: number;
  /** Against the plan as it was found, mm; less is better. */
  moreMm: number;
}

/** One piece at another place: cut anew, and held to the same check that every plan must pass. */
export function tryByHand(
  cutting: ClothCutting,
  found: ClothCutPlan,
  bolts: readonly BoltPlan[],
  boltId: string,
  placement: Placement,
): HandTry {
  const laid = bolts.map((bolt) => ({
    boltId: bolt.boltId,
    placements: bolt.placements.map((one) =>
      bolt.boltId === boltId && one.pieceId === placement.pieceId ? placement : one,
    ),
  }));
  const { plan, faults } = planByHand(cutting.problem, laid, { ...found.bound, cost: 0 }, found.otherLots);
  const usedMm = newClothMm(cutting, plan.bolts);
  const names = pieceNames(cutting);
  return {
    bolts: plan.bolts,
    faults: faults.map((fault) => inWords(cutting, names, fault)),
    usedMm,
    moreMm: usedMm - newClothMm(cutting, found.bolts),
  };
}

/** The check knows pieces and bolts by id; people know them by name. */
function inWords(cutting: ClothCutting, names: ReadonlyMap<string, string>, fault: string): string {
  const [, uncut] = /^bolt (\S+) has no cuts$/.exec(fault) ?? [];
  if (uncut !== undefined) return `${boltName(cutting, uncut)} cannot be cut from edge to edge so`;
  // Word by word: one id may be part of another.
  return fault.replace(/bolt ([^\s,:]+)|[^\s,:]+/g, (word, bolt?: string) =>
    bolt === undefined ? (names.get(word) ?? word) : boltName(cutting, bolt),
  );
}
