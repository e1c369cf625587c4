import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { expectNear } from "../../../test/near.ts";
import { CATALOGUE, type Drive } from "../../job/index.ts";
import type { LiftPartsInput } from "../lift-parts-input.ts";
import { chooseTubeLiftParts } from "./choose-tube-lift-parts.ts";
import type { TubeKind } from "./tube-lift-parts.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
const { resolved, size } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });

const drive = (id: string, over: Partial<Drive> = {}): Drive => ({
  ...{ id, name: `Drive ${id}`, kind: "loop", lengthMm: 40, heightMm: 40, depthMm: 30, ratio: 1, screws: 2 },
  ...{ massMaxKg: 9, ...over },
});

/**
 * 1,000 by 2,000 mm of cloth of 200 g/m², and 985 mm of a bar of 100 g/m: a quarter more cloth than its area for hems
 * gives 0.5 + 0.0985 kg. A board of 994 mm, spools of 30 mm at 150 and 850 mm.
 */
const MASS_KG = 0.5985;
function choose(drives: readonly Drive[], kind: TubeKind = "tube-loop", over: object = {}) {
  const shade = {
    ...{ ...resolved, style: "flat", drives, drive: undefined },
    cloths: { face: { ...resolved.cloths.face, massGsm: 200 } },
    bar: { ...resolved.bar, massGPerM: 100 },
    making: { ...resolved.making, board: { ...resolved.making.board, barShorterMm: 15 } },
    tube: { id: "tube", name: "Tube", diameterMm: 20, spoolLengthMm: 30, spoolFlangeMm: 36 },
    ...over,
  };
  return chooseTubeLiftParts(
    {
      ...{ shade, columns: [{ xMm: 150 }, { xMm: 850 }] },
      size: { ...size, finishedWidthMm: 1000, finishedLengthMm: 2000, boardLengthMm: 994 },
    } as unknown as LiftPartsInput,
    kind,
  );
}
const chosen = (...given: Parameters<typeof choose>) => {
  const { drive: found, refused, asked } = choose(...given).values;
  return {
    id: found.id,
    refused: refused.map(({ drive: one, reason }) => [one.id, plain(reason)]),
    asked: asked?.id,
  };
};

describe("which drive turns the tube", () => {
  it("weighs the shade about: cloth on its area and a quarter more, and the bar", () => {
    const { workings } = choose([drive("any")]);
    expect(workings.map(({ value }) => value)).toHaveLength(3);
    expectNear(workings[0]?.value ?? 0, MASS_KG, 1e-12);
    const folded = choose([drive("any")], "tube-loop", { style: "relaxed" });
    // Without a bar in its hem, cloth alone.
    expectNear(folded.workings[0]?.value ?? 0, 0.5, 1e-12);
    const broad = { ...resolved.making, board: { ...resolved.making.board, barShorterMm: 2000 } };
    expectNear(choose([drive("any")], "tube-loop", { making: broad }).workings[0]?.value ?? 0, 0.5, 1e-12);
  });

  it("is the first of its kind that takes the weight and finds a place; the others before it say why not", () => {
    expect(
      chosen([
        drive("spring", { kind: "spring" }),
        drive("weak", { massMaxKg: 0.5 }),
        // Outside the spool at 150 mm: from 3 + 3 mm to 150 − 15 − 3 mm, 126 mm; between the spools 664 mm.
        drive("long", { lengthMm: 665 }),
        drive("good"),
        drive("better", { massMaxKg: 99 }),
      ]),
    ).toEqual({
      id: "good",
      refused: [
        ["weak", "takes at most 500 g; this shade weighs about 599 g"],
        ["long", "finds no place beside the spools"],
      ],
      asked: undefined,
    });
    expect(chosen([drive("fits", { lengthMm: 664 })]).refused).toEqual([]);
    expect(chosen([drive("unknown", { massMaxKg: undefined })])).toMatchObject({
      id: "unknown",
      refused: [],
    });
  });

  it("takes just its limit; of a spring the lightest shade counts as well", () => {
    const exact = choose([drive("any")]).workings[0]?.value ?? 0;
    expect(chosen([drive("at", { massMaxKg: exact }), drive("next")]).id).toBe("at");
    const spring = (massMinKg: number | undefined) => drive("strong", { kind: "spring", massMinKg });
    const next = drive("next", { kind: "spring" });
    expect(chosen([spring(0.7), next], "spring")).toMatchObject({
      id: "next",
      refused: [["strong", "is made for 700 g and more; this shade weighs about 599 g"]],
    });
    for (const least of [exact, 0.5, undefined])
      expect(chosen([spring(least), next], "spring").id).toBe("strong");
    // No other drive lifts a shade by itself.
    expect(chosen([drive("loop", { massMinKg: 0.7 })]).refused).toEqual([]);
  });

  it("is the one that misses the weight by least where none will do, and it is not among the refused", () => {
    expect(
      chosen([
        drive("a", { massMaxKg: 0.1 }),
        drive("b", { massMaxKg: 0.4 }),
        drive("c", { massMaxKg: 0.3 }),
      ]),
    ).toEqual({
      id: "b",
      refused: [
        ["a", "takes at most 100 g; this shade weighs about 599 g"],
        ["c", "takes at most 300 g; this shade weighs about 599 g"],
      ],
      asked: undefined,
    });
    // Of two that miss by as much, the first.
    expect(chosen([drive("a", { massMaxKg: 0.4 }), drive("b", { massMaxKg: 0.4 })]).id).toBe("a");
    const springs = [0.9, 0.8].map((massMinKg) => drive(`from ${massMinKg}`, { kind: "spring", massMinKg }));
    expect(chosen([...springs, drive("to 0.3", { kind: "spring", massMaxKg: 0.3 })], "spring").id).toBe(
      "from 0.8",
    );
    const long = { lengthMm: 900, massMaxKg: undefined };
    expect(chosen([drive("weak", { massMaxKg: 0.5 }), drive("long", long)]).id).toBe("long");
  });

  it("is the maker's own where it is of the kind, whatever it takes; else it is told which was asked for", () => {
    const own = drive("own", { massMaxKg: 0.1, lengthMm: 900 });
    expect(chosen([drive("a")], "tube-loop", { drive: own })).toEqual({
      id: "own",
      refused: [],
      asked: undefined,
    });
    const other = drive("wand", { kind: "wand" });
    expect(chosen([other, drive("a")], "tube-loop", { drive: other })).toEqual({
      id: "a",
      refused: [],
      asked: "wand",
    });
  });

  it("comes from the catalogue where the shelf has none of its kind", () => {
    const first = CATALOGUE.drives.find(({ kind }) => kind === "motor");
    expect(first).toBeDefined();
    const { drive: found, refused } = choose([drive("loop")], "motor").values;
    expect([found, ...refused.map((one) => one.drive)]).toContain(first);
    expect(found.kind).toBe("motor");
  });
});

it("tube and drive hang as low as the larger of them asks: the drive about the axis, the flanges 2 mm clear of the board", () => {
  const low = (heightMm: number) => {
    const { axisMm, heightMm: below } = choose([drive("any", { heightMm })]).values;
    return [axisMm, below];
  };
  // Flanges of 36 mm: the axis 18 + 2 mm down unless half of the drive is more.
  expect(low(30)).toEqual([20, 38]);
  expect(low(38)).toEqual([20, 39]);
  expect(low(50)).toEqual([25, 50]);
});
