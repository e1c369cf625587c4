import { hangingCords } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { type LessonMaker, ofLocked } from "./lesson.ts";

export const loads: LessonMaker = (facts) => {
  const { shade, force } = facts;
  const { lift } = shade;
  const heaviest = lift.cords.reduce<(typeof lift.cords)[number] | undefined>(
    (most, cord) => (most === undefined || cord.loadN > most.loadN + 1e-9 ? cord : most),
    undefined,
  );
  return {
    title: "What a cord carries",
    question: "How heavy is it, and what does the hand pull?",
    shade,
    views: [
      {
        sheet: "back",
        raise: 0,
        points: [
          {
            part: "cord-1",
            text: `Cord 1, at the edge, carries ${force(lift.cords[0]?.loadN ?? 0)}, the shade raised.`,
          },
          ...(heaviest === undefined || heaviest.number === 1
            ? []
            : [
                {
                  part: `cord-${heaviest.number}`,
                  text: `Cord ${heaviest.number} carries the most, ${force(heaviest.loadN)}.`,
                },
              ]),
          ...(shade.form.bar === undefined
            ? []
            : [{ part: "bar", text: "The bar in the hem spreads the weight over the cords." }]),
        ],
      },
      { sheet: "force", raise: 1, points: [] },
    ],
    figures: ["lift.held", "lift.pull", "lift.pull-with-pulleys", "lift.strength-knot"].flatMap((id) =>
      facts.figure(shade, id),
    ),
    reason: [
      shade.form.bar === undefined
        ? "With no bar in its hem each cord carries the cloth beside it, halfway to its neighbours."
        : "The bar spreads the weight as a beam does over its supports: of three cords and more the outer ones carry less than their neighbours.",
      "Row by row more cloth leaves the board and hangs on the cords.",
      ...(lift.takeUp === "tube"
        ? []
        : ["Each turn over a fixed eye asks for more still, and a pulley for less."]),
    ].join(" "),
    cite: cite(shade.form.bar === undefined ? "geometry" : "beam-theory"),
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
      .filter(({ outcome, unit }) => outcome === "failed" && unit === "mm")
      .flatMap(({ what, valueText, limitText }) =>
        what === undefined || valueText === undefined || limitText === undefined
          ? []
          : [
              {
                label: what.replace(/^./, (letter) => letter.toUpperCase()),
                text: `${valueText}; the rule that was read: ${limitText}`,
              },
            ],
      )
      .slice(0, 4),
    reason:
      "A cord round a small neck takes seconds and makes no noise. Choose a lift without free cords where children live or visit, keep rear cords in sleeves or rows close together, and keep cots, beds and furniture away from the window. The law of the place comes first.",
    cite: cite("inner-cord-hazard"),
  };
});
