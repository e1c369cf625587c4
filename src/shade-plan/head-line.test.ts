import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { acrossAtMm, alongHeadMm, type HeadShape, headYMm } from "./head-line.ts";

const WIDE = 1000;
const arched = (fallMm: number): HeadShape => ({
  finishedWidthMm: WIDE,
  head: { kind: "arched", fallMm, high: "left" },
});
const sloped = (fallMm: number, high: "left" | "right"): HeadShape => ({
  finishedWidthMm: WIDE,
  head: { kind: "angled", fallMm, high },
});

const anyHead: fc.Arbitrary<HeadShape> = fc.record({
  finishedWidthMm: fc.double({ min: 100, max: 4000, noNaN: true }),
  head: fc.record({
    kind: fc.constantFrom("angled" as const, "arched" as const),
    fallMm: fc.double({ min: 0, max: 1500, noNaN: true }),
    high: fc.constantFrom("left" as const, "right" as const),
  }),
});
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** The same length by adding up many short chords of the drawn line. */
function byChords(head: HeadShape, fromMm: number, toMm: number): number {
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const [a, b] = [i, i + 1].map((n) => fromMm + ((toMm - fromMm) * n) / steps);
    sum += Math.hypot((b ?? 0) - (a ?? 0), headYMm(head, b ?? 0) - headYMm(head, a ?? 0));
  }
  return sum;
}

describe("the line of the head", () => {
  test("a slope of 3 in 4 is 5 long (3-4-5 triangle)", () => {
    expectNear(alongHeadMm(sloped(750, "left"), 0, WIDE), 1250, 1e-9);
    expectNear(alongHeadMm(sloped(750, "right"), 200, 600), 500, 1e-9);
  });

  test("half a circle is πr long, and half of it lies each side of the crown", () => {
    expectNear(alongHeadMm(arched(500), 0, WIDE), Math.PI * 500, 1e-9);
    expectNear(alongHeadMm(arched(500), 0, 500), (Math.PI * 500) / 2, 1e-9);
  });

  // Ramanujan's second formula for the perimeter of an ellipse, good to 1e-7 here (Ramanujan 1914, p. 372).
  test("half an ellipse is as long as Ramanujan’s formula says", () => {
    const [a, b] = [500, 800];
    const h = ((a - b) / (a + b)) ** 2;
    const perimeter = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expectNear(alongHeadMm(arched(800), 0, WIDE), perimeter / 2, 1e-3);
  });

  test.each([arched(80), arched(480), arched(700), sloped(500, "right")])(
    "as long as its chords, %o",
    (head) => {
      expectNear(alongHeadMm(head, 100, 870), byChords(head, 100, 870), 1e-3);
    },
  );

  test("a head of no fall is a level head", () => {
    fc.assert(
      fc.property(anyHead, share, share, (head, a, b) => {
        const flat: HeadShape = {
          ...head,
          head: { ...(head.head ?? { kind: "angled", high: "left" }), fallMm: 0 },
        };
        const [from, to] = [a * head.finishedWidthMm, b * head.finishedWidthMm];
        expect(alongHeadMm(flat, from, to)).toBe(to - from);
        expect(acrossAtMm(flat, from, to - from)).toBe(from + (to - from));
        expect(headYMm(flat, from)).toBe(0);
      }),
    );
  });

  test("back and forth comes to the same place, and no way along it is shorter than the level one", () => {
    fc.assert(
      fc.property(anyHead, share, share, (head, a, b) => {
        const [from, to] = [a * head.finishedWidthMm, b * head.finishedWidthMm];
        const along = alongHeadMm(head, from, to);
        expectNear(acrossAtMm(head, from, along), to, 1e-6 * head.finishedWidthMm);
        expect(Math.abs(along)).toBeGreaterThanOrEqual(Math.abs(to - from) - 1e-6);
        expectNear(alongHeadMm(head, to, from), -along, 1e-9 * head.finishedWidthMm);
      }),
    );
  });
});
