import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type JobInput, LIFT_KINDS, REAR_GUIDES } from "../src/job/index.ts";
import { type Plan, plan, type ShadePlan } from "../src/plan/index.ts";
import { flatSize, type Step } from "../src/shade-plan/index.ts";
import { anyJob } from "./arbitrary-job.ts";
import { jobWith } from "./job-with.ts";
import { lengthsIn, numbersOf, strayLengths } from "./lengths-in-text.ts";
import { verdictIn } from "./words.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const textOf = ({ title, text, check, caution }: Step) => plain([title, text, check, caution].join(" "));

/** Styles whose steps state figures alone; differences of two stand in those of the others. */
const STYLES = ["flat", "gathered-balloon", "austrian", "festoon"] as const;
const UNITS = [
  { system: "imperial", ruler: "1/8 in" },
  { system: "imperial", ruler: "1/16 in" },
  { system: "metric", ruler: "1 mm" },
] as const;
const LAYERS = [
  { lining: null },
  {},
  { interlining: "domett" },
  { interlining: "domett", blackout: "blackout-lining" },
] as const;
const RIBS = ["none", "lining-pocket", "through-pocket", "strip-pocket"] as const;

/** What a maker may ask of the cloth beyond the plainest make. */
const MAKES: NonNullable<NonNullable<JobInput["workshop"]>>[] = [
  {},
  { hems: { corner: "mitred", sideTurnMm: 30, sideTurns: 1 } },
  { hems: { makeUp: "bagged-out" }, lining: { blackoutCut: "as-lining" } },
  {
    banding: { where: "sides-and-bottom", widthMm: 60, insetMm: 30 },
    board: { returns: "pieces", dustStripMm: 40 },
  },
  {
    banding: { where: "all-round", widthMm: 45, insetMm: 0, corners: "butted", bottomBandMm: 180 },
    board: { returns: "wrapped" },
  },
  {
    lining: { squaringMm: 60, innerNarrowerMm: 20, innerLongerMm: 30, interliningCut: "as-lining" },
    pattern: { place: "free", offsetMm: 70, railroad: "always" },
  },
  { relax: { lowerEdge: "straight", widening: "even" }, pleat: { cut: "inserts" } },
  { relax: { extraWidthMm: 40, weight: "none" }, pleat: { held: "pressed", bar: "none", kind: "box" } },
  { pouf: { marks: 0 }, pleat: { edges: "none", centreLine: true, cut: "inserts" } },
];

/** Shades that a workroom makes: every mount, layers, ribs, fixing and side, on every ruler. */
const workroomJob = fc
  .record({
    units: fc.constantFrom(...UNITS),
    mount: fc.constantFrom("inside" as const, "outside" as const, "to-size" as const),
    layers: fc.constantFrom(...LAYERS),
    kind: fc.constantFrom(...RIBS),
    attachment: fc.constantFrom("staple" as const, "hook-and-loop" as const),
    controlSide: fc.constantFrom("left" as const, "right" as const),
    lift: fc.constantFrom(...LIFT_KINDS),
    rearCords: fc.constantFrom(...REAR_GUIDES),
    widthOverFinishedMm: fc.constantFrom(0, 25.4),
    lengthOverFinishedMm: fc.constantFrom(undefined, 20),
    widthMm: fc.integer({ min: 400, max: 2600 }),
    heightMm: fc.integer({ min: 700, max: 2600 }),
    shrink: fc.constantFrom(0, 0.03),
    make: fc.constantFrom(...MAKES),
    style: fc.constantFrom(...STYLES),
    repeat: fc.constantFrom(
      undefined,
      { verticalMm: 320, match: "straight" as const },
      { verticalMm: 640, match: "half-drop" as const },
    ),
  })
  .map((r) => {
    const face = {
      id: "face",
      name: "Own cloth",
      usableWidthMm: 1370,
      massGsm: 220,
      shrinkLength: r.shrink,
      shrinkWidth: r.shrink,
      repeat: r.repeat,
    };
    const unlined = "lining" in r.layers;
    const ribKind = unlined && r.kind === "lining-pocket" ? "strip-pocket" : r.kind;
    return jobWith(
      {
        opening: {
          widthsMm: [r.widthMm],
          heightsMm: [r.heightMm],
          sillAboveFloorMm: 800,
          recessDepthMm: 120,
        },
        shade: {
          style: r.style,
          mount: r.mount,
          face: "face",
          ...r.layers,
          making: {
            ...r.make,
            ribs: { kind: ribKind },
            board: { ...r.make.board, attachment: r.attachment },
            lift: { kind: r.lift, rearCords: r.rearCords, controlSide: r.controlSide },
            lining: {
              ...r.make.lining,
              widthOverFinishedMm: r.widthOverFinishedMm,
              ...(r.lengthOverFinishedMm === undefined
                ? {}
                : { lengthOverFinishedMm: r.lengthOverFinishedMm }),
            },
          },
        },
      },
      { units: r.units, cloths: [face] } satisfies Partial<JobInput>,
    );
  });

