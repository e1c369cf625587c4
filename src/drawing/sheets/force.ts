import { scaleLinear } from "d3-scale";
import type { CourseHeight, Lift, PullShare } from "../../shade-plan/index.ts";
import { forceText, lengthText, N_PER_POUND_FORCE, trimmed } from "../../units/index.ts";
import type { Drawing, Fact, Point, Primitive, Role } from "../model.ts";
import { line, name, note } from "./shapes.ts";
import { figureRef, lengthFact, raiseName, type SheetInput } from "./sheet-input.ts";
import { whereSlanted } from "./slanted.ts";

/** Width of the chart as a share of its height. */
const WIDE = 0.9;
const TICKS = 5;
/** Between an axis and the words below it, on paper. */
const NAME_SHIFT_MM = 2.6;

/**
 * Forces on the way from lowered to raised: weight on the cords, pull that raises it, force that holds it. Upwards
 * stands how far the hem has risen, so that the sheet reads like the shade itself.
 */
export function drawForce(input: SheetInput): Drawing {
  const { shade, units, raise } = input;
  const { lift, grid } = shade;
  const { heights } = lift.course;
  const high = Math.max(1, grid.travelMm);
  const perUnit = units.system === "imperial" ? N_PER_POUND_FORCE : 1;
  const most = Math.max(perUnit, ...heights.flatMap(({ heldN, pullN }) => [heldN, pullN]));
  const force = scaleLinear()
    .domain([0, most / perUnit])
    .nice(TICKS)
    .range([0, WIDE * high]);
  const x = (forceN: number) => force(forceN / perUnit);
  const y = (liftMm: number) => high - liftMm;
  const curve = (of: (height: CourseHeight) => number): Point[] => [
    [x(of(first(heights))), y(0)],
    ...heights.map((height): Point => [x(of(height)), y(height.liftMm)]),
  ];
  const now = at(heights, raise * grid.travelMm);
  const top = last(heights);
  const curves = curvesOf(lift).sort((a, b) => a.of(top) - b.of(top));
  return {
    id: `force${raiseName(raise).id}`,
    title: "Forces",
    caption: `${raiseName(raise).words}. From left to right the force, upwards how far the hem has risen: each step is a row of rings taken up.${whereSlanted(shade)}`,
    primitives: [
      ...grid.rows.map((row) =>
        line("gridLine", [
          [0, y(risen(input, row.number))],
          [WIDE * high, y(risen(input, row.number))],
        ]),
      ),
      ...force.ticks(TICKS).map((tick) =>
        line("gridLine", [
          [force(tick), 0],
          [force(tick), high],
        ]),
      ),
      line("finishedEdge", [
        [0, 0],
        [0, high],
        [WIDE * high, high],
      ]),
      ...force
        .ticks(TICKS)
        .map((tick) =>
          note([force(tick), high], trimmed(tick, 2), { baseline: "top", shiftPaperMm: [0, NAME_SHIFT_MM] }),
        ),
      note([WIDE * high, high], units.system === "imperial" ? "lbf" : "N", {
        anchor: "start",
        shiftPaperMm: [3, 0],
        baseline: "middle",
      }),
      note([0, high], lengthText(0, units), { anchor: "end", shiftPaperMm: [-2, 0] }),
      note([0, 0], lengthText(grid.travelMm, units), { anchor: "end", shiftPaperMm: [-2, 0] }),
      name([0, high / 2], "Risen by", { angleDeg: -90, shiftPaperMm: [-4, 0] }),
      ...curves.map(({ role, of }) => line(role, curve(of))),
      ...curves.map(
        ({ role, words, of }, i): Primitive =>
          name([x(of(top)), 0], words, {
            role,
            anchor: "middle",
            // Neighbours at two heights, so that close curves keep their names apart.
            shiftPaperMm: [0, -3.2 - 4.6 * (i % 2)],
            ...(role === "pullCurve" ? figureRef(input, "lift.pull") : {}),
          }),
      ),
      ...nowMarks(input, now, x, y, curves, WIDE * high),
    ],
    facts: facts(input, now),
  };
}

interface Curve {
  role: Role;
  words: string;
  of: (height: CourseHeight) => number;
}

const WEIGHT: Curve = { role: "weightCurve", words: "weight", of: ({ heldN }) => heldN };
const PULL: Curve = { role: "pullCurve", words: "pull to raise", of: ({ pullN }) => pullN };
const HOLD: Curve = { role: "holdCurve", words: "holds it", of: ({ holdN }) => holdN };

