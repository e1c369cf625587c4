import { expect, test } from "vitest";
import { ACTION_KINDS, drawAction, type Placed, place } from "../../src/drawing/index.ts";
import type { ActionKind } from "../../src/shade-plan/index.ts";
import { draws } from "./gallery.ts";
import { banded, type Case, leftHanded, motor, outside, ribbed, spring } from "./windows.ts";

/** Room beside the words of a step, mm. */
const BESIDE = { maxWidthMm: 70, maxHeightMm: 56 };

const drawn = new Set<ActionKind>();

/** The first action of a kind in a shade's steps, told from others of its kind by one of its words. */
function action(make: () => Case, kind: ActionKind, word?: string): () => Placed {
  drawn.add(kind);
  return () => {
    const { plan, shade } = make();
    const found = shade.steps
      .flatMap((step) => step.action ?? [])
      .find((one) => one.kind === kind && (word === undefined || Object.values(one).includes(word)));
    if (found === undefined) throw new Error(`invalid gallery case: no ${kind}`);
    return place(drawAction(found, plan.units), BESIDE);
  };
}

draws("action-baste-layers", action(outside, "baste-layers"));
draws("action-cover-board", action(outside, "cover-board"));
draws("action-dress-folds", action(outside, "dress-folds"));
draws("action-fix-shade-staple", action(outside, "fix-shade", "staple"));
draws("action-fix-tag", action(outside, "fix-tag"));
draws("action-hang-board-brackets", action(outside, "hang-board", "brackets"));
draws("action-hang-board-screws", action(motor, "hang-board", "screws"));
draws("action-join-tails", action(outside, "join-tails"));
draws("action-level-hem", action(outside, "level-hem"));
draws("action-mark-rows", action(outside, "mark-rows"));
draws("action-measure-opening", action(outside, "measure-opening"));
draws("action-mitre-corner", action(banded, "mitre-corner"));
draws("action-press-hem-bottom", action(outside, "press-hem", "bottom"));
draws("action-press-hem-side", action(outside, "press-hem", "side"));
draws("action-screw-lock-left", action(leftHanded, "screw-lock", "left"));
draws("action-screw-lock-right", action(outside, "screw-lock", "right"));
draws("action-set-eye", action(outside, "set-eye"));
draws("action-sew-ring-cloth", action(outside, "sew-ring", "cloth"));
draws("action-sew-ring-pocket", action(ribbed, "sew-ring", "pocket"));
draws("action-sew-sleeve", action(spring, "sew-sleeve"));
draws("action-shake-lock-left", action(leftHanded, "shake-lock", "left"));
draws("action-shake-lock-right", action(outside, "shake-lock", "right"));
draws("action-slide-in-bar", action(outside, "slide-in", "bar"));
draws("action-slide-in-rib", action(ribbed, "slide-in", "rib"));
draws("action-square-cloth", action(outside, "square-cloth"));
draws("action-thread-lock-left", action(leftHanded, "thread-lock", "left"));
draws("action-thread-lock-right", action(outside, "thread-lock", "right"));
draws("action-tie-folds", action(outside, "tie-folds"));
draws("action-tie-ring", action(outside, "tie-ring"));
draws("action-wind-cleat-left", action(leftHanded, "wind-cleat", "left"));
draws("action-wind-cleat-right", action(outside, "wind-cleat", "right"));
draws("action-wind-spool", action(spring, "wind-spool"));

test("every kind of action is among them", () => {
  expect(ACTION_KINDS.filter((kind) => !drawn.has(kind))).toEqual([]);
});