/** Measures of the hand that steps state beside the plan's own: see `src/steps/practice.ts`. */
const HABITS_MM = [3.175, 3, 101.6, 100, 12.7, 12, 76.2, 75];
/** The slope of 41.5° of a bending test, by the ruler. */
const SLOPE_MM = [88, 7 * 25.4];

function allowed(shade: ShadePlan, job: ReturnType<typeof jobWith>): number[] {
  const { board, lift, workings, size, grid, form, cloth } = shade;
  const under = lift.kind === "cord-lock" ? [lift.seat] : [lift.spools, lift.supports, lift.drive];
  const onBoard = numbersOf([board.eyes, board.brackets, under]).map((xMm) => xMm - board.leftMm);
  const put = workings.flatMap((working) => [working.value, ...working.inputs.map((input) => input.value)]);
  const asked = numbersOf(job.rooms);
  const [face] = job.cloths;
  const repeatMm = face?.repeat?.verticalMm ?? 0;
  // Defaults that the shade took over, in inches as they are published.
  const defaultsMm = [0.25, 0.5, 1, 1.5, 2, 3, 4].map((valueIn) => valueIn * 25.4).concat([1600, 10]);
  const shrunkMm = cloth.layers.flatMap((cut) =>
    numbersOf([cut.panels, cut.cutWidthMm, cut.cutLengthMm]).map(
      (mm) => mm * (1 - (face?.shrinkLength ?? 0)),
    ),
  );
  const throughMm = size.finishedLengthMm + 20 * cloth.ribLines.length;
  const beyondMm = cloth.layers.flatMap((cut) =>
    cut.makeUp.filter((part) => part.label === "board").map((part) => part.lengthMm),
  );
  return [
    ...numbersOf({ size, grid, form, cloth, lift, board, flat: flatSize(size, form, "face") }),
    ...onBoard,
    ...numbersOf(cloth.corner).map((mm) => Math.abs(mm)),
    // A seam below the top line, and layers cut narrower and longer than the face between its hems.
    ...cloth.bands.map((band) => size.finishedLengthMm - band.heightMm),
    ...(asked.includes(20) ? [size.finishedWidthMm - 20, throughMm + 30, size.finishedLengthMm + 30] : []),
    ...put,
    ...asked,
    ...shrunkMm,
    ...beyondMm,
    ...defaultsMm,
    ...HABITS_MM,
    ...SLOPE_MM,
    throughMm,
    repeatMm / 2,
    ...liningEndsMm(shade),
    0.5 * 25.4,
  ];
}

/** How far the lining ends above the hem line: its own length against the face's, by hand. */
function liningEndsMm({ cloth, size }: ShadePlan): number[] {
  const lining = cloth.layers.find((cut) => cut.layer === "lining");
  const board = cloth.layers[0]?.makeUp.find((part) => part.label === "board")?.lengthMm ?? 0;
  const over = lining?.makeUp.find((part) => part.label.startsWith("lining over"))?.lengthMm ?? 0;
  return lining === undefined
    ? []
    : [board - over, board - over + 20 * cloth.ribLines.length, size.finishedLengthMm];
}

