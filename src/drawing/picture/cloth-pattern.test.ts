import { describe, expect, test } from "vitest";
import { pleatedBalloon } from "../../../test/gallery/windows.ts";
import { drapeShade } from "../../drape/index.ts";
import { SWATCH_SIDE } from "../../job/index.ts";
import { clothPattern, inRepeat } from "./cloth-pattern.ts";

const MOTIF = {
  ...{ originXMm: 30, originYMm: 40, originAlongMm: 40, repeatXMm: 200, repeatYMm: 300 },
  ...{ match: "straight" as const, acrossKnown: true },
};

describe("the pattern of a cloth by its place", () => {
  test("begins where the cutting plan has it and comes again with every repeat", () => {
    expect(inRepeat(MOTIF, 30, 40)).toEqual([0, 0]);
    expect(inRepeat(MOTIF, 130, 190)).toEqual([0.5, 0.5]);
    for (const [x, y] of [
      [-70, 190],
      [330, 490],
      [130, -110],
    ] as const) {
      const [u, v] = inRepeat(MOTIF, x, y);
      expect([u, v]).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.5, 9)]);
    }
  });

  test("on a half drop every second column lies half a repeat lower, to the left as to the right", () => {
    const dropped = { ...MOTIF, match: "half-drop" as const };
    expect(inRepeat(dropped, 130, 190)[1]).toBeCloseTo(0.5, 9);
    expect(inRepeat(dropped, 330, 190)[1]).toBeCloseTo(0, 9);
    expect(inRepeat(dropped, -70, 340)[1]).toBeCloseTo(0.5, 9);
  });

  test("is that of a photo where there is one, else a lozenge; repeats too small to be seen have none", () => {
    const left = "aa0000".repeat(SWATCH_SIDE / 2) + "00bb00".repeat(SWATCH_SIDE / 2);
    const photo = clothPattern({ colour: "#d9c7a3", motif: MOTIF, swatch: left.repeat(SWATCH_SIDE) });
    expect(photo?.colourAt(40, 50)).toBe("#aa0000");
    expect(photo?.colourAt(220, 50)).toBe("#00bb00");
    const plain = clothPattern({ colour: "#d9c7a3", motif: MOTIF });
    expect(plain?.colourAt(30, 40)).toBe("#d9c7a3");
    expect(plain?.colourAt(130, 190)).not.toBe("#d9c7a3");
    expect(clothPattern({ colour: "#d9c7a3", motif: { ...MOTIF, repeatXMm: 20 } })).toBeUndefined();
    expect(clothPattern({ colour: "#d9c7a3" })).toBeUndefined();
  });
});

test("cloth behind a pleat is left out of what is seen: the lines beside it are as far apart on the cloth as is folded away", () => {
  const { shade } = pleatedBalloon();
  const { across, clothMm, placesMm } = drapeShade(shade, 0).cloth;
  const twice: number[] = [];
  for (let i = 1; i < across; i++) {
    const isTwice = [0, 1, 2].every((c) => placesMm[3 * i + c] === placesMm[3 * (i - 1) + c]);
    if (isTwice) twice.push((clothMm[2 * i] as number) - (clothMm[2 * (i - 1)] as number));
  }
  const inner = shade.form.pleats.slice(1, -1);
  expect(twice).toHaveLength(inner.length);
  twice.forEach((mm, k) => {
    expect(mm).toBeCloseTo(inner[k]?.foldedMm ?? 0, 3);
  });
});
