import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../../test/job-with.ts";
import { laidAt } from "../../../../test/laid-shade.ts";
import type { JobInput } from "../../../job/index.ts";
import { inches } from "../../../units/index.ts";
import { hobbledShape } from "./hobbled-shape.ts";
import { matchRepeat } from "./match-repeat.ts";
import { hobbledSpacing } from "./spacing.ts";

type Shade = NonNullable<JobInput["rooms"][number]["windows"][number]["shade"]>;
type Hobble = NonNullable<NonNullable<Shade["making"]>["hobble"]>;
type Cloths = NonNullable<JobInput["cloths"]>;

const printed = (repeatIn: number): Cloths => [
  { id: "print", name: "Print", usableWidthMm: 1370, massGsm: 200, repeat: { verticalMm: inches(repeatIn) } },
];

function resolvedOf(hobble: Hobble, shade: Shade = {}, cloths: Cloths = []) {
  return resolvedWith(
    { shade: { style: "hobbled", ...shade, making: { ...shade.making, hobble } } },
    { cloths },
  );
}

function spacingOf(lengthMm: number, hobble: Hobble, cloths: Cloths = []) {
  const face = cloths[0] === undefined ? {} : { face: cloths[0].id };
  return hobbledSpacing(resolvedOf(hobble, face, cloths), lengthMm).values;
}

function laid(lengthMm: number, hobble: Hobble, shade: Shade = {}, cloths: Cloths = []) {
  return laidAt(lengthMm, resolvedOf(hobble, shade, cloths));
}

describe("published rule, Singer Sewing for the Home, in its two readings; derived run X2: L 45 in", () => {
  test("n folds of about six: tape L/n, cloth 2L/n, 12.86 + 6.43 = 19.29 in around", () => {
    const { spacings, tapeMm, clothMm } = spacingOf(inches(45), { rule: "folds-of-six" });
    expect(spacings).toBe(7);
    expect(Math.abs(tapeMm / 25.4 - 6.43)).toBeLessThan(0.005);
    expect(Math.abs(clothMm / 25.4 - 12.86)).toBeLessThan(0.005);
    expect(Math.abs((tapeMm + clothMm) / 25.4 - 19.29)).toBeLessThan(0.005);
  });

  test("to the letter: cloth L/n, tape L/2n, 6.43 + 3.21 = 9.64 in around", () => {
    const { spacings, tapeMm, clothMm } = spacingOf(inches(45), { rule: "folds-of-three" });
    expect(spacings).toBe(14);
    expect(Math.abs(clothMm / 25.4 - 6.43)).toBeLessThan(0.005);
    expect(Math.abs(tapeMm / 25.4 - 3.21)).toBeLessThan(0.005);
    expect(Math.abs((tapeMm + clothMm) / 25.4 - 9.64)).toBeLessThan(0.005);
  });

  test.each(["folds-of-six", "folds-of-three"] as const)(
    "%s: face and lining 2 × L, tape L + 3 in = 48",
    (rule) => {
      const { form } = laid(inches(45), { rule });
      const cloth = form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0);
      expect(cloth / 25.4).toBeCloseTo(90, 6);
      expect(form.haberdashery[0]?.lengthMm ?? 0).toBeCloseTo(inches(48), 6);
      expect(form.allowances.every(({ layers }) => layers === undefined)).toBe(true);
    },
  );
});

/** Workroom notes on hobbled shades (E9): repeat 17 in, tape 7 in, two repeats on three folds: 11.33 in of cloth, 18.33 around. */
test("E9: 2 × 17 / 3 = 11.33 in on 7 in of tape, a fullness of 1.62", () => {
  const spacing = spacingOf(inches(49), { tapeMm: inches(7), repeats: 2, folds: 3 }, printed(17));
  expect(spacing.spacings).toBe(7);
  expect(Math.abs(spacing.clothMm / 25.4 - 11.33)).toBeLessThan(0.005);
  expect(Math.abs((spacing.clothMm + spacing.tapeMm) / 25.4 - 18.33)).toBeLessThan(0.005);
  expect(Math.abs(spacing.clothMm / spacing.tapeMm - 1.62)).toBeLessThan(0.005);
});

test("E9: left to itself the planner finds the same two repeats on three folds", () => {
  expect(matchRepeat({ repeatMm: inches(17), tapeMm: inches(7), fullness: 1.62 })).toEqual({
    repeats: 2,
    folds: 3,
  });
});

