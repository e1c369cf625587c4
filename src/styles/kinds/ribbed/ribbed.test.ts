import { describe, expect, test } from "vitest";
import { jobWith } from "../../../../test/job-with.ts";
import { type JobInput, jobSchema } from "../../../job/index.ts";
import { plan } from "../../../plan/index.ts";
import { inches } from "../../../units/index.ts";

type Window = JobInput["rooms"][number]["windows"][number];
type Shade = NonNullable<Window["shade"]>;

function planned(widthMm: number, lengthMm: number, shade: Shade, job: Partial<JobInput> = {}) {
  const one = plan(
    jobWith(
      {
        opening: { widthsMm: [widthMm], heightsMm: [lengthMm] },
        shade: { style: "ribbed", mount: "to-size", ...shade },
      },
      job,
    ),
  ).shades[0];
  if (one === undefined) throw new Error("invalid test job: no shade");
  return one;
}

const cut = (shade: ReturnType<typeof planned>, layer: string) => {
  const found = shade.cloth.layers.find((one) => one.layer === layer);
  return [(found?.cutWidthMm ?? 0) / 25.4, (found?.cutLengthMm ?? 0) / 25.4];
};
const ids = (shade: ReturnType<typeof planned>) => shade.findings.map(({ id }) => id);

/** “Roman blinds” (2012), E7: 33.5 × 33.5 in, face 35.5 × 43, lining 34.5 × 48, strips of 3 × 33. */
test("E7: battens in strips, 33.5 in square", () => {
  const shade = planned(inches(33.5), inches(33.5), {
    making: {
      ribs: { kind: "strip-pocket" },
      hems: {
        sideTurnMm: inches(1),
        sideTurns: 1,
        bottomTurnMm: inches(4),
        bottomTurns: 1,
        boardAllowanceMm: inches(5.5),
      },
      lining: { widthOverFinishedMm: inches(1), lengthOverFinishedMm: inches(14.5) },
    },
  });
  expect(cut(shade, "face")).toEqual([35.5, 43].map((inch) => expect.closeTo(inch, 6)));
  expect(cut(shade, "lining")).toEqual([34.5, 48].map((inch) => expect.closeTo(inch, 6)));
  expect((shade.cloth.strips?.widthMm ?? 0) / 25.4).toBeCloseTo(3, 6);
  expect((shade.cloth.strips?.lengthMm ?? 0) / 25.4).toBeCloseTo(33, 6);
  expect(shade.cloth.strips?.count).toBe(shade.grid.rows.length);
});

/**
 * “Calculating pockets spacing” (soft-furnishing FAQ), E1: 99 cm, headrail 7, seven half folds: rods at 13.1, 39.4 and
 * 65.7 cm, pockets marked on the lining at 14 cm, then every 28 (rounded there to whole centimetres).
 */
describe("E1 with pockets", () => {
  const shade = planned(900, 990, { making: { fold: { headrailMm: 70, rows: 3 } } });

  test("ribs are proposed in pockets of the lining, one at every row", () => {
    expect(shade.form.ribs).toEqual({ rows: [1, 2, 3], face: "back" });
    expect(shade.grid.rows.map(({ fromHemMm }) => fromHemMm)).toEqual(
      [131, 394, 657].map((mm) => expect.closeTo(mm, -0.3)),
    );
  });

  test("lines on the lining at 14 cm, then every 28", () => {
    const lines = shade.cloth.ribLines.map(({ onLiningMm }) => onLiningMm);
    expect(Math.abs((lines[0] ?? 0) - 140)).toBeLessThan(5);
    for (let i = 1; i < lines.length; i += 1)
      expect(Math.abs((lines[i] ?? 0) - (lines[i - 1] ?? 0) - 280)).toBeLessThan(5);
  });

  test("the lining alone takes 2 cm for each pocket", () => {
    const plain = planned(900, 990, { style: "flat", making: { fold: { headrailMm: 70, rows: 3 } } });
    const [, face] = cut(shade, "face");
    const [, lining] = cut(shade, "lining");
    expect(face).toBeCloseTo(cut(plain, "face")[1] ?? 0, 6);
    expect(((lining ?? 0) - (cut(plain, "lining")[1] ?? 0)) * 25.4).toBeCloseTo(60, 6);
  });
});

