import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../../test/job-with.ts";
import { laidShade } from "../../../../test/laid-shade.ts";
import { expectNear } from "../../../../test/near.ts";
import type { Making } from "../../../job/index.ts";
import { flatSize } from "../../../shade-plan/index.ts";
import { inches } from "../../../units/index.ts";
import { layPleats, pleatAllowances } from "../../draping/pleats.ts";

function asked(widthMm: number, heightMm: number, making: Making, rest: object = {}) {
  return laidShade(
    resolvedWith({
      opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
      shade: { style: "pleated-balloon", mount: "to-size", making, ...rest },
    }),
  );
}

const W = inches(48);
const L = inches(60);

/**
 * “Box pleat valance tutorial” (not a shade, but a board with a pleat): 47 in wide and 16 in deep, one pleat of 8 in,
 * returns of 3 1/2 in, is cut 63 1/2 × 20 1/2 in: 47 + 8 + 1/2 + 7 + 1 and 16 + 3 1/2 + 1.
 */
test("one 8 in pleat in the published board: 63 1/2 in with its returns and turnings", () => {
  const { making } = resolvedWith({ shade: { style: "pleated-balloon" } });
  const pleats = layPleats([{ xMm: inches(23.5), foldedMm: making.pleat.foldedMm }], "box");
  const width = flatSize(
    { finishedWidthMm: inches(47), finishedLengthMm: inches(16) },
    { allowances: pleatAllowances(pleats, making) },
    "face",
  );
  expectNear(width.widthMm + inches(0.5 + 2 * 3.5 + 1), inches(63.5), 0.01, "cut width");
  expectNear(width.lengthMm + inches(3.5 + 1), inches(20.5), 0.01, "cut length");
});

describe("a pleated balloon", () => {
  test("no pouf is wider than was asked, and one column fewer would make them so", () => {
    const { grid } = asked(W, L, {});
    const poufs = grid.columns.slice(1).map(({ xMm }, i) => xMm - (grid.columns[i]?.xMm ?? 0));
    for (const pouf of poufs) expect(pouf).toBeLessThanOrEqual(inches(12) + 1e-6);
    const span = W - 2 * (grid.columns[0]?.xMm ?? 0);
    expect(span / (poufs.length - 1)).toBeGreaterThan(inches(12));
  });

  test("every pouf has the same cloth across: half of a pleat from either side, a half pleat at the edges", () => {
    const { grid, form } = asked(W, L, {});
    const bay = grid.columnSpacingMm;
    for (const { arcMm } of form.swags) expectNear(arcMm, bay + inches(8), 0.01, "cloth across");
    const folded = form.pleats.reduce((sum, { foldedMm }) => sum + foldedMm, 0);
    const across = form.swags.reduce((sum, { arcMm }) => sum + arcMm, 0);
    expectNear(
      across + 2 * (grid.columns[0]?.xMm ?? 0),
      W + folded,
      0.01,
      "poufs and strips are the flat cloth",
    );
  });

  /** From memory: two or three rings tied together, 10 to 15 in more length. */
  test("three marks tied over 12 in: the pouf hangs by the catenary, or by half of what stays up in it", () => {
    const { grid, form } = asked(W, L, {});
    const sag = form.swags[0]?.sagMm ?? 0;
    const hem = inches(2) + sag;
    const fold = (inches(12) + sag) / 2;
    expectNear(grid.bottomSectionMm, Math.max(hem, fold), 0.01, "lowest row to the lowest point");
    const extra = flatSize({ finishedWidthMm: W, finishedLengthMm: L }, form, "face").lengthMm - L;
    expectNear(extra, inches(14) - grid.bottomSectionMm, 0.01, "more length");
    expect(form.tiedRings).toBe(2);
    const marks = form.marks.filter(({ kind }) => kind === "gather").map(({ atMm }) => atMm);
    [2, 8, 14].forEach((at, i) => {
      expectNear(marks[i] ?? 0, inches(at), 0.01, "mark of the pouf");
    });
  });

  test("without tied marks it hangs straight when lowered and takes no more length", () => {
    const { form, size } = asked(W, L, { pouf: { marks: 0 } });
    expect(form.swags).toEqual([]);
    expectNear(flatSize(size, form, "face").lengthMm, L, 0.01, "flat length");
  });

  test("sewn pleats open no further than their open edge is long; pressed ones by their own half", () => {
    const open = (making: Making) => asked(W, L, making).form.ease?.[1]?.extraMm ?? 0;
    expectNear(open({ pleat: { held: "sewn", openAtHemMm: inches(1) } }), inches(2), 0.01, "sewn");
    expectNear(open({ pleat: { held: "pressed" } }), inches(8), 0.01, "pressed");
  });
});

describe("wrong combinations", () => {
  const found = (making: Making, rest: object = {}) => asked(W, L, making, rest).findings.map(({ id }) => id);

  test("each has its finding, and a usual balloon has none of them", () => {
    const usual = found({});
    expect(usual.filter((id) => id.startsWith("shape."))).toEqual([]);
    expect(found({ ribs: { kind: "lining-pocket" } })).toContain("shape.pleats-with-ribs");
    expect(found({}, { blackout: "blackout-lining" })).toContain("shape.blackout-in-pleats");
    expect(found({}, { interlining: "domett" })).toContain("shape.interlining-in-pleats");
    expect(found({ pleat: { bar: "between" } })).toContain("shape.balloon-bar");
    expect(found({ pleat: { held: "sewn", openAtHemMm: 20 } })).toContain("shape.poufs-thin");
    expect(found({ pouf: { clothMm: 3000 } })).toContain("shape.pouf-too-big");
    expect(found({ pleat: { foldedMm: inches(14) } })).toContain("shape.pleats-too-wide");
  });

  test("a repeat that the pleat does not hide whole is named, with the pleat that does", () => {
    const cloths = [
      {
        id: "rose",
        name: "Rose",
        usableWidthMm: 1370,
        massGsm: 200,
        repeat: { verticalMm: 300, horizontalMm: 190 },
      },
    ];
    const withCloth = (foldedMm: number) =>
      laidShade(
        resolvedWith(
          {
            opening: { widthsMm: [W], heightsMm: [L] },
            shade: {
              style: "pleated-balloon",
              mount: "to-size",
              face: "rose",
              making: { pleat: { foldedMm } },
            },
          },
          { cloths },
        ),
      ).findings.find(({ id }) => id === "shape.pattern-in-pleats");
    expect(withCloth(190)).toBeUndefined();
    expect(withCloth(203)?.remedies[0]?.patch[0]).toMatchObject({ value: 190 });
  });
});
