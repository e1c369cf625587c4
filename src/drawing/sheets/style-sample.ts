import {
  type Job,
  type Making,
  newJob,
  newWindow,
  partsOf,
  resolveShade,
  STYLE_NAMES,
  type StyleKind,
} from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { headrailNeeded, STYLE_MODULES } from "../../styles/index.ts";
import { STYLE_SHAPES } from "../../styles/shapes/index.ts";
import type { Drawing, Primitive } from "../model.ts";
import { line } from "./shapes.ts";
import { drawVisibleLine, seenFrom } from "./visible-lines.ts";

/** A window that shows what tells the styles apart. */
const WIDTH_MM = 760;
const LENGTH_MM = 900;
/** Half way up, folds and flat cloth both show. */
const RAISE = 0.35;
const UNDER_BOARD = { heightMm: 20, label: "lock" };

/** Settings that let a style be told from its neighbours at the size of a stamp. */
const SHOWN: Partial<Record<StyleKind, Making>> = {
  ribbed: { ribs: { kind: "bare", face: "front", at: "half-folds" } },
};

/**
 * A style in small, from its own shape: no measures, no rig.
 *
 * @throws where the sample job has no window: a bug
 */
export function drawStyleSample(style: StyleKind, raise = RAISE): Drawing {
  const shape = shapeOf(style, raise);
  const name = STYLE_NAMES[style];
  return {
    id: `style-${style}`,
    title: name,
    caption: "",
    primitives: [
      ...shape.pieces.flatMap(({ outline, edges }): Primitive[] => [
        line("faceCloth", outline, { closed: true }),
        ...edges.filter(seenFrom("front")).map((edge) => drawVisibleLine(edge)),
      ]),
      ...shape.lines.filter(seenFrom("front")).map((one) => drawVisibleLine(one)),
    ],
    facts: [],
  };
}

/** How far a sample is drawn up. */
export const SAMPLE_RAISE = RAISE;

/** A job of one window that shows what tells a style from the others. */
export function styleSampleJob(style: StyleKind): Job {
  const job = newJob({ id: `sample-${style}`, name: "Sample", system: "metric" });
  const window = newWindow({
    id: "sample",
    name: "Sample",
    widthMm: WIDTH_MM,
    heightMm: LENGTH_MM,
    mount: "to-size",
  });
  const making = SHOWN[style];
  const shade = { ...window.shade, style, ...(making === undefined ? {} : { making }) };
  return { ...job, rooms: [{ id: "room", name: "Room", windows: [{ ...window, shade }] }] };
}

function shapeOf(style: StyleKind, raise: number) {
  const job = styleSampleJob(style);
  const [room] = job.rooms;
  const [window] = room?.windows ?? [];
  if (room === undefined || window === undefined) throw new Error("invalid sample job: no window");
  const resolved = resolveShade(job, partsOf(job), room, window, "/rooms/0/windows/0");
  const module = STYLE_MODULES[style];
  const { values: columns } = module.columns({ shade: resolved, size: SIZE });
  const { values: headrailNeededMm } = headrailNeeded({ shade: resolved, liftParts: UNDER_BOARD });
  const laid = module.grid({ shade: resolved, size: SIZE, columns, headrailNeededMm });
  return STYLE_SHAPES[style]({ size: SIZE, ...laid.values }, raise);
}

const SIZE: Size = {
  finishedWidthMm: WIDTH_MM,
  finishedLengthMm: LENGTH_MM,
  boardLengthMm: WIDTH_MM,
  openingWidthMm: WIDTH_MM,
  openingHeightMm: LENGTH_MM,
  widthSpreadMm: 0,
  heightSpreadMm: 0,
  toMeasure: [],
};
