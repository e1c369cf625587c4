import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clothOf, gridOf, type ShadeInput } from "../../test/cloth-shade.ts";
import { resolvedWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { measure } from "../measure/index.ts";
import type { Form } from "../shade-plan/index.ts";
import { flatForm } from "../styles/folding/flat-form.ts";
import { centimetres, inches, MM_PER_YARD } from "../units/index.ts";
import { joinEqualParts } from "./joins.ts";
import { planCloth } from "./plan-cloth.ts";
import { halfDropExtraMm, repeatLengthMm } from "./repeats.ts";

interface Example {
  source: string;
  widthIn: number;
  lengthIn: number;
  rows: number;
  shade: ShadeInput;
  form?: Partial<Form>;
  faceIn: [width: number, length: number];
  liningIn?: [width: number, length: number];
  innerIn?: [width: number, length: number];
}

const hems = (sideIn: number, sideTurns: 1 | 2, bottomIn: number, boardIn: number) => ({
  sideTurnMm: inches(sideIn),
  sideTurns,
  bottomTurnMm: inches(bottomIn),
  bottomTurns: 1 as const,
  boardAllowanceMm: inches(boardIn),
});

const EXAMPLES: Example[] = [
  {
    source: "“Roman shades” (2018): 27 × 58 in shade, cut 33 × 68",
    widthIn: 27,
    lengthIn: 58,
    rows: 6,
    shade: { mount: "to-size", lining: null, making: { hems: hems(1.5, 2, 4, 6) } },
    faceIn: [33, 68],
  },
  {
    source: "“Measuring and cutting your fabric” (2011): 35 × 35 1/4, cut 39 × 40 1/4",
    widthIn: 35,
    lengthIn: 35.25,
    rows: 4,
    shade: { mount: "to-size", lining: null, making: { hems: hems(1, 2, 4, 1) } },
    faceIn: [39, 40.25],
  },
  {
    source: "home blog, September 2011: window 45 × 56, both layers 46 × 60 1/2",
    widthIn: 45,
    lengthIn: 56,
    rows: 5,
    shade: {
      mount: "to-size",
      making: {
        hems: hems(0.5, 1, 0.5, 4),
        lining: { widthOverFinishedMm: inches(1), lengthOverFinishedMm: inches(4.5) },
      },
    },
    faceIn: [46, 60.5],
    liningIn: [46, 60.5],
  },
  {
    source: "“Roman blinds” (2012): 33 1/2 × 33 1/2, face 35 1/2 × 43, lining 34 1/2 × 48",
    widthIn: 33.5,
    lengthIn: 33.5,
    rows: 3,
    shade: {
      mount: "to-size",
      making: {
        hems: hems(1, 1, 3.5, 6),
        lining: { widthOverFinishedMm: inches(1), lengthOverFinishedMm: inches(14.5) },
        ribs: { kind: "strip-pocket" },
      },
    },
    faceIn: [35.5, 43],
    liningIn: [34.5, 48],
  },
  {
    source: "“Mock Roman shade” (2014): 4 folds of 2 in, cut W + 6, L + 3 + 16",
    widthIn: 30,
    lengthIn: 50,
    rows: 4,
    shade: {
      mount: "to-size",
      lining: null,
      making: { hems: hems(1.5, 2, 3, 0), ribs: { kind: "through-pocket", pocketMm: inches(2) } },
    },
    faceIn: [36, 69],
  },
  {
    source: "home blog, September 2011, as a bagged-out make-up: 1/2 in seams, 4 in for the board",
    widthIn: 45,
    lengthIn: 56,
    rows: 5,
    shade: {
      making: { hems: { makeUp: "bagged-out", seamMm: inches(0.5), boardAllowanceMm: inches(4) } },
    },
    faceIn: [46, 60.5],
    liningIn: [46, 60.5],
  },
  {
    source: "“Insulated shades cut chill of cold drafts”: face and back w + 1/2 × h + 3, inner w − 1 × h + 2",
    widthIn: 32,
    lengthIn: 54,
    rows: 6,
    shade: {
      interlining: "domett",
      making: {
        hems: { makeUp: "bagged-out", seamMm: inches(0.25), boardAllowanceMm: inches(2.75) },
        lining: { innerNarrowerMm: inches(1), innerLongerMm: inches(2) },
      },
    },
    faceIn: [32.5, 57],
    liningIn: [32.5, 57],
    innerIn: [31, 56],
  },
  {
    // Not a shade: 47 wide, 16 drop, one 8 in pleat, 3 1/2 in returns; 47 + 8 + .5 + 7 + 1 and 16 + 3.5 + 1.
    source: "“Box pleat valance tutorial”: a pleated board valance with returns is cut 63 1/2 × 20 1/2",
    widthIn: 47,
    lengthIn: 16,
    rows: 2,
    shade: {
      making: {
        hems: { makeUp: "bagged-out", seamMm: inches(0.5), boardAllowanceMm: inches(4) },
        board: { section: "board-1x4", returns: "wrapped" },
      },
    },
    form: {
      allowances: [
        { label: "pleat", widthMm: inches(8), lengthMm: 0 },
        { label: "ease", widthMm: inches(0.5), lengthMm: 0 },
      ],
    },
    faceIn: [63.5, 20.5],
  },
];

function exampleCloth(example: Example) {
  return clothOf({
    widthMm: inches(example.widthIn),
    lengthMm: inches(example.lengthIn),
    rows: example.rows,
    shade: example.shade,
    form: example.form,
  }).cloth;
}

describe("cut sizes of published examples", () => {
  it.each(EXAMPLES)("$source", (example) => {
    const cloth = exampleCloth(example);
    const face = cloth.layers.find((cut) => cut.layer === "face");
    expectNear(face?.cutWidthMm ?? 0, inches(example.faceIn[0]), 1e-6, "face width");
    expectNear(face?.cutLengthMm ?? 0, inches(example.faceIn[1]), 1e-6, "face length");
    if (example.liningIn) {
      const lining = cloth.layers.find((cut) => cut.layer === "lining");
      expectNear(lining?.cutWidthMm ?? 0, inches(example.liningIn[0]), 1e-6, "lining width");
      expectNear(lining?.cutLengthMm ?? 0, inches(example.liningIn[1]), 1e-6, "lining length");
    }
    if (example.innerIn) {
      const inner = cloth.layers.find((cut) => cut.layer === "interlining");
      expectNear(inner?.cutWidthMm ?? 0, inches(example.innerIn[0]), 1e-6, "inner width");
      expectNear(inner?.cutLengthMm ?? 0, inches(example.innerIn[1]), 1e-6, "inner length");
    }
  });

  it("“Roman blinds” (2012): pocket strips 3 × 33 in", () => {
    const example = EXAMPLES[3];
    if (example === undefined) throw new Error("invalid example");
    const { strips } = exampleCloth(example);
    expectNear(strips?.widthMm ?? 0, inches(3), 1e-6);
    expectNear(strips?.lengthMm ?? 0, inches(33), 1e-6);
    expect(strips?.count).toBe(3);
  });

  it("“Roman shades” (2018): two such shades need 136 in of 55 in cloth, 4 yd bought by the yard", () => {
    const example = EXAMPLES[0];
    if (example === undefined) throw new Error("invalid example");
    const face = exampleCloth(example).layers[0];
    expectNear(2 * (face?.lengthMm ?? 0), inches(136), 1e-6, "both");
    expect(Math.ceil((2 * (face?.lengthMm ?? 0)) / MM_PER_YARD)).toBe(4);
  });

  it("“Calculating pockets spacing”: lines on the lining at 14 cm, then every 28 cm", () => {
    const resolved = resolvedWith({
      opening: { widthsMm: [900], heightsMm: [990] },
      shade: { mount: "to-size", making: { ribs: { kind: "lining-pocket", pocketMm: 10 } } },
    });
    const { values: size } = measure(resolved);
    const half = (990 - 70) / 7;
    const laid = gridOf(3, 990, [50, 300]);
    const rows = laid.rows.map((row, i) => ({ ...row, fromHemMm: half + 2 * half * i }));
    const grid = { ...laid, rows };
    const { values: cloth } = planCloth({
      shade: resolved,
      size,
      grid,
      form: flatForm(resolved, size, grid),
    });
    // Published with the half fold rounded to 13 cm: 14, 42, 70 cm.
    cloth.ribLines.forEach((line, i) => {
      expectNear(line.onLiningMm, centimetres(14 + 28 * i), 2 + 3 * i, `line ${i + 1}`);
    });
  });
});

describe("repeats", () => {
  it("“Fabric required”: 240 cm cut, 37 cm repeat: 259 cm each, 10.36 m for four (curtain)", () => {
    expectNear(4 * repeatLengthMm(2400, 370), 10_360, 1e-6);
  });
  it("“Half drop repeat”: 3 widths of 195 cm, 65 cm repeat: 6.5 m (curtain)", () => {
    const repeat = { verticalMm: 650, match: "half-drop" } as const;
    const total = 3 * repeatLengthMm(1950, 650) + halfDropExtraMm(repeat, 1950, 3, "whole-repeat-per-order");
    expectNear(total, 6500, 1e-6);
  });
  it("“Half drop pattern repeats”: nothing more where rounding up left half a repeat", () => {
    const repeat = { verticalMm: 600, match: "half-drop" } as const;
    expect(halfDropExtraMm(repeat, 1500, 2, "half-repeat-if-needed")).toBe(0);
    expect(halfDropExtraMm(repeat, 1700, 2, "half-repeat-if-needed")).toBe(300);
    expect(halfDropExtraMm(repeat, 1700, 1, "half-repeat-if-needed")).toBe(0);
  });
  it("derived run X1: 66.5 in with a 13.5 in repeat is 67.5 in", () => {
    expectNear(repeatLengthMm(inches(66.5), inches(13.5)), inches(67.5), 1e-6);
  });
});

describe("joins", () => {
  const plain = (usableMm: number, seamMm: number) => ({ usableMm, seamMm, centreMm: usableMm / 2 });

  it("“Fabric required”: 440 cm from 140 cm cloth is 4 widths (curtain, no seams)", () => {
    const joined = joinEqualParts(4400, plain(1400, 0));
    expect(joined.drops).toBe(4);
    expect(joined.panels.map((panel) => Math.round(panel.widthMm))).toEqual([100, 1400, 1400, 1400, 100]);
  });

  it("“How to make Austrian blinds/shades”: a 72 in frill of 36 in cloth is 2 widths", () => {
    expect(joinEqualParts(inches(72), plain(inches(36), 0)).drops).toBe(2);
  });

  it("puts a full width in the middle, equal parts at the sides, and adds up", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 12_000, noNaN: true }),
        fc.double({ min: 500, max: 3300, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (cutWidthMm, usableMm, seamMm) => {
          fc.pre(cutWidthMm > usableMm);
          const { panels } = joinEqualParts(cutWidthMm, plain(usableMm, seamMm));
          const widths = panels.map((panel) => panel.widthMm);
          const joined = widths.reduce((sum, w) => sum + w, 0) - 2 * seamMm * (panels.length - 1);
          return (
            panels.length % 2 === 1 &&
            Math.abs(joined - cutWidthMm) < 1e-6 &&
            Math.abs((widths[0] ?? 0) - (widths.at(-1) ?? 0)) < 1e-6 &&
            widths.every((w) => w > 0 && w <= usableMm + 1e-6)
          );
        },
      ),
    );
  });
});

