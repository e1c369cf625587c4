import { describe, expect, it } from "vitest";
import { handShade } from "../../../../test/hand-shade.ts";
import { turnEyeOf } from "./turn-eye.ts";

const { resolved, size } = handShade();

/** A board from 3 to 997 mm: a last eye of 16 mm has its middle 6 + 8 mm in from its end. */
function turn(xs: number[], side: "left" | "right" = "right") {
  const head = { ...size, finishedWidthMm: 1000, boardLengthMm: 994 };
  return turnEyeOf(
    {
      shade: {
        ...{ ...resolved, board: { ...resolved.board, depthMm: 40 } },
        eye: { ...resolved.eye, outsideDiameterMm: 12 },
        turnEye: { id: "turn", name: "Turn", outsideDiameterMm: 16 },
      },
      ...{ size: head, grid: { columns: xs.map((xMm, i) => ({ number: i + 1, xMm })) } },
    } as never,
    { side, head },
  );
}
const PART = { id: "turn", name: "Turn", diameterMm: 16, zMm: 20 };

describe("the last eye", () => {
  it("is one of its own at the end of the board, on the side that the cords hang on", () => {
    expect(turn([100, 900])).toEqual({ ...PART, xMm: 983 });
    expect(turn([100, 900], "left")).toEqual({ ...PART, xMm: 17 });
    expect(turn([])).toEqual({ ...PART, xMm: 983 });
  });

  it("is that of the outer column where the two would stand less than their halves and 3 mm of wood apart", () => {
    // (12 + 16) / 2 + 3 mm from 983 mm.
    expect(turn([100, 966])).toEqual({ ...PART, xMm: 983 });
    expect(turn([100, 966.1])).toEqual({ ...PART, xMm: 966.1, column: 2 });
    expect(turn([33.9, 900], "left")).toEqual({ ...PART, xMm: 33.9, column: 1 });
    expect(turn([34, 900], "left")).toEqual({ ...PART, xMm: 17 });
  });
});
