import type { Paint } from "../../drawing/index.ts";
import type { RuleOutcome } from "../../shade-plan/index.ts";
import type { Pen } from "./pen.ts";

/** What each outcome of a rule says, and no more than that. */
export const OUTCOME_MEANINGS: Record<RuleOutcome, string> = {
  failed: "The plan shows that the shade breaks it.",
  "not-proven": "Only a test by hand, or a text that was not read, can tell.",
  "not-shown-to-fail": "No figure of the plan breaks it. That proves nothing about the shade on the wall.",
  "does-not-apply": "Written for something else; the reason stands beside it.",
};

export const OUTCOME_PAINTS: Record<RuleOutcome, Paint> = {
  failed: "stop",
  "not-proven": "unproven",
  "not-shown-to-fail": "accent",
  "does-not-apply": "pencil",
};

const R = 4;

/** A mark for each outcome, told apart by its shape in black and white too. None of them is a tick. */
export function drawOutcomeMark(pen: Pen, outcome: RuleOutcome, x: number, y: number): void {
  const paint = OUTCOME_PAINTS[outcome];
  const cx = x + R;
  const look = { paint, widthPt: 1.2 };
  switch (outcome) {
    case "failed":
      pen.polygon(square(cx, y), paint);
      for (const side of [1, -1]) {
        pen.polyline(
          [
            [cx - 2, y - 2 * side],
            [cx + 2, y + 2 * side],
          ],
          { paint: "paper", widthPt: 1.3 },
        );
      }
      break;
    case "not-proven":
      pen.polyline(
        [
          [cx, y - R],
          [cx + R, y],
          [cx, y + R],
          [cx - R, y],
          [cx, y - R],
        ],
        { ...look, dashPt: [1.8, 1.2] },
      );
      break;
    case "not-shown-to-fail":
      pen.box(cx - R + 0.8, y - R + 0.8, 2 * R - 1.6, 2 * R - 1.6, look);
      break;
    case "does-not-apply":
      pen.line(cx - R + 0.8, y, cx + R - 0.8, y, look);
      break;
  }
}

function square(cx: number, cy: number): [number, number][] {
  return [
    [cx - R, cy - R],
    [cx + R, cy - R],
    [cx + R, cy + R],
    [cx - R, cy + R],
  ];
}