describe("on the bolt", () => {
  const shade = fc.record({
    widthMm: fc.double({ min: 200, max: 5000, noNaN: true }),
    lengthMm: fc.double({ min: 300, max: 3500, noNaN: true }),
    usableMm: fc.double({ min: 900, max: 3000, noNaN: true }),
    repeat: fc.option(
      fc.record({
        verticalMm: fc.double({ min: 20, max: 900, noNaN: true }),
        match: fc.constantFrom("straight" as const, "half-drop" as const),
      }),
      { nil: undefined },
    ),
    halfDropRule: fc.constantFrom("whole-repeat-per-order" as const, "half-repeat-if-needed" as const),
  });

  it("buys at least what is cut, lays pieces apart and inside the width, keeps every match", () => {
    fc.assert(
      fc.property(shade, ({ widthMm, lengthMm, usableMm, repeat, halfDropRule }) => {
        const resolved = resolvedWith(
          {
            opening: { widthsMm: [widthMm], heightsMm: [lengthMm] },
            shade: { mount: "to-size", face: "mine", making: { pattern: { halfDropRule } } },
          },
          { cloths: [{ id: "mine", name: "Mine", usableWidthMm: usableMm, massGsm: 200, repeat }] },
        );
        const { values: size } = measure(resolved);
        const grid = gridOf(5, size.finishedLengthMm, [50, 300]);
        const form = flatForm(resolved, size, grid);
        const face = planCloth({ shade: resolved, size, grid, form }).values.layers[0];
        if (face === undefined) return false;
        const used = face.panels.reduce((sum, panel) => sum + panel.widthMm * panel.lengthMm, 0);
        const apart = face.lays.every((a, i) =>
          face.lays
            .slice(i + 1)
            .every(
              (b) =>
                a.xMm + a.widthMm <= b.xMm + 1e-6 ||
                b.xMm + b.widthMm <= a.xMm + 1e-6 ||
                a.yMm + a.lengthMm <= b.yMm + 1e-6 ||
                b.yMm + b.lengthMm <= a.yMm + 1e-6,
            ),
        );
        const inside = face.lays.every(
          (lay) =>
            lay.xMm >= -1e-6 &&
            lay.xMm + lay.widthMm <= usableMm + 1e-6 &&
            lay.yMm + lay.lengthMm <= face.lengthMm + 1e-6,
        );
        return (
          face.buyMm * usableMm >= used - 1 &&
          face.buyMm >= face.lengthMm - 1e-6 &&
          apart &&
          inside &&
          matches(
            face.panels.map((panel) => panel.id),
            face.lays,
            repeat,
          )
        );
      }),
      { numRuns: 300 },
    );
  });

  /** Neighbours share their phase on a straight match and differ by half a repeat on a half drop. */
  function matches(
    ids: string[],
    lays: { panelId: string; yMm: number }[],
    repeat: { verticalMm: number; match: "straight" | "half-drop" } | undefined,
  ): boolean {
    if (repeat === undefined) return true;
    const phases = ids.map((id) => {
      const yMm = lays.find((lay) => lay.panelId === id)?.yMm ?? Number.NaN;
      return yMm / repeat.verticalMm;
    });
    return phases.slice(1).every((phase, i) => {
      const difference = Math.abs(phase - (phases[i] ?? Number.NaN)) % 1;
      const wanted = repeat.match === "half-drop" ? 0.5 : 0;
      const miss = Math.min(Math.abs(difference - wanted), Math.abs(difference - wanted - 1));
      return miss < 1e-6;
    });
  }
});

