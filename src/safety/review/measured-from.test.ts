import { expect, it } from "vitest";
import { bare, hanging, looped } from "../../../test/safety/cords.ts";
import { rulesFor } from "../rules/rules-for.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { evaluate } from "./evaluate.ts";

/** Cords end at least 1.6 m above the ground: NSAI guidance, Ireland. */
const END = rulesFor("ie", "for-sale").active.find(({ rule }) => rule.id === "IE-END");

function endOf(geometry: CordGeometry) {
  if (END === undefined) throw new Error("invalid rules: IE-END is gone");
  const situation = { geometry, tag: { signalMm: 5, textMm: 3 } };
  return evaluate(END.rule, situation, { purpose: "for-sale" }, END.outside);
}

/** The lower end of 150 mm of cord is 2400 − 50 − 150 = 2200 mm above the floor, 600 mm higher than it must be. */
it("what ends high enough above the floor is measured again from what a child stands on", () => {
  const at = (footholdMm: number) => endOf({ ...hanging(150), footholdMm });
  expect(at(0)).toMatchObject({ outcome: "not-shown-to-fail", measurement: { value: 2200 } });
  for (const [footholdMm, outcome] of [
    [599, "not-shown-to-fail"],
    [600, "not-shown-to-fail"],
    [601, "not-proven"],
  ] as const)
    expect(at(footholdMm).outcome, `${footholdMm}`).toBe(outcome);
  // What fails from the floor fails: nothing that stands there makes it better or less sure.
  expect(endOf({ ...hanging(900), footholdMm: 400 })).toMatchObject({
    outcome: "failed",
    measurement: { value: 1450 },
  });
});

it("the words name what stands there, or say that nobody said and that it was taken from a table", () => {
  const { footholdMm: _none, ...unsaid } = hanging(150);
  expect(endOf(unsaid)).toMatchObject({
    outcome: "not-proven",
    measurement: {
      // A table is 750 mm high, our own choice.
      value: 1450,
      why: "Whether anything stands at the window for a child to climb on was not said. Measured from a table there.",
    },
  });
  const named = endOf({ ...hanging(150), footholdMm: 900, footholdName: "bed" });
  expect(named.measurement).toMatchObject({
    value: 1300,
    why: "Measured from the bed at the window, and not from the floor.",
  });
  expect(endOf({ ...hanging(150), footholdMm: 900 }).measurement?.why).toBe(
    "Measured from the highest thing that a child can stand on at the window, and not from the floor.",
  );
});

it("of a window whose height nobody measured nothing is measured from anywhere", () => {
  const { topAboveFloorMm: _top, ...high } = looped(300);
  expect(endOf(high).outcome).toBe("not-proven");
  expect(endOf(high).geometry).toBeUndefined();
  expect(endOf(bare()).outcome).toBe("does-not-apply");
});
