import { type BoltPlan, type ClothPlan, type Placement, planByHand } from "../../cutting/index.ts";
import type { ClothCutting } from "../../plan/index.ts";

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
  found: ClothPlan,
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
  const { plan, faults } = planByHand(cutting.problem, laid, { ...found.bound, cost: 0 });
  const usedMm = newClothMm(cutting, plan.bolts);
  return {
    bolts: plan.bolts,
    faults: faults.map((fault) => inWords(cutting, fault)),
    usedMm,
    moreMm: usedMm - newClothMm(cutting, found.bolts),
  };
}

function newClothMm({ newBoltId }: ClothCutting, bolts: readonly BoltPlan[]): number {
  return bolts.find(({ boltId }) => boltId === newBoltId)?.usedMm ?? 0;
}

/** The check knows pieces and bolts by id; people know them by name. */
function inWords({ problem, boltNames }: ClothCutting, fault: string): string {
  let text = fault;
  for (const { id, shade, part } of problem.pieces) text = text.replaceAll(id, `${shade}: ${part}`);
  for (const [id, name] of Object.entries(boltNames)) {
    if (text === `bolt ${id} has no cuts`) return `${name} cannot be cut from edge to edge so`;
    text = text.replaceAll(`bolt ${id}`, name);
  }
  return text;
}
