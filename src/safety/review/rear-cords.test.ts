import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { expectNear } from "../../../test/near.ts";
import type { Grid, Mass } from "../../shade-plan/index.ts";
import { GRAVITY } from "../../units/index.ts";
import { boardSpans, heldWhileGathering, leastShare, rearSpans } from "./rear-cords.ts";

/** Three rows 200 mm apart, the lowest 100 mm above the hem of a shade 1000 mm long; the board ends 50 mm down. */
function grid(over: Partial<Grid> = {}): Grid {
  const rows = [100, 300, 500].map((fromHemMm, i) => ({ number: i + 1, fromHemMm, yMm: 1000 - fromHemMm }));
  return { ...handShade().grid, rows, bottomSectionMm: 100, travelMm: 700, ...over };
}

describe("spans of cord up the back", () => {
  it("begin where the one below is gathered; the last takes what is left of the travel", () => {
    expect(rearSpans(grid(), 50)).toEqual([
      { cordMm: 200, clothMm: 200, gathersMm: 200, startsMm: 0, lowerBelowTopMm: 900, top: false },
      { cordMm: 200, clothMm: 200, gathersMm: 200, startsMm: 200, lowerBelowTopMm: 700, top: false },
      // 500 − 50 up to the board, of which 700 − 400 are taken up.
      { cordMm: 450, clothMm: 450, gathersMm: 300, startsMm: 400, lowerBelowTopMm: 500, top: true },
    ]);
  });

  it("gather no more than they are long, and nothing once the travel is over", () => {
    expect(rearSpans(grid({ travelMm: 5000 }), 50).at(-1)?.gathersMm).toBe(450);
    expect(rearSpans(grid({ travelMm: 390 }), 50).at(-1)?.gathersMm).toBe(0);
    expect(rearSpans(grid(), 600).at(-1)?.cordMm).toBe(0);
  });

  it("come from the bottom up, in whatever order the rows are listed", () => {
    const { rows } = grid();
    expect(rearSpans(grid({ rows: [...rows].reverse() }), 50)).toEqual(rearSpans(grid(), 50));
  });

  it("are as long as they are at the end where rows that slant lie furthest apart", () => {
    const falls = [0, 60, 100];
    const rows = grid().rows.map((row, i) => {
      const fallMm = falls[i] ?? 0;
      const { fromHemMm } = row;
      return {
        ...row,
        ends: { leftFromHemMm: fromHemMm + fallMm / 2, rightFromHemMm: fromHemMm - fallMm / 2, fallMm },
      };
    });
    const slanting = grid({ rows });
    // Ends that fall 60 mm rise 30 above the middle at one side and lie 30 below it at the other.
    expect(rearSpans(slanting, 50).map(({ cordMm }) => cordMm)).toEqual([230, 220, 500]);
    expect(rearSpans(slanting, 50).map(({ lowerBelowTopMm }) => lowerBelowTopMm)).toEqual([900, 730, 550]);
  });

  it("have more cloth where it hangs besides, but for what is sewn into a tuck", () => {
    const stretch = { row: 2, cordMm: 200, clothMm: 290, sewnMm: 40 };
    const [, second] = rearSpans(grid(), 50, [stretch]);
    expect(second).toMatchObject({ cordMm: 200, clothMm: 250 });
    const [first, taut] = rearSpans(grid(), 50, [{ row: 2, cordMm: 200, clothMm: 190 }]);
    expect([first?.clothMm, taut?.clothMm]).toEqual([200, 200]);
  });
});

describe("what hangs on the cords while a span gathers", () => {
  it("is the bar, the rows lifted so far, the cloth below and half of that on its way", () => {
    const { size } = handShade();
    const mass: Mass = {
      totalKg: 2.1,
      clothGsm: 370,
      onBoardKg: 0,
      parts: [
        { part: "face", label: "Face", massKg: 1, hemKg: 0, boardKg: 0 },
        { part: "bar", label: "Bar", massKg: 0.8 },
        { part: "ribs", label: "Ribs", massKg: 0.3 },
      ],
    };
    const held = heldWhileGathering({ ...size, finishedLengthMm: 1000 }, grid(), mass, rearSpans(grid(), 50));
    // Cloth: 100 + 100, 300 + 100 and 500 + 225 of 1000 mm; a rib lifted with each of three spans.
    const byHand = [0.8 + 0.1 + 0.2, 0.8 + 0.2 + 0.4, 0.8 + 0.3 + 0.725].map((kg) => kg * GRAVITY);
    expect(held).toHaveLength(3);
    for (const [i, newtons] of held.entries()) expectNear(newtons, byHand[i] ?? 0, 1e-9);
    // More cloth than there is never hangs.
    const [all] = heldWhileGathering({ ...size, finishedLengthMm: 150 }, grid(), mass, rearSpans(grid(), 50));
    expectNear(all ?? 0, GRAVITY * (0.8 + 0.1 + 1), 1e-9);
  });
});

describe("the least loaded cord", () => {
  it("carries all of it alone", () => {
    expect(leastShare([300], 1000)).toBe(1);
  });

  it("carries 3/16 at the end of a stiff bar on three supports (beam of two equal spans under an even load: 3/8 of one span)", () => {
    expectNear(leastShare([0, 500, 1000], 1000), 3 / 16, 1e-9);
  });

  it("carries what the lever leaves it of a bar on two supports that stand aside", () => {
    // Moments about the right support: R · 600 = W · 200.
    expectNear(leastShare([100, 700], 1000), 1 / 3, 1e-9);
  });

  it("carries what three moments leave it where the bar stands aside (Clapeyron: M₁ + 4 M₂ + M₃ = −w L² / 2)", () => {
    // 100 mm aside, spans of 400: M₁ = −5000 w, M₂ = −17500 w, so 100 + 200 − 12500 / 400 of 1000 mm at the end.
    expectNear(leastShare([100, 500, 900], 1000), 0.26875, 1e-9);
    // 200 mm aside, spans of 300: M₂ = −1250 w, so 300 − 2 · 18750 / 300 of 1000 mm in the middle.
    expectNear(leastShare([200, 500, 800], 1000), 0.175, 1e-9);
  });

  it("carries nothing where the bar would lift it", () => {
    // 300 mm aside, spans of 100: 100 − 2 · 66250 / 100 mm in the middle.
    expect(leastShare([300, 400, 500], 800)).toBe(0);
  });

  it("carries no more than its strip of limp cloth", () => {
    // From half way between 730 and 890 mm to the edge: 1000 − 810, where a stiff bar loads that cord more.
    expectNear(leastShare([280, 730, 890], 1000), 0.19, 1e-9);
  });
});

describe("cord along the board", () => {
  it("lies between neighbouring eyes, the lock taken as one of them", () => {
    expect(boardSpans([50, 450, 250], 300)).toEqual([200, 50, 150]);
    expect(boardSpans([], 300)).toEqual([]);
  });
});
