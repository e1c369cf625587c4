import { planCloth, planMass } from "../src/cloth/index.ts";
import { workingOf } from "../src/figures/index.ts";
import { type Job, type JobInput, partsOf, resolveShade } from "../src/job/index.ts";
import { chooseLiftParts } from "../src/lift/index.ts";
import { measure } from "../src/measure/index.ts";
import type { Form, Grid } from "../src/shade-plan/index.ts";
import { flatForm } from "../src/styles/folding/flat-form.ts";
import { STYLE_MODULES } from "../src/styles/index.ts";
import { resolvedWith } from "./job-with.ts";
import { layIn } from "./laid-shade.ts";

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
  const resolved = resolvedWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [lengthMm] },
      shade: { mount: "to-size", ...shade },
    },
    cloths === undefined ? {} : { cloths },
  );
  const { values: size } = measure(resolved);
  const grid = gridOf(rows, size.finishedLengthMm, columnsMm ?? [50, size.finishedWidthMm - 50]);
  const shaped = { ...flatForm(resolved, size, grid), ...form };
  const planned = clothAndMass({ shade: resolved, size, grid, form: shaped });
  const face = planned.cloth.layers[0];
  if (face === undefined) throw new Error("invalid test shade: no face");
  return { ...planned, resolved, size, face };
}

/** The cloth of every shade of a job, or of one, as far as the plan goes before it is rigged. */
export function clothsOfJob(job: Job, only?: number) {
  const windows = job.rooms.flatMap((room, r) => room.windows.map((window, w) => ({ room, r, window, w })));
  return windows
    .filter((_, index) => only === undefined || only === index)
    .map((one) => clothOfWindow(job, one));
}

interface WindowAt {
  room: Job["rooms"][number];
  r: number;
  window: Job["rooms"][number]["windows"][number];
  w: number;
}

function clothOfWindow(job: Job, { room, r, window, w }: WindowAt) {
  const resolved = resolveShade(job, partsOf(job), room, window, `/rooms/${r}/windows/${w}`);
  const { values: size } = measure(resolved);
  const { values: columns } = STYLE_MODULES[resolved.style].columns({ shade: resolved, size });
  const { values: liftParts } = chooseLiftParts({ shade: resolved, size, columns });
  const { grid, form } = layIn(resolved, size, () => liftParts);
  return { shade: resolved, ...clothAndMass({ shade: resolved, size, grid, form }) };
}

/** Cut sizes and mass, with their workings. */
function clothAndMass(
  input: Parameters<typeof planCloth>[0] & Pick<Parameters<typeof planMass>[0], "shade">,
) {
  const { values: cloth, findings, workings } = planCloth(input);
  const { values: mass, workings: ofMass } = planMass({ ...input, cloth });
  return { cloth, mass, findings: [...findings], workings: [...workings, ...ofMass].map(workingOf) };
}
