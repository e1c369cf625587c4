import { hangingCords } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { type LessonMaker, ofLocked } from "./lesson.ts";

export const loads: LessonMaker = (facts) => {
  const { shade, force } = facts;
  const { lift } = shade;
  return {
    title: "What a cord carries",
    question: "How heavy is it, and what does the hand pull?",
    shade,
    views: [
      {
        sheet: "back",
        raise: 0,
        points: lift.cords.map(({ number, loadN }) => ({
          part: `cord-${number}`,
          text: `Cord ${number} carries ${force(loadN)}, the shade raised.`,
        })),
      },
      { sheet: "force", raise: 1, points: [] },
    ],
    figures: ["lift.held", "lift.pull", "lift.pull-with-pulleys", "lift.strength-knot"].flatMap((id) =>
      facts.figure(shade, id),
    ),
    reason:
      "The bar spreads the weight as a beam does over its supports: the outer cords carry less than their neighbours. Row by row more cloth leaves the board and hangs on the cords. Each turn over a fixed eye asks for more still, and a pulley for less.",
    cite: cite("beam-theory"),
  };
};

export const childSafety = ofLocked((facts, locked) => {
  const { len } = facts;
  const [tail] = hangingCords(locked.lift);
  const widest = Math.max(0, ...locked.grid.spacingsMm);
  return {
    title: "Cords and children",
    question: "What makes its cords a hazard?",
    views: [
      {
        sheet: "back",
        raise: 0,
        points: [
          {
            part: "tail",
            text: `Below the lock ${len(tail?.downMm ?? 0)} hang with the shade lowered, ${len(tail?.upMm ?? 0)} raised: the higher the shade, the more.`,
          },
          {
            part: "row-2",
            text: `Between two rows ${len(widest)} of cord lie open at the back: enough to be drawn into a loop.`,
          },
          {
            part: "lock",
            text: "No lock, cleat or connector removes the hazard, and tails that are joined are a loop.",
          },
        ],
      },
    ],
    figures: locked.safety.results
      .filter(
        ({ outcome, valueText, limitText }) =>
          outcome === "failed" && valueText !== undefined && limitText !== undefined,
      )
      .slice(0, 4)
      .map(({ what, valueText, limitText, comparison }) => ({
        label: what ?? "",
        text: `${valueText}, ${comparison === "at-least" ? "at least" : "at most"} ${limitText}`,
      })),
    reason:
      "A cord round a small neck takes seconds and makes no noise. Choose a lift without free cords where children live or visit, keep rear cords in sleeves or rows close together, and keep cots, beds and furniture away from the window. The law of the place comes first.",
    cite: cite("inner-cord-hazard"),
  };
});
