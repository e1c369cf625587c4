import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../test/near.ts";
import { capstanRatio } from "./capstan.ts";
import { frictionFromPair, holdOverSheaves, pullOverSheaves, tackleAdvantage } from "./sheaves.ts";

describe("sheaves", () => {
  test.each(casesOf("sheave"))("%s", (_name, { inputs, outputs }) => {
    const expected = given(outputs, "MA=E(1-E^n)/(1-E)");
    expectNear(tackleAdvantage(given(inputs, "E"), given(inputs, "n_parts")), expected, 1e-7 * expected);
  });

  test("3250 lb on four parts over plain bearings asks for about 1000 lb (Pipeline Rules of Thumb Handbook, p. 6)", () => {
    expectNear(3250 / tackleAdvantage(0.917, 4), 1000, 5);
  });

  test("without friction each part helps in full", () => expect(tackleAdvantage(1, 5)).toBe(5));

  test("an eye of the same ratio is the same sheave, up and down", () => {
    const friction = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(fc.array(friction, { maxLength: 8 }), friction, (eyes, more) => {
        const through = eyes.map((mu) => 1 / capstanRatio(mu, Math.PI / 2));
        const factor = eyes.reduce((product, mu) => product * capstanRatio(mu, Math.PI / 2), 1);
        expectNear(pullOverSheaves(10, through), 10 * factor, 1e-9 * factor);
        expectNear(holdOverSheaves(10, through), 10 / factor, 1e-9);
        const worse = [...through, 1 / capstanRatio(more, Math.PI / 2)];
        expect(pullOverSheaves(10, worse)).toBeGreaterThanOrEqual(pullOverSheaves(10, through));
      }),
    );
  });

  test("98 up and 50 down over a quarter turn: μ 0.214 (Delaney 2022, p. 88, prints 0.21)", () => {
    expectNear(frictionFromPair(98, 50, Math.PI / 2), 0.2142, 5e-5);
  });

  test.each([0, -1, 1.1, Number.NaN])("an efficiency of %f is refused", (efficiency) => {
    expect(() => pullOverSheaves(1, [efficiency])).toThrow("invalid efficiency");
  });
});

describe("capstan", () => {
  test.each(casesOf("capstan"))("%s", (_name, { inputs, outputs }) => {
    for (const deg of [45, 90, 180, 360]) {
      const expected = given(outputs, `${deg} deg`);
      expectNear(capstanRatio(given(inputs, "mu"), (deg * Math.PI) / 180), expected, 1e-9 * expected);
    }
  });
});
