import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../../test/job-with.ts";
import { laidShade } from "../../../../test/laid-shade.ts";
import { expectNear } from "../../../../test/near.ts";
import type { Making } from "../../../job/index.ts";
import { flatSize } from "../../../shade-plan/index.ts";
import { inches } from "../../../units/index.ts";
import { baysOf } from "../../draping/draped-line.ts";
import { HOLDS_NO_MORE, HOLDS_WELL } from "./judge-relaxed.ts";

function shadeOf(making: Making, { widthMm = inches(36), heightMm = inches(60), ...rest } = {}) {
  return laidShade(
    resolvedWith({
      opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
      shade: { style: "relaxed", mount: "to-size", making, ...rest },
    }),
  );
}

/** “Relaxed Roman shades”, notes of a workroom talk: outer columns alone, no ribs, no rings in the middle. */
test("two columns, no bar and no ribs, whatever was asked", () => {
  for (const making of [
    {},
    { columns: { count: 5 } },
    { ribs: { kind: "lining-pocket" } },
  ] satisfies Making[]) {
    const { grid, form } = shadeOf(making);
    expect(grid.columns).toHaveLength(2);
    expect(form.bar).toBeUndefined();
    expect(form.ribs.rows).toEqual([]);
  }
});

test("the panel is wider at the hem by what the dip takes, and no longer", () => {
  const { size, form } = shadeOf({ relax: { extraWidthMm: inches(2) } });
  const flat = flatSize(size, form, "face");
  // “Mock Roman shade” (2014): cut 2 in wider at the bottom.
  expectNear(flat.widthMm - size.finishedWidthMm, inches(2), 1e-3, "width");
  expectNear(flat.lengthMm, size.finishedLengthMm, 1e-6, "length");
});

describe("the lower edge", () => {
  test("cut to the dip it shows lowered: the lowest point is the finished length, the columns hang a dip higher", () => {
    const { size, at } = shadeOf({ relax: { dipMm: 100 } });
    const { lowestYMm, section } = at(0);
    expectNear(lowestYMm ?? 0, size.finishedLengthMm, 1e-6, "lowest");
    expectNear(size.finishedLengthMm - section.hemYMm, 100, 1e-6, "dip");
  });

  test("cut straight it hangs level until it is raised, then dips by no more than it has risen, up to the dip", () => {
    const { grid, at } = shadeOf({ relax: { dipMm: 100, lowerEdge: "straight" } });
    const dipAt = (liftMm: number) => {
      const { lowestYMm = 0, section } = at(liftMm / grid.travelMm);
      return lowestYMm - section.hemYMm;
    };
    expectNear(dipAt(0), 0, 1e-6, "lowered");
    expectNear(dipAt(60), 60, 1e-6, "risen by 60");
    expectNear(dipAt(100), 100, 1e-3, "risen by the dip");
    expectNear(dipAt(grid.travelMm), 100, 1e-3, "raised");
  });

  test("raised, every fold dips, the lower the deeper; as wide all the way they dip alike", () => {
    const sags = (making: Making) => {
      const { size, grid, form } = shadeOf(making);
      return grid.rows.map(({ fromHemMm }) => {
        const ask = { form, columns: grid.columns, widthMm: size.finishedWidthMm, yMm: 0 };
        return baysOf({ ...ask, aboveHemMm: fromHemMm, risenMm: 1000 })[0]?.sagMm ?? 0;
      });
    };
    const tapered = sags({ relax: { dipMm: 100 } });
    expect(tapered).toEqual([...tapered].sort((a, b) => b - a));
    expect(tapered.at(-1)).toBeGreaterThan(10);
    for (const sag of sags({ relax: { dipMm: 100, widening: "even" } })) expectNear(sag, 100, 1e-3, "even");
  });
});

describe("findings", () => {
  const found = (making: Making, rest: Parameters<typeof shadeOf>[1] = {}) =>
    shadeOf(making, rest).findings.map(({ id, severity }) => `${id} ${severity}`);
  const width = (widthMm: number) => found({}, { widthMm }).filter((id) => id.includes("too-wide"));

  test("width: below, at and above what a dip holds", () => {
    expect(width(HOLDS_WELL.value)).toEqual([]);
    expect(width(HOLDS_WELL.value + 1)).toEqual(["shape.relaxed-too-wide note"]);
    expect(width(HOLDS_NO_MORE.value)).toEqual(["shape.relaxed-too-wide note"]);
    expect(width(HOLDS_NO_MORE.value + 1)).toEqual(["shape.relaxed-too-wide fix"]);
  });

  test("ribs, bar, columns in the middle and stiff layers; a usual shade has none of them", () => {
    expect(found({}).filter((id) => id.startsWith("shape."))).toEqual([]);
    expect(found({ ribs: { kind: "lining-pocket" } })).toContain("shape.relaxed-ribs fix");
    expect(found({ relax: { weight: "bar" } })).toContain("shape.relaxed-bar fix");
    expect(found({ columns: { count: 3 } })).toContain("shape.relaxed-columns fix");
    expect(found({ columns: { count: 2 } })).not.toContain("shape.relaxed-columns fix");
    expect(found({}, { interlining: "domett" } as object)).toContain("shape.relaxed-interlining fix");
    expect(found({}, { blackout: "blackout-lining" } as object)).toContain("shape.relaxed-blackout note");
  });

  test("dips too deep, too shallow, and at odds with the width", () => {
    expect(found({ relax: { dipMm: 600 } })).toContain("shape.relaxed-dip-too-deep fix");
    expect(found({ relax: { dipMm: 40 } })).toContain("shape.relaxed-dip-shallow note");
    expect(found({ relax: { dipMm: 60 } })).not.toContain("shape.relaxed-dip-shallow note");
    expect(found({ relax: { dipMm: 100, extraWidthMm: 200 } })).toContain("shape.relaxed-dip-and-width note");
  });
});
