import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { hangTail, tailLine } from "./tail.ts";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyTail = fc.record({ widthMm: mm(20, 2000), moreMm: mm(0, 600), sinkMm: mm(0, 3000) });

/** A strip bends but does not stretch: no point of it is further from the column than the cloth is long. */
describe("a tail", () => {
  test("is never drawn longer than its cloth, nor past the edge, nor lower than its column has risen", () => {
    fc.assert(
      fc.property(anyTail, ({ widthMm, moreMm, sinkMm }) => {
        const cloth = widthMm + moreMm;
        const hang = hangTail(widthMm, cloth, sinkMm);
        const line = tailLine(widthMm, hang);
        let length = 0;
        line.slice(1).forEach(([x, y], i) => {
          const [fromX = x, fromY = y] = line[i] ?? [];
          length += Math.hypot(x - fromX, y - fromY);
        });
        expect(length).toBeLessThanOrEqual(cloth * (1 + 1e-6));
        expect(hang.dropMm).toBeLessThanOrEqual(sinkMm + 1e-9);
        expect(hang.inMm).toBeGreaterThanOrEqual(-1e-9);
        for (const [x, y] of line) {
          expect(x).toBeLessThanOrEqual(widthMm + 1e-9);
          expect(y).toBeGreaterThanOrEqual(-1e-9);
          expect(y).toBeLessThanOrEqual(hang.dropMm + 1e-9);
        }
      }),
    );
  });

  test("sinks further the more cloth it has, and the further its column has risen", () => {
    fc.assert(
      fc.property(anyTail, mm(1, 300), ({ widthMm, moreMm, sinkMm }, more) => {
        const drop = (cloth: number, sink: number) => hangTail(widthMm, cloth, sink).dropMm;
        const cloth = widthMm + moreMm;
        expect(drop(cloth + more, sinkMm)).toBeGreaterThanOrEqual(drop(cloth, sinkMm) - 1e-9);
        expect(drop(cloth, sinkMm + more)).toBeGreaterThanOrEqual(drop(cloth, sinkMm) - 1e-9);
      }),
    );
  });

  /** Pythagoras by hand: 500 of cloth, 300 wide, drawn in by 30, bowed by 1.5 %: √(492.5² − 270²) = 411.9. */
  test("500 mm of cloth beside a strip of 300 mm hangs 412 mm low, its edge 30 mm in", () => {
    const { dropMm, inMm } = hangTail(300, 500, 5000);
    expectNear(dropMm, 411.9, 0.05, "drop");
    expectNear(inMm, 30, 0.05, "in");
  });

  test("with the shade down it lies level at its whole width", () => {
    expect(hangTail(300, 500, 0)).toMatchObject({ dropMm: 0, inMm: 0 });
  });
});
