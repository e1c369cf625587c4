import fc from "fast-check";
import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { describe, expect, test } from "vitest";
import { HOBBLE_RULES, jobSchema, MOUNTS, RIB_FACES, RIB_KINDS, RIB_POSITIONS } from "../src/job/index.ts";
import { plan, type ShadePlan } from "../src/plan/index.ts";
import { flatSize } from "../src/shade-plan/index.ts";
import { STYLE_SHAPES } from "../src/styles/shapes/index.ts";
import { anyMaking } from "./arbitrary-job.ts";
import { jobWith } from "./job-with.ts";

/** Styles whose cloth folds straight across between rows. */
const STYLES = ["flat", "ribbed", "hobbled", "tucked"] as const;
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Sensible sizes with anything that these styles ask, and any layers. */
const anyShade = fc.record({
  style: fc.constantFrom(...STYLES),
  mount: fc.constantFrom(...MOUNTS),
  widthMm: mm(300, 2400),
  heightMm: mm(300, 3200),
  face: fc.constantFrom("plain-cotton", "print", "velvet"),
  lining: fc.constantFrom(undefined, null),
  interlining: fc.constantFrom(null, "domett"),
  blackout: fc.constantFrom(null, "blackout-lining"),
  repeatMm: mm(40, 900),
  ribs: fc.record({
    kind: fc.constantFrom(undefined, ...RIB_KINDS),
    face: fc.constantFrom(...RIB_FACES),
    at: fc.constantFrom(...RIB_POSITIONS),
  }),
  hobble: fc.record({
    rule: fc.constantFrom(...HOBBLE_RULES),
    tapeMm: mm(60, 300),
    fullness: mm(1, 3),
    match: fc.boolean(),
  }),
  tuck: fc.record({ spacingMm: mm(30, 200), depthMm: mm(0, 40), face: fc.constantFrom(...RIB_FACES) }),
  cascadeMm: fc.constantFrom(0, 5, 15),
});

function jobOf({
  style,
  mount,
  widthMm,
  heightMm,
  face,
  repeatMm,
  ...rest
}: typeof anyShade extends fc.Arbitrary<infer S> ? S : never) {
  const { lining, interlining, blackout, ribs, hobble, tuck, cascadeMm } = rest;
  const cloth = { usableWidthMm: 1370, massGsm: 220 };
  return jobWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
      shade: {
        ...{ style, mount, face, lining, interlining, blackout },
        making: { ribs, hobble, tuck, fold: { cascadeMm } },
      },
    },
    {
      cloths: [
        { ...cloth, id: "print", name: "Print", repeat: { verticalMm: repeatMm } },
        { ...cloth, id: "velvet", name: "Velvet", nap: true },
      ],
    },
  );
}

function only(job: Parameters<typeof plan>[0]): ShadePlan {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
}

const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);

