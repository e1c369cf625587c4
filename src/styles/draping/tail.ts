import { type Figure, figureRule } from "../../figures/index.ts";
import { slantedCatenary } from "../../mechanics/index.ts";
import type { ShadePoint } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";

/** Edge of a tail that hangs freely: drawn in by about this share of its width. */
const DRAWN_IN = sourced(0.1, "ratio", cite("our-choice", "limp cloth draws in a little as it hangs"));
/** Cloth beyond the straight line from column to corner: its edge curves instead of standing taut. */
const BOWED = sourced(0.015, "ratio", cite("our-choice"));
const STEPS = 10;

/** How the cloth beside an outer column hangs: its corner below the column, and in from the finished edge, mm. */
export interface TailHang {
  dropMm: number;
  inMm: number;
  /** Cloth of its line: a little more than straight from column to corner, where there is as much. */
  arcMm: number;
}

/**
 * A line of `clothMm` that ran level from a column to the edge `widthMm` away turns about the column as far as the
 * edge can sink. The edge hangs plumb until the cloth is drawn out, and is then drawn in by a tenth of the width.
 * A strip that bends one way only: its corner can hang no lower than the cloth is long.
 */
export function hangTail(widthMm: number, clothMm: number, mostSinkMm: number): TailHang {
  const cloth = Math.max(widthMm, clothMm);
  const drawnMm = (1 - DRAWN_IN.value) * widthMm;
  const fullMm = Math.sqrt(Math.max(0, ((1 - BOWED.value) * cloth) ** 2 - drawnMm ** 2));
  const dropMm = Math.min(fullMm, Math.max(0, mostSinkMm));
  const reachMm = cloth * (fullMm === 0 ? 1 : 1 - (BOWED.value * dropMm) / fullMm);
  const acrossMm = Math.min(widthMm, Math.sqrt(Math.max(0, reachMm ** 2 - dropMm ** 2)));
  const arcMm = Math.min(cloth, Math.hypot(acrossMm, dropMm) * (1 + BOWED.value));
  return { dropMm, inMm: widthMm - acrossMm, arcMm };
}

const TAIL = figureRule({
  id: "shape.tail",
  label: "Corner of a tail below its column, shade raised",
  symbol: "t",
  unit: "mm",
  formula: "min(r, sqrt(max(0, ((1 − q)·max(a, c))^2 − ((1 − i)·a)^2)))",
  inputs: {
    r: ["mm", "travel of the bottom row", "figure:shape.travel"],
    a: [
      "mm",
      "column to the edge",
      "pleat/insetMm",
      "figure:shape.pleat-inset",
      "figure:measure.finished-width",
    ],
    c: [
      "mm",
      "cloth between them, the pleat open",
      "pleat/foldedMm",
      "pleat/held",
      "pleat/openAtHemMm",
      "pleat/sewnAtTopMm",
      "figure:measure.finished-length",
    ],
    q: ["ratio", "cloth that its curve takes"],
    i: ["ratio", "drawn in at the edge"],
  },
  cite: cite(
    "geometry",
    "a strip that bends one way only; tutorials: about as long as the pleat is from the edge",
  ),
  compute: ({ r, a, c, q, i }) =>
    Math.min(r, Math.sqrt(Math.max(0, ((1 - q) * Math.max(a, c)) ** 2 - ((1 - i) * a) ** 2))),
});

/** How far the corner of a tail hangs below its column, the shade raised by its travel, mm. */
export function tailFigure(widthMm: number, clothMm: number, travelMm: number): Figure {
  return TAIL.figure({ r: travelMm, a: widthMm, c: clothMm, q: BOWED.value, i: DRAWN_IN.value });
}

/** The line of such a tail from its outer end to the column, x outwards from the column, mm. */
export function tailLine(widthMm: number, { dropMm, inMm, arcMm }: TailHang): ShadePoint[] {
  const acrossMm = widthMm - inMm;
  const straight: ShadePoint[] = [
    [acrossMm, dropMm],
    [0, 0],
  ];
  if (acrossMm <= 0 || dropMm <= 0 || arcMm <= Math.hypot(acrossMm, dropMm) * (1 + 1e-9)) return straight;
  const hang = slantedCatenary(acrossMm, dropMm, arcMm);
  if (hang === undefined || !Number.isFinite(hang.parameterMm)) return straight;
  const k = hang.parameterMm;
  const low = Math.atanh(dropMm / arcMm) - acrossMm / (2 * k);
  const heightAt = (share: number) => {
    const t = low + (share * acrossMm) / k;
    // cosh a − cosh b = 2 sinh((a + b)/2) sinh((a − b)/2), which keeps the digits of a shallow curve.
    return 2 * k * Math.sinh((t + low) / 2) * Math.sinh((t - low) / 2);
  };
  return Array.from({ length: STEPS + 1 }, (_, i): ShadePoint => {
    if (i === STEPS) return [0, 0];
    return [acrossMm * (1 - i / STEPS), Math.min(dropMm, dropMm - heightAt(i / STEPS))];
  });
}
