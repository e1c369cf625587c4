import { ANY_LOT, type GridItem, type StepGrid } from "./grid.ts";
import type { Bound, ClothAnswer } from "./problem.ts";

type Infeasible = Extract<ClothAnswer, { status: "infeasible" }>;

/** What is plainly impossible before any search: a piece that no bolt holds, a lot group that no lot holds. */
export function impossible(grid: StepGrid): Infeasible | undefined {
  if (grid.items.length > 0 && grid.bolts.length === 0) {
    return {
      status: "infeasible",
      reason: "there is no cloth",
      pieceIds: grid.items.map(({ piece }) => piece.id),
    };
  }
  const tooBig = grid.items.filter((item) => !grid.bolts.some((bolt) => holds(bolt, item)));
  if (tooBig.length > 0) {
    const pieceIds = tooBig.map(({ piece }) => piece.id);
    return { status: "infeasible", reason: "larger than every bolt", pieceIds };
  }
  const areas = new Map<number, number>();
  for (const { lot, w, h } of grid.bolts) areas.set(lot, (areas.get(lot) ?? 0) + w * h);
  const most = Math.max(0, ...areas.values());
  const mostFor = (group: number) => {
    const bound = grid.boundLots[group] ?? ANY_LOT;
    return bound === ANY_LOT ? most : (areas.get(bound) ?? 0);
  };
  const group = grid.lotAreas.findIndex((area, at) => area > mostFor(at));
  if (group < 0) return undefined;
  const pieceIds = grid.items.filter(({ lotGroup }) => lotGroup === group).map(({ piece }) => piece.id);
  return {
    status: "infeasible",
    reason: "no dye lot has cloth enough for the pieces that must match",
    pieceIds,
  };
}

/** What the bound proves: cloth that costs more than all there is. */
export function beyondAll(grid: StepGrid, bound: Bound): Infeasible | undefined {
  const all = grid.bolts.reduce((sum, { h, costPerStep }) => sum + (h - grid.gap) * costPerStep, 0);
  if (!Number.isFinite(all) || bound.cost <= all * (1 + 1e-9)) return undefined;
  const pieceIds = grid.items.map(({ piece }) => piece.id);
  return { status: "infeasible", reason: "the bolts are too short for all pieces", pieceIds };
}

function holds(bolt: StepGrid["bolts"][number], { w, h, turns }: GridItem): boolean {
  return (w <= bolt.w && h <= bolt.h) || (turns && h <= bolt.w && w <= bolt.h);
}