describe("turned sideways", () => {
  const wide = { id: "wide", name: "Wide", usableWidthMm: 2800, massGsm: 200 };
  const planned = (
    cloth: Partial<typeof wide> & Record<string, unknown>,
    making: NonNullable<ShadeInput["making"]> = {},
    sizeMm: [number, number] = [4000, 1500],
  ) =>
    clothOf({
      widthMm: sizeMm[0],
      lengthMm: sizeMm[1],
      shade: {
        face: "wide",
        lining: null,
        making: {
          hems: { sideTurnMm: 20, sideTurns: 1, bottomTurnMm: 40, bottomTurns: 1, boardAllowanceMm: 60 },
          ...making,
        },
      },
      cloths: [{ ...wide, ...cloth }],
    });
  const ids = (shade: ReturnType<typeof planned>) => shade.findings.map(({ id }) => id);

  // “Railroad”: possible when the cut length is within the usable width; the length bought is the cut width.
  it("comes in one piece and is bought by its cut width, where it is cut shorter than the cloth is wide", () => {
    // Upright three drops of 1600 mm are 4.8 m.
    const shade = planned({ usableWidthMm: 1700 });
    expect(shade.face.turned).toBe(true);
    expect(shade.face.panels).toHaveLength(1);
    expectNear(shade.face.lengthMm, 4040, 1e-9);
    expect(shade.face.lays[0]).toMatchObject({ widthMm: 1600, lengthMm: 4040 });
    expect(ids(shade)).toContain("cloth.railroaded");
  });
  it("stays upright where that takes less, and says what it would cost", () => {
    // Upright two drops of 1600 mm are 3.2 m; sideways 4.04 m.
    const shade = planned({});
    expect(shade.face.turned).toBe(false);
    const finding = shade.findings.find(({ id }) => id === "cloth.could-railroad");
    expect(finding?.text).toContain("more cloth");
    expect(finding?.remedies).toHaveLength(1);
  });
  it("never by itself with a pile, a top or a pattern; asked for, it is told", () => {
    const narrow = { usableWidthMm: 1600 };
    const size: [number, number] = [4000, 1200];
    for (const cloth of [
      { nap: true },
      { direction: "one-way" },
      { repeat: { verticalMm: 300, match: "straight" } },
    ]) {
      expect(planned({ ...narrow, ...cloth }, {}, size).face.turned).toBe(false);
      const asked = planned({ ...narrow, ...cloth }, { pattern: { railroad: "always" } }, size);
      expect(asked.face.turned).toBe(true);
      expect(ids(asked)).toContain("cloth.railroad-sideways");
    }
  });
  it("is refused where the cloth is too narrow", () => {
    const shade = planned({ usableWidthMm: 1400 }, { pattern: { railroad: "always" } });
    expect(shade.face.turned).toBe(false);
    expect(ids(shade)).toContain("cloth.railroad-too-narrow");
  });
  it("shrinks by the other figure each way: 1300 / 0.98 across the cloth, 4040 / 0.95 along it", () => {
    const cloth = { usableWidthMm: 1600, shrinkLength: 0.05, shrinkWidth: 0.02 };
    const { face } = planned(cloth, { pattern: { railroad: "always" } }, [4000, 1200]);
    expectNear(face.cutLengthMm, 1300 / 0.98, 1e-9);
    expectNear(face.cutWidthMm, 4040 / 0.95, 1e-9);
    const upright = planned(cloth, { pattern: { railroad: "never" } }, [4000, 1200]).face;
    expectNear(upright.cutLengthMm, 1300 / 0.95, 1e-9);
    expectNear(upright.cutWidthMm, 4040 / 0.98, 1e-9);
  });
});

