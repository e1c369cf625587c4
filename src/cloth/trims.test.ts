import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clothOf, type ShadeInput } from "../../test/cloth-shade.ts";
import { expectNear } from "../../test/near.ts";
import type { Cloth } from "../job/index.ts";
import type { LayerCut, Trim } from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";
import { layTrims } from "./lay-trims.ts";

const stripe = { id: "stripe", name: "Stripe", usableWidthMm: 1400, massGsm: 300 };

function banded(
  banding: NonNullable<NonNullable<ShadeInput["making"]>["banding"]>,
  rest: NonNullable<ShadeInput["making"]> = {},
) {
  return clothOf({
    widthMm: 1000,
    lengthMm: 1500,
    shade: {
      banding: "stripe",
      making: {
        hems: {
          sideTurnMm: 20,
          sideTurns: 2,
          bottomTurnMm: 30,
          bottomTurns: 2,
          boardAllowanceMm: 60,
          seamMm: 10,
        },
        banding: { widthMm: 50, turnMm: 10, ...banding },
        ...rest,
      },
    },
    cloths: [stripe],
  });
}

const trim = (trims: readonly Trim[], id: string) => {
  const found = trims.find((one) => one.id === id);
  if (found === undefined) throw new Error(`invalid trims: no ${id}`);
  return found;
};

/** Expected sizes are added up by hand from the parts that a maker names. */
describe("banding", () => {
  it("along the sides, round the edge: 50 shows, 10 turned, 40 in the hem; 60 board, 1500, 60 bottom hem", () => {
    const { cloth } = banded({ where: "sides" });
    expect(trim(cloth.trims, "banding-side")).toMatchObject({
      count: 2,
      widthMm: 100,
      lengthMm: 1620,
      clothId: "stripe",
    });
    expect(cloth.trims.some((one) => one.id === "banding-bottom")).toBe(false);
  });
  it("set in by 25 it is turned on both edges: 10 + 50 + 10", () => {
    const { cloth } = banded({ where: "sides-and-bottom", insetMm: 25 });
    // Sides from the board's cloth to the outer corner of the band and its turn: 60 + 1475 + 10.
    expect(trim(cloth.trims, "banding-side")).toMatchObject({ widthMm: 70, lengthMm: 1545 });
    // Bottom from outer corner to outer corner with its turns: 950 + 2 × 10.
    expect(trim(cloth.trims, "banding-bottom")).toMatchObject({ count: 1, widthMm: 70, lengthMm: 970 });
  });
  it("butted, the bottom lies between the sides: 1000 − 2 × 25 − 2 × 50 + 2 × 10", () => {
    const { cloth } = banded({ where: "all-round", insetMm: 25, corners: "butted" });
    expectNear(trim(cloth.trims, "banding-bottom").lengthMm, 870, 1e-9);
    expectNear(trim(cloth.trims, "banding-top").lengthMm, 870, 1e-9);
  });
  it("shows where it is drawn: bands lie within the shade and as wide as asked", () => {
    const { cloth } = banded({ where: "all-round", insetMm: 25 });
    expect(cloth.bands.map(({ part }) => part)).toEqual(["left", "right", "top", "bottom"]);
    for (const band of cloth.bands) {
      expect(band.xMm).toBeGreaterThanOrEqual(25 - 1e-9);
      expect(band.xMm + band.widthMm).toBeLessThanOrEqual(975 + 1e-9);
      expect(band.yMm + band.heightMm).toBeLessThanOrEqual(1475 + 1e-9);
      expectNear(Math.min(band.widthMm, band.heightMm), 50, 1e-9);
    }
  });
  it("weighs what is cut of it: 2 × 0.1 × 1.62 m² of 300 g/m²", () => {
    const { mass } = banded({ where: "sides" });
    expectNear(mass.parts.find(({ part }) => part === "bands")?.massKg ?? 0, 2 * 0.1 * 1.62 * 0.3, 1e-9);
  });
  it("is joined in three where its pattern must stand and the cloth is too narrow, never in the middle", () => {
    const { cloth } = clothOf({
      widthMm: 2000,
      lengthMm: 1500,
      shade: {
        banding: "stripe",
        making: { banding: { where: "bottom", widthMm: 50, insetMm: 20 }, hems: { seamMm: 10 } },
      },
      cloths: [{ ...stripe, direction: "one-way" as const }],
    });
    const bottom = trim(cloth.trims, "banding-bottom");
    expect(bottom).toMatchObject({ count: 3, grain: "weft" });
    expect(bottom.lengthMm).toBeLessThanOrEqual(1400);
  });
});

