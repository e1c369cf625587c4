import { type Figure, figureId } from "../src/figures/index.ts";
import type { ResolvedShade } from "../src/job/index.ts";
import { measure } from "../src/measure/index.ts";
import type { Size } from "../src/shade-plan/index.ts";
import { headrailNeeded, type LiftPartsHeight, STYLE_MODULES } from "../src/styles/index.ts";
import { STYLE_SHAPES } from "../src/styles/shapes/index.ts";

/** A shade measured and laid in its style, over a lock that hangs 25 mm below the board. */
export function laidShade(resolved: ResolvedShade) {
  return seen(resolved, measure(resolved).values, 25);
}

/** A shade 900 mm wide and as long as this when finished, however it is mounted, over a lock of 20 mm. */
export function laidAt(finishedLengthMm: number, resolved: ResolvedShade) {
  const size: Size = {
    finishedWidthMm: 900,
    finishedLengthMm,
    boardLengthMm: 890,
    openingWidthMm: 900,
    openingHeightMm: finishedLengthMm,
    widthSpreadMm: 0,
    heightSpreadMm: 0,
    toMeasure: [],
  };
  return seen(resolved, size, 20);
}

/** Columns, rows and form of a shade that is measured, over these parts of its lift. */
export function layIn(
  shade: ResolvedShade,
  size: Size,
  liftPartsOf: (columns: { length: number }) => LiftPartsHeight,
) {
  const style = STYLE_MODULES[shade.style];
  const columns = style.columns({ shade, size });
  const headrail = headrailNeeded({ shade, liftParts: liftPartsOf(columns.values) });
  const laid = style.grid({ shade, size, columns: columns.values, headrailNeededMm: headrail.values });
  return {
    ...laid.values,
    findings: laid.findings,
    workings: [columns, headrail, laid].flatMap((stage) => stage.workings),
  };
}

function seen(resolved: ResolvedShade, size: Size, heightMm: number) {
  const laid = layIn(resolved, size, () => ({ heightMm, label: "lock" }));
  const { grid, form } = laid;
  const at = (raise: number) => STYLE_SHAPES[resolved.style]({ size, grid, form }, raise);
  return { resolved, size, ...laid, at };
}

/** The value of one of these figures; not a number where it is not among them. */
export function figureValue({ workings }: { workings: readonly Figure[] }, id: string): number {
  return workings.find((figure) => figureId(figure) === id)?.value ?? Number.NaN;
}
