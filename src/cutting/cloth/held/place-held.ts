import { planByHand } from "../by-hand.ts";
import type { StepGrid } from "../grid.ts";
import type { ClothProblem, HeldPiece, Placement } from "../problem.ts";

export interface PieceOnBolt {
  boltId: string;
  placement: Placement;
}

export interface NotHeld {
  pieceId: string;
  reason: string;
}

/**
 * Held pieces as they lie, in whole steps of the grid: each that can be cut where it was laid together with those
 * before it. The others, with the reason.
 */
export function placeHeld(
  problem: ClothProblem,
  grid: StepGrid,
): { laid: readonly PieceOnBolt[]; notHeld: readonly NotHeld[] } {
  const laid: PieceOnBolt[] = [];
  const notHeld: NotHeld[] = [];
  for (const held of problem.held ?? []) {
    const one = placementOf(grid, held);
    const isTwice = laid.some(({ placement }) => placement.pieceId === held.pieceId);
    if (one === undefined || isTwice) {
      notHeld.push({ pieceId: held.pieceId, reason: isTwice ? TWICE : NOWHERE });
      continue;
    }
    const [reason] = faultsOf(problem, [...laid, one]);
    if (reason === undefined) laid.push(one);
    else notHeld.push({ pieceId: held.pieceId, reason });
  }
  return { laid, notHeld };
}

const TWICE = "it is laid twice";
const NOWHERE = "there is no such piece, or no such bolt any more";

function placementOf(
  grid: StepGrid,
  { pieceId, boltId, xMm, yMm, turn }: HeldPiece,
): PieceOnBolt | undefined {
  const item = grid.items.find(({ piece }) => piece.id === pieceId);
  if (item === undefined || !grid.bolts.some(({ bolt }) => bolt.id === boltId)) return undefined;
  const { perMm, gap } = grid;
  const isQuarter = turn === 90 || turn === 270;
  const [w, h] = isQuarter ? [item.h, item.w] : [item.w, item.h];
  const toGrid = (mm: number) => Math.round(mm * perMm) / perMm;
  const placement: Placement = {
    pieceId,
    xMm: toGrid(xMm),
    yMm: toGrid(yMm),
    widthMm: (w - gap) / perMm,
    lengthMm: (h - gap) / perMm,
    turn,
  };
  return { boltId, placement };
}

/** What is wrong with some pieces where they lie, as if nothing else were to be cut. */
function faultsOf(problem: ClothProblem, laid: readonly PieceOnBolt[]): string[] {
  const ids = new Set(laid.map(({ placement }) => placement.pieceId));
  const alone = { ...problem, pieces: problem.pieces.filter(({ id }) => ids.has(id)) };
  return planByHand(alone, byBolt(laid), { cost: 0, which: "area" }).faults;
}

/** Pieces together with the others of their bolt. */
export function byBolt(laid: readonly PieceOnBolt[]): { boltId: string; placements: Placement[] }[] {
  const bolts = new Map<string, Placement[]>();
  for (const { boltId, placement } of laid) {
    const known = bolts.get(boltId);
    if (known) known.push(placement);
    else bolts.set(boltId, [placement]);
  }
  return [...bolts].map(([boltId, placements]) => ({ boltId, placements }));
}