describe("bow and skew", () => {
  // ASTM D3882: both are given as shares of the width of the cloth.
  const slanted = (bowShare: number, skewShare: number, making: NonNullable<ShadeInput["making"]> = {}) =>
    clothOf({
      widthMm: 1000,
      lengthMm: 1500,
      shade: {
        face: "mine",
        lining: null,
        making: { hems: { sideTurnMm: 0, bottomTurnMm: 0, boardAllowanceMm: 50 }, ...making },
      },
      cloths: [
        { id: "mine", name: "Mine", usableWidthMm: 1600, massGsm: 200, bowShare, skewShare, shrinkLength: 0 },
      ],
    }).face;

  it("2 % bow and 1 % skew take 30 mm off a piece 1000 mm wide when it is squared", () => {
    const face = slanted(0.02, 0.01);
    expectNear(face.cutLengthMm, 1550 + 30, 1e-9);
    expect(face.makeUp.find(({ label }) => label === "bow and skew")?.lengthMm).toBeCloseTo(30, 9);
  });
  it("turned sideways they come off the width, for the 1550 mm that lie across the cloth", () => {
    expectNear(slanted(0.02, 0.01, { pattern: { railroad: "always" } }).cutWidthMm, 1000 + 46.5, 1e-9);
  });
});

describe("cloth with a pile", () => {
  it("is told to go one way up, and lies so: no lay is turned", () => {
    const { face, findings } = clothOf({
      widthMm: 2500,
      lengthMm: 1200,
      shade: { face: "velvet", lining: null, making: { pattern: { pile: "up" } } },
      cloths: [{ id: "velvet", name: "Velvet", usableWidthMm: 1370, massGsm: 360, nap: true }],
    });
    expect(findings.find(({ id }) => id === "cloth.nap")?.text).toContain("stroking up");
    expect(face.turned).toBe(false);
    expect(face.lays.every((lay) => lay.lengthMm === face.cutLengthMm)).toBe(true);
  });
});