describe("bands on a face that is fuller than the shade", () => {
  it("are as long as the face laid flat: twice the length, half as wide again", () => {
    const { cloth } = clothOf({
      widthMm: 1000,
      lengthMm: 1500,
      shade: {
        banding: "stripe",
        making: {
          hems: { sideTurnMm: 20, sideTurns: 2, bottomTurnMm: 30, bottomTurns: 2, boardAllowanceMm: 60 },
          banding: { where: "sides-and-bottom", widthMm: 50, insetMm: 25, turnMm: 10, corners: "mitred" },
        },
      },
      cloths: [{ ...stripe, usableWidthMm: 2000 }],
      form: { allowances: [{ label: "fullness", widthMm: 500, lengthMm: 1500 }] },
    });
    expectNear(trim(cloth.trims, "banding-side").lengthMm, 60 + 3000 - 25 + 10, 1e-9);
    expectNear(trim(cloth.trims, "banding-bottom").lengthMm, 1500 - 2 * 25 + 2 * 10, 1e-9);
  });
});

describe("bottom band", () => {
  it("takes its depth off the face: 1500 − 200 + 10 seam + 60 board; band 200 + 10 + 60 hem", () => {
    const { face, cloth } = banded({ bottomBandMm: 200 });
    expectNear(face.cutLengthMm, 1370, 1e-9);
    expect(trim(cloth.trims, "bottom-band")).toMatchObject({
      widthMm: 270,
      lengthMm: 1080,
      clothId: "stripe",
    });
    expect(cloth.bands.at(-1)).toMatchObject({ part: "bottom-band", yMm: 1300, heightMm: 200 });
  });
  it("is as wide as the face once that is squared: what its slant takes off is no part of it", () => {
    const { face, cloth } = clothOf({
      widthMm: 1000,
      lengthMm: 1200,
      shade: {
        face: "own",
        lining: null,
        banding: "stripe",
        making: {
          pattern: { railroad: "always" },
          hems: { sideTurnMm: 20, sideTurns: 2 },
          banding: { bottomBandMm: 200 },
        },
      },
      cloths: [stripe, { id: "own", name: "Own", usableWidthMm: 1600, massGsm: 200, bowShare: 0.03 }],
    });
    expect(face.turned).toBe(true);
    expectNear(face.cutWidthMm, 1000 + 2 * 40 + 0.03 * face.cutLengthMm, 1e-9);
    expectNear(trim(cloth.trims, "bottom-band").lengthMm, 1000 + 2 * 40, 1e-9);
  });
  it("deeper than half of the shade is told", () => {
    const { findings } = banded({ bottomBandMm: 900 });
    expect(findings.map(({ id }) => id)).toContain("cloth.bottom-band-too-deep");
  });
});

describe("board", () => {
  it("cover goes once round: 2 × (38.1 + 19.05) + 25.4 = 139.7 mm", () => {
    const { cloth, size } = clothOf({ widthMm: 900, lengthMm: 1500 });
    const cover = trim(cloth.trims, "board-cover");
    expectNear(cover.widthMm, 139.7, 1e-9);
    expectNear(cover.lengthMm, size.boardLengthMm + 2 * 19.05 + 25.4, 1e-9);
    expect(cover.clothId).toBe("cotton-lining");
  });
  it("is covered from the face where asked", () => {
    const { cloth } = clothOf({
      widthMm: 900,
      lengthMm: 1500,
      shade: { making: { board: { coverFrom: "face" } } },
    });
    expect(trim(cloth.trims, "board-cover").clothId).toBe("plain-cotton");
  });
  it("returns are as deep as the board, with a turn at either edge", () => {
    const { cloth } = clothOf({
      widthMm: 900,
      lengthMm: 1500,
      shade: { making: { board: { returns: "pieces", returnDropMm: 100 }, hems: { boardAllowanceMm: 60 } } },
    });
    const one = trim(cloth.trims, "board-return");
    expectNear(one.widthMm, inches(1.5) + 2 * inches(0.5), 1e-9);
    expectNear(one.lengthMm, 100 + 60 + 2 * inches(0.5), 1e-9);
    expect(one.count).toBe(2);
  });
  it("a dust strip is as long as the board with a turn at either end", () => {
    const { cloth, size } = clothOf({
      widthMm: 900,
      lengthMm: 1500,
      shade: { making: { board: { dustStripMm: inches(1.5) } } },
    });
    const strip = trim(cloth.trims, "dust-strip");
    expectNear(strip.lengthMm, size.boardLengthMm + inches(1), inches(1 / 8));
    expectNear(strip.widthMm, inches(3), 1e-9);
  });
});

