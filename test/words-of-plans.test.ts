import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Plan, plan, type ShadePlan } from "../src/plan/index.ts";
import { flatSize, type Step } from "../src/shade-plan/index.ts";
import { anyJob } from "./arbitrary-job.ts";
import type { jobWith } from "./job-with.ts";
import { lengthsIn, numbersOf, strayLengths } from "./lengths-in-text.ts";
import { verdictIn } from "./words.ts";
import { workroomJob } from "./workroom-job.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const textOf = ({ title, text, check, caution }: Step) => plain([title, text, check, caution].join(" "));

/** Measures of the hand that steps state beside the plan's own: see `src/steps/practice.ts`. */
const HABITS_MM = [3.175, 3, 101.6, 100, 12.7, 12, 76.2, 75];
/** The slope of 41.5° of a bending test, by the ruler. */
const SLOPE_MM = [88, 7 * 25.4];

function allowed(shade: ShadePlan, job: ReturnType<typeof jobWith>): number[] {
  const { board, lift, workings, size, grid, form, cloth } = shade;
  const under =
    lift.takeUp === "lock"
      ? [lift.seat]
      : lift.takeUp === "cleat"
        ? [lift.turn]
        : [lift.spools, lift.supports, lift.drive];
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
        fc.pre(lift?.kind === "cord-lock");
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
    safety.against,
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
