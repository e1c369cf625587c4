import type { Step } from "../shade-plan/index.ts";
import { counted, IRON } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { placed } from "./wording.ts";

function pocketLines({ cloth, len }: Bench): string {
  return placed(
    "line",
    cloth.ribLines.map((line, i) => ({ number: i + 1, at: len(line.onLiningMm) })),
  );
}

const IN_FRONT = "so that the pocket stands on the face";

/** Pockets folded in the face alone, before the layers go behind it. */
export function facePocketSteps(bench: Bench): Step[] {
  const { resolved, cloth, size, len, about, bottomHemMm } = bench;
  const isFront = resolved.making.ribs.face === "front";
  return [
    {
      id: "make-pocket-lines",
      chapter: "make",
      title: "Mark the pockets on the face",
      text: `The hem line is ${len(bottomHemMm)} above the lower edge of the face. From that line up, and never from one mark to the next, mark on the ${isFront ? "right" : "wrong"} side ${pocketLines(bench)}. What the pockets below take up is in these figures.`,
      check: "Each line is as far from the hem line at both sides as in the middle.",
      sheet: "marking",
    },
    {
      id: "make-pockets",
      chapter: "make",
      title: `Sew ${counted(cloth.ribLines.length, "pocket")} in the face`,
      text: `Fold the face on each line, ${isFront ? `wrong sides together, ${IN_FRONT}` : "right sides together, so that the pocket stands behind it"}. Sew ${len(resolved.making.ribs.pocketMm)} from the fold, from edge to edge, and leave both ends open. Draw the top line again, ${len(size.finishedLengthMm)} above the hem line.`,
      check: `Hem line to top line measures ${len(size.finishedLengthMm)} at both sides and in the middle, and the diagonals agree within ${about("square")}.`,
      caution: IRON,
      sheet: "marking",
    },
  ];
}

/** Pockets folded in the lining alone, before it meets the face. */
export function liningPocketSteps(bench: Bench): Step[] {
  const { resolved, cloth, size, len, about, bottomHemMm } = bench;
  const pockets = counted(cloth.ribLines.length, "pocket");
  return [
    {
      id: "make-pocket-lines",
      chapter: "make",
      title: "Mark the pockets on the lining",
      text: `On the right side of the lining mark the hem line ${len(bottomHemMm)} above the lower edge. From that line up, and never from one mark to the next, mark ${pocketLines(bench)}. What the pockets below take up is in these figures.`,
      check: "Each line is as far from the hem line at both sides as in the middle.",
      sheet: "marking",
    },
    {
      id: "make-pockets",
      chapter: "make",
      title: `Sew ${pockets} in the lining`,
      text: `Fold the lining on each line, wrong sides together, so that the pocket stands on the right side, towards the window. Sew ${len(resolved.making.ribs.pocketMm)} from the fold, from edge to edge, and leave both ends open.`,
      check: `Hem line to top line now measures ${len(size.finishedLengthMm)} at both sides and in the middle, and the diagonals agree within ${about("square")}. Square it now: the face will follow it.`,
      caution: IRON,
      sheet: "marking",
    },
  ];
}

/** Pockets folded through all layers at the back, measured from the sewn hem. */
export function throughPocketSteps(bench: Bench): Step[] {
  const { resolved, cloth, size, back, len, about } = bench;
  return [
    {
      id: "make-pocket-lines",
      chapter: "make",
      title: "Mark the pockets",
      text: `With the ${back} up, measure from the hem up, and never from one mark to the next, and mark ${pocketLines(bench)}. What the pockets below take up is in these figures. Baste all layers together along each line.`,
      check: "Each line is as far from the hem at both sides as in the middle.",
      sheet: "marking",
    },
    {
      id: "make-pockets",
      chapter: "make",
      title: `Sew ${counted(cloth.ribLines.length, "pocket")}`,
      text: `Fold all layers on each line, ${resolved.making.ribs.face === "front" ? `the ${back} inside, ${IN_FRONT}` : "face sides together, so that the pocket stands at the back"}. Sew ${len(resolved.making.ribs.pocketMm)} from the fold, from edge to edge, and leave both ends open.`,
      check: `Hem to top line now measures ${len(size.finishedLengthMm)} at both sides and in the middle, and the diagonals agree within ${about("square")}.`,
      caution: IRON,
      sheet: "marking",
    },
  ];
}

/** Strips sewn on at the rows: on the lining before it meets the face, else on the back of the face. */
export function stripPocketSteps(bench: Bench): Step[] {
  const { resolved, cloth, layer, len, about, bottomHemMm } = bench;
  const isFront = resolved.making.ribs.face === "front";
  const from = isFront
    ? `On the right side of the face mark the hem line ${len(bottomHemMm)} above the lower edge. From that line up`
    : layer("lining") === undefined
      ? "With the wrong side of the face up, measure from the hem up"
      : `On the right side of the lining mark the hem line ${len(bottomHemMm)} above the lower edge. From that line up`;
  return [
    {
      id: "make-pocket-lines",
      chapter: "make",
      title: "Mark the pockets",
      text: `${from}, and never from one mark to the next, mark ${pocketLines(bench)}. Mark at both sides and in the middle and join the marks.`,
      check: "Each line is as far from the hem at both sides as in the middle.",
      sheet: "marking",
    },
    {
      id: "make-pockets",
      chapter: "make",
      title: `Sew on ${counted(cloth.ribLines.length, "pocket strip")}`,
      text: `Press both long edges of each strip under by ${about("stripTurn")}, then fold it lengthwise, pressed edges level. Pin it with those edges on the line, the same distance free at either side, and sew them down. Leave the ends open.`,
      check: "A rib slides through every strip.",
      caution: IRON,
      sheet: "marking",
    },
  ];
}

/** Ribs go in once the rings are on. */
export function ribSteps(bench: Bench): Step[] {
  const { cloth, ribbed, resolved } = bench;
  if (!ribbed) return [];
  if (resolved.making.ribs.kind === "bare") return [bareRibs(bench)];
  return [
    {
      id: "make-ribs",
      chapter: "make",
      action: {
        kind: "slide-in",
        what: "rib",
        count: cloth.ribLines.length,
        ...(cloth.ribLengthMm === undefined ? {} : { lengthMm: cloth.ribLengthMm }),
      },
      title: "Slide the ribs in",
      text: `Slide ${counted(cloth.ribLines.length, "rib")} into the pockets, one in each, and close the ends by hand.`,
      check: "Every rib lies free in its pocket and ends inside the side hems.",
      sheet: "back",
    },
  ];
}

/** Battens without pockets lie on the cloth and are held by stitches. */
function bareRibs({ resolved, cloth, len }: Bench): Step {
  const isFront = resolved.making.ribs.face === "front";
  return {
    id: "make-ribs",
    chapter: "make",
    title: `Sew ${counted(cloth.ribLines.length, "batten")} on`,
    text: `Drill each batten through, small holes in pairs, at every column and 20 mm from both ends, and smooth them. Lay the battens ${isFront ? "on the face" : "on the back, over the rings’ stitches"}, their middles on the lines: ${placed(
      "batten",
      cloth.ribLines.map((line, i) => ({ number: i + 1, at: len(line.fromHemMm) })),
    )} above the hem. Sew each on through its holes with strong thread, through all layers${isFront ? ", the ring behind it with the same stitches" : ""}.`,
    check: "Every batten is level, and the same distance is free at either side.",
    caution: "Clamp what you drill, and wear eye protection.",
    sheet: "back",
  };
}
