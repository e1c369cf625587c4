import fc from "fast-check";
import { expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { frictionOfPair } from "../job/index.ts";
import { PART_TESTS } from "./measure-your-part.ts";

const fromTwoReadings = (raisesN: number, lowersN: number) => frictionOfPair({ raisesN, lowersN });

test("by hand: 1 kg raised by 1.48 kg and let down by 0.675 kg over a quarter turn is μ = 0.25", () => {
  // Morton & Hearle, eq. 25.2: e^(0.25·π/2) = 1.48097.
  expectNear(fromTwoReadings(1.48097, 1 / 1.48097)?.friction ?? 0, 0.25, 1e-5);
});

test("the share of a pulley raises what the friction does", () => {
  const pull = fc.double({ min: 0.1, max: 50, noNaN: true });
  fc.assert(
    fc.property(pull, fc.double({ min: 1, max: 20, noNaN: true }), (lowers, times) => {
      const found = fromTwoReadings(lowers * times, lowers);
      // Raising and lowering differ by the square of one turn's share.
      expectNear(1 / (found?.pulleyShare ?? 0) ** 2, times, 1e-9 * times);
    }),
  );
});

test("readings that cannot be are answered with nothing", () => {
  for (const [raises, lowers] of [
    [1, 2],
    [1, 0],
    [Number.POSITIVE_INFINITY, 1],
  ] as const)
    expect(fromTwoReadings(raises, lowers)).toBeUndefined();
});

test("each test is whole sentences and says what to enter", () => {
  for (const { steps, enter } of PART_TESTS)
    for (const words of [...steps, enter]) expect(words).toMatch(/^[A-Z].*\.$/);
});