describe("flat, ribbed, hobbled and tucked over layers and mounts", () => {
  test("stretches of cord fill the length, cloth is never shorter, rows stay on the shade", () => {
    fc.assert(
      fc.property(anyShade, (input) => {
        const { form, size, grid } = only(jobOf(input));
        expect(sum(form.stretches.map(({ cordMm }) => cordMm))).toBeCloseTo(size.finishedLengthMm, 5);
        for (const { cordMm, clothMm, sewnMm = 0 } of form.stretches)
          expect(clothMm - sewnMm).toBeGreaterThanOrEqual(cordMm - 1e-6);
        for (const { yMm, fromHemMm } of grid.rows) {
          expect(yMm).toBeGreaterThanOrEqual(-1e-6);
          expect(yMm + fromHemMm).toBeCloseTo(size.finishedLengthMm, 5);
        }
        expect(form.stretches.map(({ row }) => row)).toEqual([0, ...grid.rows.map(({ number }) => number)]);
      }),
      { numRuns: 60 },
    );
  });

  test("no cloth is made or lost: what is cut is what is finished and every allowance", () => {
    fc.assert(
      fc.property(anyShade, (input) => {
        const { form, size, cloth } = only(jobOf(input));
        for (const { layer, makeUp, cutLengthMm, cutWidthMm } of cloth.layers) {
          expect(sum(makeUp.map(({ lengthMm }) => lengthMm))).toBeCloseTo(cutLengthMm, 4);
          expect(sum(makeUp.map(({ widthMm }) => widthMm))).toBeCloseTo(cutWidthMm, 4);
          const own = sum(
            form.allowances
              .filter(({ layers }) => layers === undefined || layers.includes(layer))
              .map(({ lengthMm }) => lengthMm),
          );
          expect(flatSize(size, form, layer).lengthMm - size.finishedLengthMm).toBeCloseTo(own, 5);
        }
        // Along the shade the cloth of all stretches is the finished length and what the style adds; a spare is on top.
        const spare = sum(
          form.allowances.filter(({ label }) => label.includes("spare")).map(({ lengthMm }) => lengthMm),
        );
        expect(sum(form.stretches.map(({ clothMm }) => clothMm)) + spare).toBeCloseTo(
          flatSize(size, form, "face").lengthMm,
          4,
        );
      }),
      { numRuns: 60 },
    );
  });

  test("marks lie on the flat cloth, in order", () => {
    fc.assert(
      fc.property(anyShade, (input) => {
        const { form, size } = only(jobOf(input));
        const { lengthMm } = flatSize(size, form, "face");
        let before = 0;
        for (const { atMm } of form.marks) {
          expect(atMm).toBeGreaterThan(before - 1e-6);
          expect(atMm).toBeLessThan(lengthMm + 1e-6);
          before = atMm;
        }
      }),
      { numRuns: 60 },
    );
  });

  test("drawn at any height, every point is a number and the section keeps its cloth", () => {
    fc.assert(
      fc.property(anyShade, mm(0, 1), (input, raise) => {
        const { form, size, grid } = only(jobOf(input));
        const shape = STYLE_SHAPES[input.style]({ size, grid, form }, raise);
        const points = [
          ...shape.pieces.flatMap(({ outline, edges }) => [
            ...outline,
            ...edges.flatMap((edge) => edge.points),
          ]),
          ...shape.lines.flatMap((line) => line.points),
          ...shape.section.folds.flatMap(({ outline }) => outline),
        ];
        for (const point of points) for (const value of point) expect(Number.isFinite(value)).toBe(true);
        for (const { outline, arcMm, state } of shape.section.folds) {
          if (state === "flat") continue;
          const walked = outline.reduce((total, [x, y], i) => {
            const [bx, by] = outline[i - 1] ?? [x, y];
            return total + Math.hypot(x - bx, y - by);
          }, 0);
          expect(Math.abs(walked - arcMm)).toBeLessThan(0.01 * arcMm + 0.01);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("ways out of what does not go together are ways out", () => {
    fc.assert(
      fc.property(anyShade, (input) => {
        const job = jobOf(input);
        for (const { id, severity, remedies } of only(job).findings) {
          if (!id.startsWith("shape.") || severity === "note") continue;
          for (const { patch, label } of remedies) {
            const changed = jobSchema.parse(applyPatch(JSON.parse(JSON.stringify(job)), patch as never));
            const left = only(changed).findings.filter((one) => one.id === id && one.severity === severity);
            if (left.length > 0) throw new Error(`${id}: “${label}” does not cure: ${left[0]?.text}`);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test("any setting at all, sensible or not, still gives a plan of numbers", () => {
    fc.assert(
      fc.property(fc.constantFrom(...STYLES), anyMaking, (style, making) => {
        const shade = only(jobWith({ shade: { style, mount: "to-size", making } }));
        const figures = new Set(shade.workings.map(({ id }) => id));
        for (const { id, figures: leansOn } of [...shade.findings, ...shade.steps])
          for (const figure of leansOn ?? []) expect(figures, `${id} leans on ${figure}`).toContain(figure);
        for (const { value } of shade.workings) expect(Number.isFinite(value)).toBe(true);
        for (const { cordMm, clothMm } of shade.form.stretches) {
          expect(cordMm).toBeGreaterThanOrEqual(-1e-6);
          expect(clothMm).toBeGreaterThanOrEqual(cordMm - 1e-6);
        }
      }),
      { numRuns: 80 },
    );
  });
});