function withoutNames(text: string, shade: ShadePlan): string {
  const names = shade.cost.shopping
    .map((line) => line.label)
    .concat(shade.board.sectionName, shade.lift.cordName);
  return names.reduce((rest, name) => rest.replaceAll(plain(name), ""), text);
}

describe("the words of workroom plans", () => {
  it("state no length that is not a figure of the plan", () => {
    let lengths = 0;
    fc.assert(
      fc.property(workroomJob, (job) => {
        const shade = plan(job).shades[0];
        if (shade === undefined) throw new Error("no shade");
        const figures = allowed(shade, job);
        for (const step of shade.steps) {
          const text = withoutNames(textOf(step), shade);
          lengths += lengthsIn(text).length;
          expect(strayLengths(text, figures, job.units), `${step.id}: ${text}`).toEqual([]);
        }
      }),
      { seed: 41, numRuns: 150 },
    );
    expect(lengths).toBeGreaterThan(150 * 60);
  });

  it("thread each cord once, from the end and into the slot that the rig gives it", () => {
    fc.assert(
      fc.property(workroomJob, (job) => {
        const shade = plan(job).shades[0];
        const lift = shade?.lift;
        if (lift?.kind !== "cord-lock") return;
        const thread = shade?.steps.find((step) => step.id === "string-thread")?.text ?? "";
        const read = [...thread.matchAll(/cord (\d+) from the (left|right) end into slot (\d+)/g)];
        expect(read.map(([, number]) => Number(number))).toEqual(lift.threading);
        for (const [, number, side, slot] of read) {
          const cord = lift.cords.find((one) => one.number === Number(number));
          expect([cord?.entersFrom, cord?.slot]).toEqual([side, Number(slot)]);
        }
        // “Where cords share a slot … the first one in nearest the wall.”
        const places = new Map<number, number>();
        for (const number of lift.threading) {
          const cord = lift.cords.find((one) => one.number === number);
          if (cord === undefined) continue;
          expect(cord.placeInSlot).toBeGreaterThan(places.get(cord.slot) ?? -1);
          places.set(cord.slot, cord.placeInSlot);
        }
      }),
      { seed: 42, numRuns: 300 },
    );
  });
});

function everyText(made: Plan): string[] {
  return [
    ...made.findings.map((finding) => finding.text),
    ...made.shades.flatMap((shade) => [
      ...shade.steps.map(textOf),
      ...shade.cautions.map((caution) => `${caution.title}. ${caution.text}`),
      ...shade.findings.map((finding) => finding.text),
      ...reviewTexts(shade),
    ]),
  ];
}

function reviewTexts({ safety, tag }: ShadePlan): string[] {
  return [
    safety.line,
    safety.readAs,
    safety.stampText ?? "",
    ...safety.results.map(({ words, what, why, open }) => [words, what, why, open].join(" ")),
    ...safety.listed.map(({ words, note }) => [words, note].join(" ")),
    ...[...safety.tests, ...safety.cautions].map(({ title, text }) => `${title}. ${text}`),
    ...tag.lines.map(({ text }) => text),
    tag.note,
  ];
}

describe("the words of any plan", () => {
  it("pass no verdict and hold no slip of the pen", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const text of everyText(plan(job))) {
          expect(verdictIn(text), text).toBeUndefined();
          expect(text).not.toMatch(/undefined|NaN|Infinity|\[object|\bnull\b/);
        }
      }),
      { seed: 43, numRuns: 100 },
    );
  });

  it("have steps with ids of their own, which name figures that were written down", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const shade of plan(job).shades) {
          const ids = shade.steps.map((step) => step.id);
          expect(new Set(ids).size).toBe(ids.length);
          const written = new Set(shade.workings.map((working) => working.id));
          for (const step of shade.steps) {
            for (const figure of step.figures ?? []) expect([...written], step.id).toContain(figure);
          }
        }
      }),
      { seed: 44, numRuns: 100 },
    );
  });
});