describe("where the pieces come from", () => {
  const lining: Cloth = { id: "lining", name: "Lining", usableWidthMm: inches(54), massGsm: 140 };
  const layer = (widthIn: number): LayerCut =>
    ({
      layer: "lining",
      clothId: "lining",
      usableWidthMm: inches(54),
      lays: [{ panelId: "lining-1", xMm: 0, yMm: 0, widthMm: inches(widthIn), lengthMm: inches(66.5) }],
      lengthMm: inches(66.5),
    }) as unknown as LayerCut;
  const piece = (
    id: string,
    count: number,
    widthIn: number,
    lengthIn: number,
    grain: Trim["grain"] = "free",
  ): Trim => ({
    id,
    label: id,
    clothId: "lining",
    clothName: "Lining",
    count,
    widthMm: inches(widthIn),
    lengthMm: inches(lengthIn),
    grain,
    why: "",
    hangs: false,
  });
  const laid = (trims: Trim[], widthIn: number) => {
    const [bolt] = layTrims(trims, [layer(widthIn)], new Map([["lining", lining]]));
    if (bolt === undefined) throw new Error("invalid trims: no bolt");
    return bolt;
  };

  it("beside the panel where it is wide enough: 36 of 54 in leave 18 for a cover of 6", () => {
    expectNear(laid([piece("cover", 1, 6, 38)], 36).lengthMm, 0, 1e-9);
  });
  it("beyond it where it is not: 6 in across a bolt of 54", () => {
    expectNear(laid([piece("cover", 1, 6, 38)], 49).lengthMm, inches(6), 1e-9);
  });
  it("strips share the offcut with the cover: 4 of 7 beside it, the rest across", () => {
    const bolt = laid([piece("cover", 1, 6, 38), piece("strip", 7, 3, 35.5)], 36);
    expect(bolt.lays).toHaveLength(8);
    expectNear(bolt.lengthMm, inches(9), 1e-6);
  });

  it("never lie on each other, on a panel, or past the selvedge, and none is forgotten", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            count: fc.integer({ min: 1, max: 12 }),
            widthIn: fc.double({ min: 1, max: 20, noNaN: true }),
            lengthIn: fc.double({ min: 1, max: 53, noNaN: true }),
            grain: fc.constantFrom("warp" as const, "weft" as const, "free" as const),
          }),
          { maxLength: 5 },
        ),
        fc.double({ min: 5, max: 54, noNaN: true }),
        (pieces, widthIn) => {
          fc.pre(pieces.length > 0);
          const trims = pieces.map(({ count, widthIn: w, lengthIn, grain }, i) =>
            piece(`p${i}`, count, w, lengthIn, grain),
          );
          const { lays, fromMm, lengthMm } = laid(trims, widthIn);
          const all = [...lays, ...layer(widthIn).lays];
          const apart = all.every((a, i) =>
            all
              .slice(i + 1)
              .every(
                (b) =>
                  a.xMm + a.widthMm <= b.xMm + 0.01 ||
                  b.xMm + b.widthMm <= a.xMm + 0.01 ||
                  a.yMm + a.lengthMm <= b.yMm + 0.01 ||
                  b.yMm + b.lengthMm <= a.yMm + 0.01,
              ),
          );
          const inside = lays.every(
            (lay) =>
              lay.xMm >= -0.01 &&
              lay.xMm + lay.widthMm <= inches(54) + 0.01 &&
              lay.yMm + lay.lengthMm <= fromMm + lengthMm + 0.01,
          );
          const counted = trims.every(
            ({ id, count }) => lays.filter((lay) => lay.panelId === id).length === count,
          );
          return apart && inside && counted;
        },
      ),
      {
        // Failed once: a shelf laid out for pieces across was filled with pieces along.
        examples: [
          [
            [{ count: 9, widthIn: 18.000013123359583, lengthIn: 18.000052493438325, grain: "free" as const }],
            5,
          ],
        ],
      },
    );
  });
});
