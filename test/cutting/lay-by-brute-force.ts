import { type ClothProblem, type Placement, planByHand } from "../../src/cutting/index.ts";

/**
 * What a few pieces cost at the least, where that is below a limit: each is laid at every centimetre, and the check is
 * asked whether it can be cut so. Shares nothing with the search. Sizes, starts and repeats are whole centimetres.
 */
export function cheaperByBruteForce(
  problem: ClothProblem,
  below: number,
  mayLie: (pieceId: string, xMm: number, yMm: number) => boolean = () => true,
): number | undefined {
  const { pieces, bolts } = problem;
  const laid = new Map<string, Placement[]>(bolts.map(({ id }) => [id, []]));
  let best = below;
  const costOf = () =>
    bolts.reduce((sum, { id, costPerMm }) => sum + costPerMm * usedMm(laid.get(id) ?? []), 0);
  const visit = (at: number): void => {
    if (costOf() >= best - 1e-9) return;
    const piece = pieces[at];
    if (!piece) {
      const all = bolts.map(({ id }) => ({ boltId: id, placements: laid.get(id) ?? [] }));
      const { plan, faults } = planByHand(problem, all);
      if (faults.length === 0) best = plan.cost;
      return;
    }
    const turns = piece.grain === "free" && piece.nap === "either" && !problem.repeat;
    const ways = [
      { widthMm: piece.widthMm, lengthMm: piece.lengthMm, turn: 0 as const },
      ...(turns ? [{ widthMm: piece.lengthMm, lengthMm: piece.widthMm, turn: 90 as const }] : []),
    ];
    for (const { id, widthMm, lengthMm = Number.POSITIVE_INFINITY, costPerMm } of bolts) {
      const own = laid.get(id) ?? [];
      for (const way of ways) {
        const mostMm = Math.min(lengthMm, (best - costOf()) / costPerMm + usedMm(own), LONGEST_MM);
        for (let xMm = 0; xMm + way.widthMm <= widthMm; xMm += STEP_MM) {
          for (let yMm = 0; yMm + way.lengthMm <= mostMm; yMm += STEP_MM) {
            if (!mayLie(piece.id, xMm, yMm) || isOffRepeat(problem, piece, id, xMm, yMm)) continue;
            const apart = own.every(
              (one) =>
                xMm >= one.xMm + one.widthMm ||
                one.xMm >= xMm + way.widthMm ||
                yMm >= one.yMm + one.lengthMm ||
                one.yMm >= yMm + way.lengthMm,
            );
            if (!apart) continue;
            own.push({ pieceId: piece.id, xMm, yMm, ...way });
            visit(at + 1);
            own.pop();
          }
        }
      }
    }
  };
  visit(0);
  return best < below ? best : undefined;
}

const STEP_MM = 10;
const LONGEST_MM = 300;

function usedMm(laid: readonly Placement[]): number {
  return laid.reduce((most, { yMm, lengthMm }) => Math.max(most, yMm + lengthMm), 0);
}

/** Spares the check what it would refuse anyhow: beside every column, or off every row and half row. */
function isOffRepeat(
  { repeat, bolts }: ClothProblem,
  { start }: ClothProblem["pieces"][number],
  boltId: string,
  xMm: number,
  yMm: number,
): boolean {
  if (!repeat || !start) return false;
  const bolt = bolts.find(({ id }) => id === boltId);
  const isOff = (mm: number, byMm: number | undefined) => byMm !== undefined && mm % byMm !== 0;
  return (
    isOff(xMm - (bolt?.columnMm ?? 0) - (start.acrossMm ?? 0), repeat.acrossMm) ||
    isOff(yMm - (bolt?.rowMm ?? 0) - (start.alongMm ?? 0), repeat.alongMm / 2)
  );
}
