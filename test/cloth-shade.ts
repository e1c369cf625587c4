import { WorkingBook } from "../src/account/index.ts";
import { planCloth } from "../src/cloth/plan-cloth.ts";
import type { JobInput } from "../src/job/index.ts";
import { measure } from "../src/measure/index.ts";
import type { Form, Grid } from "../src/shade/index.ts";
import { flatForm } from "../src/styles/flat/flat-form.ts";
import { briefWith } from "./briefs.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];
export type ShadeInput = NonNullable<WindowInput["shade"]>;
type ClothInput = NonNullable<JobInput["cloths"]>[number];

export interface TestShade {
  widthMm: number;
  lengthMm: number;
  shade?: ShadeInput;
  cloths?: ClothInput[];
  rows?: number;
  /** Columns, from the left. */
  columnsMm?: number[];
  form?: Partial<Form>;
}

/** Rows only matter here by their number. */
export function gridOf(rows: number, lengthMm: number, columnsMm: number[]): Grid {
  const spacing = lengthMm / (rows + 1);
  return {
    rows: Array.from({ length: rows }, (_, i) => ({
      number: i + 1,
      fromHemMm: spacing * (i + 0.5),
      yMm: lengthMm - spacing * (i + 0.5),
    })),
    columns: columnsMm.map((xMm, i) => ({ number: i + 1, xMm })),
    bottomSectionMm: spacing / 2,
    spacingsMm: Array.from({ length: rows - 1 }, () => spacing),
    topSectionMm: spacing * 1.5,
    columnSpacingMm: 250,
    headrailMm: spacing / 2,
    skirtMm: 0,
    raisedHeightMm: spacing,
    travelMm: lengthMm - spacing,
    coveredWhenRaisedMm: spacing,
  };
}

/** The cloth of one shade that is given by its finished size, planned by the room alone. */
export function clothOf({ widthMm, lengthMm, shade, cloths, rows = 4, columnsMm, form }: TestShade) {
  const brief = briefWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [lengthMm] },
      shade: { mount: "to-size", ...shade },
    },
    cloths === undefined ? {} : { cloths },
  );
  const book = new WorkingBook();
  const { size } = measure(brief, book);
  const grid = gridOf(rows, size.finishedLengthMm, columnsMm ?? [50, size.finishedWidthMm - 50]);
  const planned = planCloth({ brief, size, grid, form: { ...flatForm(brief, size, grid), ...form } }, book);
  const face = planned.cloth.layers[0];
  if (face === undefined) throw new Error("invalid test shade: no face");
  return { ...planned, brief, size, face, workings: book.workings };
}
