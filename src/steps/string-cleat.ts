import type { CleatCord, Step } from "../shade-plan/index.ts";
import { listed } from "../words/index.ts";
import type { CleatBench } from "./bench.ts";
import { CORDS_AT_THREADING } from "./hazards.ts";
import { bar, closeSleeves, cutCords, tie } from "./string-cords.ts";

/** From cut cords to cords that hang side by side over the last eye, and the bar in the hem. */
export function cleatStringSteps(bench: CleatBench): Step[] {
  return [cutCords(bench), tie(bench), ...closeSleeves(bench), throughEyes(bench), ...bar(bench)];
}

function throughEyes({ lift }: CleatBench): Step {
  const { turn } = lift;
  const path = (cord: CleatCord) => {
    const passed = cord.eyes.slice(1);
    const last = turn.column === undefined ? ["the last one"] : [];
    const then = listed([...passed.map(String), ...last]);
    return then === ""
      ? `cord ${cord.number} over its own eye, which is the last`
      : `cord ${cord.number} through its own eye, then through ${eyesWord(passed.length)}${then}`;
  };
  return {
    id: "string-eyes",
    chapter: "string",
    title: "Lead the cords through the eyes",
    text: `Each cord goes up into the eye above its own column, turns there, and runs along the board to the ${lift.controlSide}: ${lift.cords.map(path).join("; ")}. Over the last eye all of them turn straight down. Put the cord of the far column through first, and keep them side by side: one that lies over another is pinched when both are drawn.`,
    check:
      "Between the eyes and below the last one no cord lies over another, and each can be drawn by itself.",
    caution: CORDS_AT_THREADING,
    sheet: "board",
  };
}

function eyesWord(count: number): string {
  if (count === 0) return "";
  return count === 1 ? "eye " : "eyes ";
}
