import { expect, test } from "vitest";
import { ACTION_KINDS, drawAction, place } from "../../src/drawing/index.ts";
import type { StepAction } from "../../src/shade-plan/index.ts";
import { draws } from "./gallery.ts";
import { banded, type Case, leftHanded, loop, motor, outside, ribbed, spring } from "./windows.ts";

/** Room beside the words of a step, mm. */
const BESIDE = { maxWidthMm: 70, maxHeightMm: 56 };

/** What tells two drawings of one kind apart. */
function variant(action: StepAction): string {
  const { kind, ...rest } = action;
  const told = ["edge", "onto", "what", "how", "on", "side", "facing"].flatMap((key) =>
    key in rest ? [String((rest as Record<string, unknown>)[key])] : [],
  );
  return [kind, ...told].join("-");
}

const CASES: (() => Case)[] = [outside, leftHanded, ribbed, banded, spring, loop, motor];
const seen = new Set<string>();

for (const make of CASES) {
  const { plan, shade } = make();
  for (const { action } of shade.steps) {
    if (action === undefined || seen.has(variant(action))) continue;
    seen.add(variant(action));
    draws(`action-${variant(action)}`, () => place(drawAction(action, plan.units), BESIDE));
  }
}

test("every kind of action is among them", () => {
  const kinds = ACTION_KINDS.filter((kind) => ![...seen].some((one) => one.startsWith(kind)));
  expect(kinds).toEqual([]);
});
