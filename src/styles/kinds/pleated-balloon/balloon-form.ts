import type { ResolvedMaking } from "../../../job/index.ts";
import type { ClothMark, Column, Ease, Form, Grid, Pleat, Size, Swag } from "../../../shade-plan/index.ts";
import { plainStretches } from "../../base/plain-form.ts";
import { cutApart } from "../../draping/insert-pieces.ts";
import { barBetween, layPleats, pleatAllowances, pleatMarks, pleatOpening } from "../../draping/pleats.ts";
import type { LowestPouf } from "./pouf.ts";

/** Cloth in the pleat of each column: half of one, or nothing, at the edges. */
function foldedAt(pleat: ResolvedMaking["pleat"], index: number, count: number): number {
  const isEdge = index === 0 || index === count - 1;
  if (!isEdge) return pleat.foldedMm;
  return pleat.edges === "half" ? pleat.foldedMm / 2 : 0;
}

/** A pleat at every column between, and half a one or none at each edge, from the left. */
export function laidPleats(pleat: ResolvedMaking["pleat"], columns: readonly Column[]): Pleat[] {
  const asked = columns.map(({ xMm }, i) => ({ xMm, foldedMm: foldedAt(pleat, i, columns.length) }));
  return layPleats(
    asked.filter(({ foldedMm }) => foldedMm > 0),
    pleat.kind,
  );
}

/** Cloth across each pouf beyond its width: half of a full pleat from either side, the whole half pleat at an edge. */
export function bayEase(
  pleat: ResolvedMaking["pleat"],
  columns: readonly Column[],
  flatLengthMm: number,
): Ease[] {
  const { sideMm, untilMm } = pleatOpening({ pleat }, pleat.foldedMm, flatLengthMm);
  const sides = columns.map((_, i) => (foldedAt(pleat, i, columns.length) > 0 ? sideMm : 0));
  return columns.slice(1).map(({ xMm: toMm }, i) => ({
    fromMm: columns[i]?.xMm ?? 0,
    toMm,
    extraMm: (sides[i] ?? 0) + (sides[i + 1] ?? 0),
    untilMm,
  }));
}

/** How the cloth is shaped: pleats across, and at the hem the pouf that stays, as tall as it has room for. */
export function balloonForm(
  making: Pick<ResolvedMaking, "pleat" | "hems" | "board">,
  size: Pick<Size, "finishedWidthMm">,
  grid: Grid,
  { pleats, ease, pouf }: { pleats: Pleat[]; ease: Ease[]; pouf: LowestPouf },
): Form {
  const isTied = pouf.clothMm > 0;
  const clothMm = isTied
    ? Math.max(grid.bottomSectionMm, pouf.firstRingMm + pouf.clothMm)
    : grid.bottomSectionMm;
  const extraMm = clothMm - grid.bottomSectionMm;
  const swags: Swag[] = isTied
    ? ease.map(({ fromMm, toMm, extraMm: more }, i) => ({
        fromMm,
        toMm,
        arcMm: toMm - fromMm + more,
        sagMm: pouf.sagsMm[i] ?? 0,
      }))
    : [];
  return {
    stretches: plainStretches(grid).map((one) => (one.row === 0 ? { ...one, clothMm } : one)),
    allowances: [
      ...pleatAllowances(pleats, making),
      ...(extraMm > 0 ? [{ label: "pouf that stays", widthMm: 0, lengthMm: extraMm }] : []),
    ],
    across: "pleated",
    pleats,
    swags,
    ease,
    ...(isTied ? { pouf: { clothMm: pouf.clothMm, loops: pouf.loops }, tiedRings: pouf.loops } : {}),
    ...barBetween(making, grid.columns[0]?.xMm ?? 0, grid.columns.at(-1)?.xMm ?? 0),
    ribs: { rows: [], face: "back" },
    marks: [...pleatMarks(pleats), ...rowMarks(grid, pouf, extraMm)],
    joinsAtMm: pleats.map(({ flatMm: [, middle] }) => middle),
    ...cutApart(making, size, pleats),
    haberdashery: [],
  };
}

/** Every line across on the flat cloth, from the hem up: the marks of the pouf, then the rows above it. */
function rowMarks(grid: Grid, pouf: LowestPouf, extraMm: number): ClothMark[] {
  if (pouf.clothMm === 0) return [];
  const stepMm = pouf.clothMm / pouf.loops;
  const tied = Array.from({ length: pouf.loops + 1 }, (_, i): ClothMark => {
    const atMm = pouf.firstRingMm + i * stepMm;
    return { kind: "gather", along: "y", atMm, label: `Pouf mark ${i + 1}` };
  });
  const rows = grid.rows.slice(1).map(
    ({ number, fromHemMm }): ClothMark => ({
      kind: "row",
      along: "y",
      atMm: fromHemMm + extraMm,
      label: `Row ${number}`,
    }),
  );
  return [...tied, ...rows];
}