/** The same notes (E10): without a pattern 6 in of tape take up to about 10.5 in of cloth, 1.75 ×, 16.5 in around. */
test("E10: 6 in of tape and a fullness of 1.75 give 10.5 in of cloth", () => {
  const { tapeMm, clothMm } = spacingOf(inches(48), {});
  expect(tapeMm).toBeCloseTo(inches(6), 9);
  expect(clothMm).toBeCloseTo(inches(10.5), 9);
});

/** “Hobbling the hobbled shade”: cut length 1.5 L and hems. */
test("leaner: a fullness of 1.5 takes half the length more", () => {
  const { form } = laid(inches(48), { fullness: 1.5 });
  expect(form.allowances[0]?.lengthMm ?? 0).toBeCloseTo(inches(24), 6);
});

describe("pattern on the folds", () => {
  test("the mark n folds further up lies at the same place of the repeat, to half a millimetre", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 800, noNaN: true }),
        fc.double({ min: 400, max: 3000, noNaN: true }),
        fc.double({ min: 70, max: 250, noNaN: true }),
        (repeatMm, lengthMm, tapeMm) => {
          const cloths: Cloths = [
            {
              id: "print",
              name: "Print",
              usableWidthMm: 1370,
              massGsm: 200,
              repeat: { verticalMm: repeatMm },
            },
          ];
          const { match } = spacingOf(lengthMm, { tapeMm }, cloths);
          fc.pre(match !== undefined);
          const { form } = laid(lengthMm, { tapeMm }, { face: "print" }, cloths);
          const at = [0, ...form.marks.map((mark) => mark.atMm)];
          const folds = match?.folds ?? 1;
          for (let i = 0; i + folds < at.length; i += 1) {
            const phase = ((at[i + folds] ?? 0) - (at[i] ?? 0)) / repeatMm;
            expect(Math.abs(phase - Math.round(phase)) * repeatMm).toBeLessThan(0.5);
          }
        },
      ),
    );
  });

  test("a repeat that fits no whole fold is reported, and the offered tape spacing cures it", () => {
    const cloths = printed(31);
    const first = laid(inches(45), { tapeMm: inches(4) }, { face: "print" }, cloths);
    const finding = first.findings.find(({ id }) => id === "shape.hobble-pattern-unmatched");
    const value = finding?.remedies[0]?.patch[0];
    if (value === undefined || !("value" in value))
      throw new Error("invalid finding: no tape spacing offered");
    const tapeMm = typeof value.value === "number" ? value.value : Number.NaN;
    const second = laid(inches(45), { tapeMm }, { face: "print" }, cloths);
    expect(second.findings.map(({ id }) => id)).not.toContain("shape.hobble-pattern-unmatched");
  });
});

describe("what does not go together", () => {
  const ids = (shade: Shade, cloths: Cloths = [], hobble: Hobble = {}) =>
    laid(1200, hobble, shade, cloths).findings.map(({ id }) => id);

  test("a pile creases in soft folds", () => {
    const velvet: Cloths = [{ id: "velvet", name: "Velvet", usableWidthMm: 1370, massGsm: 380, nap: true }];
    expect(ids({ face: "velvet" }, velvet)).toContain("shape.hobbled-cloth-too-stiff");
    expect(ids({})).not.toContain("shape.hobbled-cloth-too-stiff");
  });

  test("blackout, ribs, and a fullness beyond 1.5 to 2", () => {
    expect(ids({ blackout: "three-pass-blackout" })).toContain("shape.hobbled-blackout");
    expect(ids({ making: { ribs: { kind: "lining-pocket" } } })).toContain("shape.ribs-left-out");
    expect(ids({}, [], { fullness: 1.49 })).toContain("shape.hobble-fullness");
    expect(ids({}, [], { fullness: 1.5 })).not.toContain("shape.hobble-fullness");
    expect(ids({}, [], { fullness: 2 })).not.toContain("shape.hobble-fullness");
    expect(ids({}, [], { fullness: 2.01 })).toContain("shape.hobble-fullness");
  });
});

describe("shape", () => {
  test("soft folds hang below every mark, lowered as well", () => {
    const { grid, form, size } = laid(inches(48), {});
    const { section } = hobbledShape({ size, grid, form }, 0);
    expect(section.folds.length).toBe(grid.rows.length + 1);
    for (const fold of section.folds) {
      const droop = (fold.arcMm - (fold.lowerYMm - fold.upperYMm)) / 2;
      expect(fold.bottomYMm).toBeGreaterThan(fold.lowerYMm + 0.4 * droop);
    }
  });
});