/** Pockets through a layer consume two depths of that layer for every rib (geometry). */
describe("take-up in the right layer", () => {
  const making = (kind: string, at: string, face: string) => ({
    making: { ribs: { kind, at, face, pocketMm: 12 }, fold: { rows: 4 } },
  });
  const plain = planned(900, 1500, { style: "flat", making: { fold: { rows: 4 } } });

  test.each([
    ["lining-pocket", "rows", "back", 0, 4],
    ["through-pocket", "rows", "front", 4, 4],
    ["face-pocket", "rows", "front", 4, 0],
    ["face-pocket", "half-folds", "front", 8, 0],
    ["strip-pocket", "half-folds", "back", 0, 0],
    ["bare", "rows", "front", 0, 0],
  ])("%s at %s, %s: face %d pockets, lining %d", (kind, at, face, inFace, inLining) => {
    const shade = planned(900, 1500, making(kind, at, face) as Shade);
    for (const [layer, pockets] of [
      ["face", inFace],
      ["lining", inLining],
    ] as const) {
      const more = ((cut(shade, layer)[1] ?? 0) - (cut(plain, layer)[1] ?? 0)) * 25.4;
      expect(more).toBeCloseTo(2 * 12 * pockets, 6);
    }
    expect(shade.cloth.ribLines).toHaveLength(at === "rows" ? 4 : 8);
  });

  test("ribs between rows lie on the half folds: every f from the hem to the headrail line", () => {
    const shade = planned(900, 1500, making("strip-pocket", "half-folds", "back") as Shade);
    const half = shade.grid.bottomSectionMm;
    for (const [i, line] of shade.cloth.ribLines.entries())
      expect(line.fromHemMm).toBeCloseTo((i + 1) * half, 6);
  });
});

describe("proposals and wrong combinations", () => {
  test("unlined, strips are proposed; asked for without ribs, it says so and its remedy cures", () => {
    expect(planned(900, 1500, { lining: null }).cloth.strips).toBeDefined();
    const none = planned(900, 1500, { making: { ribs: { kind: "none" } } });
    expect(ids(none)).toContain("shape.ribbed-without-ribs");
  });

  test("columns may stand further apart than without ribs", () => {
    const ribbed = planned(1500, 1500, {});
    const flat = planned(1500, 1500, { style: "flat" });
    expect(ribbed.grid.columns.length).toBeLessThan(flat.grid.columns.length);
  });

  test("a pocket in the lining cannot lie at the front; a rib needs its pocket; a pile is crushed; a pattern broken", () => {
    const ribs = (more: object): Shade => ({ making: { ribs: { ...more } } });
    expect(ids(planned(900, 1500, ribs({ face: "front" })))).toContain("shape.lining-pocket-in-front");
    expect(ids(planned(900, 1500, ribs({ rib: "rib-dowel-8", pocketMm: 12 })))).toContain(
      "shape.pocket-too-tight",
    );
    expect(ids(planned(900, 1500, ribs({ rib: "rib-dowel-8", pocketMm: 13 })))).not.toContain(
      "shape.pocket-too-tight",
    );
    const cloth = { usableWidthMm: 1370, massGsm: 300 };
    const own = jobSchema.shape.cloths.parse([
      { ...cloth, id: "v", name: "Velvet", nap: true },
      { ...cloth, id: "p", name: "Print", repeat: { verticalMm: 320 } },
    ]);
    const front = { kind: "through-pocket", face: "front" };
    expect(ids(planned(900, 1500, { ...ribs(front), face: "v" }, { cloths: own }))).toContain(
      "shape.ribs-crush-pile",
    );
    expect(ids(planned(900, 1500, { ...ribs(front), face: "p" }, { cloths: own }))).toContain(
      "shape.ribs-break-pattern",
    );
  });
});
