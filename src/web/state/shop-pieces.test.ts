import { expect, test } from "vitest";
import { inches, type UnitChoice } from "../../units/index.ts";
import { pieceSizeText } from "./shop-pieces.ts";

const YARD_MM = 36 * 25.4;
const US: UnitChoice = { system: "imperial", ruler: "1/8 in" };
/** With plain spaces. */
const sizeOf = (piece: Parameters<typeof pieceSizeText>[0], units: UnitChoice): string =>
  pieceSizeText(piece, units).replaceAll(/\s/g, " ");
const METRIC: UnitChoice = { system: "metric", ruler: "1 mm" };

test("cloth is told in eighths of a yard or metres, never as more than it is, with its width and lot; bars by their length", () => {
  const bolt = { id: "a", cloth: "c", lengthMm: 2.49 * YARD_MM };
  expect(sizeOf(bolt, US)).toBe("2 3⁄8 yd");
  expect(sizeOf({ ...bolt, lengthMm: 2500 }, METRIC)).toBe("2.5 m");
  const end = { ...bolt, widthMm: inches(20), lot: "7" };
  expect(sizeOf(end, US)).toBe("2 3⁄8 yd, 20 in wide, lot 7");
  expect(sizeOf({ id: "b", part: "board-1x2", lengthMm: inches(50) }, US)).toBe("50 in");
});