/** A motor asks nothing of the hand; what the hand turns through a drive is held by the drive. */
function curvesOf({ takeUp, poweredBy }: Lift): Curve[] {
  switch (poweredBy) {
    case "hand":
      return takeUp !== "tube" ? [WEIGHT, PULL, HOLD] : [WEIGHT, PULL];
    case "spring":
      return [WEIGHT, PULL, { ...HOLD, words: "friction holds" }];
    case "motor":
      return [WEIGHT];
  }
}

/** Where the shade stands now: a line across, and a dot on each curve. */
function nowMarks(
  { units }: SheetInput,
  now: CourseHeight,
  x: (forceN: number) => number,
  y: (liftMm: number) => number,
  curves: readonly Curve[],
  wide: number,
): Primitive[] {
  return [
    line("markLine", [
      [0, y(now.liftMm)],
      [wide, y(now.liftMm)],
    ]),
    ...curves.map(
      ({ role, of }): Primitive => ({
        kind: "marker",
        role,
        shape: "dot",
        at: [x(of(now)), y(now.liftMm)],
        paperMm: 2,
      }),
    ),
    note([wide, y(now.liftMm)], lengthText(now.liftMm, units), {
      anchor: "start",
      shiftPaperMm: [3, 0],
      yields: true,
    }),
  ];
}

/** How far the bottom row has risen when it meets the row of this number. */
function risen({ shade }: SheetInput, row: number): number {
  const { rows } = shade.grid;
  const bottom = rows[0]?.yMm ?? 0;
  return Math.min(shade.grid.travelMm, bottom - (rows[row - 1]?.yMm ?? bottom));
}

function first(heights: readonly CourseHeight[]): CourseHeight {
  return heights[0] ?? { liftMm: 0, raise: 0, heldN: 0, pullN: 0, holdN: 0 };
}

function last(heights: readonly CourseHeight[]): CourseHeight {
  return heights.at(-1) ?? first(heights);
}

/** Forces at any height, straight between neighbours. */
function at(heights: readonly CourseHeight[], liftMm: number): CourseHeight {
  const i = heights.findLastIndex((height) => height.liftMm <= liftMm + 1e-9);
  const below = heights[Math.max(0, i)] ?? first(heights);
  const above = heights[i + 1] ?? below;
  const span = above.liftMm - below.liftMm;
  const share = span > 0 ? Math.min(1, Math.max(0, (liftMm - below.liftMm) / span)) : 0;
  const mix = (of: (height: CourseHeight) => number) => of(below) + share * (of(above) - of(below));
  return {
    liftMm,
    raise: mix(({ raise }) => raise),
    heldN: mix(({ heldN }) => heldN),
    pullN: mix(({ pullN }) => pullN),
    holdN: mix(({ holdN }) => holdN),
  };
}

const SHARES: Record<PullShare["what"], (eye: number) => string> = {
  weight: () => "Weight on the cords, each on its worse share",
  "own-eye": (eye) => `Eye ${eye} adds, where its cord turns`,
  "passed-eye": (eye) => `Eye ${eye} and the housing add, where cords bend into the lock`,
  "last-eye": () => "The last eye adds, where all cords turn down",
  roller: () => "The roller of the lock adds",
};

function facts({ shade, units }: SheetInput, now: CourseHeight): Fact[] {
  const { lift } = shade;
  const { shares, withPulleysN, levelMm } = lift.course;
  const text = (forceN: number) => forceText(forceN, units);
  return [
    lengthFact("Bottom row risen by", now.liftMm, units),
    { label: "Weight on the cords now", text: text(now.heldN) },
    ...(lift.poweredBy === "motor" ? [] : [{ label: "Pull to raise it now", text: text(now.pullN) }]),
    ...(lift.takeUp !== "tube" ? [{ label: "Force that holds it now", text: text(now.holdN) }] : []),
    ...(lift.poweredBy === "spring" ? [{ label: "Friction must hold now", text: text(now.holdN) }] : []),
    ...shares.map(({ what, eye, addsN }) => ({ label: SHARES[what](eye ?? 0), text: text(addsN) })),
    ...(shares.length > 0 ? [{ label: "Pull at the hand, raised", text: text(lift.pullN) }] : []),
    ...(withPulleysN === undefined
      ? []
      : [{ label: "The same with pulleys for eyes", text: text(withPulleysN) }]),
    ...(levelMm === undefined
      ? []
      : [lengthFact("Hem out of level by the stretch of the cords, at most", levelMm, units)]),
  ];
}
