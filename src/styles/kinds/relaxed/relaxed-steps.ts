import type { StyleStep } from "../../../shade-plan/index.ts";
import { IRON, listed, SHOT } from "../../../words/index.ts";
import { hemTurn, stepWords } from "../../base/step-words.ts";
import type { StyleStepInput } from "../../style.ts";

/** The panel tapered, the lower edge curved, rings along two edges and nothing between. */
export function relaxedSteps(input: StyleStepInput): StyleStep[] {
  const dipMm = input.form.swags[0]?.sagMm ?? 0;
  const extraMm = input.form.allowances.reduce((sum, one) => sum + one.widthMm, 0);
  return [
    ...widen(input, extraMm),
    ...slantedHems(input),
    ...(dipMm > 0 ? [curve(input, dipMm), ...levels(input, dipMm)] : []),
    hem(input, dipMm > 0),
    columns(input),
    dress(input),
  ];
}

/** Which of the two was worked out from the other. */
function widthFigure({ shade: { making } }: StyleStepInput): string {
  const byWidth = making.relax.dipMm === undefined && making.relax.extraWidthMm !== undefined;
  return byWidth ? "shape.dip" : "shape.extra-width";
}

function widen(input: StyleStepInput, extraMm: number): StyleStep[] {
  if (extraMm <= 0) return [];
  const { len } = stepWords(input);
  const { finishedWidthMm } = input.size;
  const layers = input.cloth.layers.length > 1 ? "Do the same with every layer." : "";
  return input.shade.making.relax.widening === "tapered"
    ? [
        {
          id: "cut-taper",
          chapter: "cut",
          after: input.cloth.layers.some(({ layer }) => layer === "lining") ? "cut-lining" : "cut-face",
          title: "Taper the sides",
          text: `Fold each piece lengthwise, edge on edge, or where it is joined do this after joining. At the lower edge it keeps its whole width. At the upper edge measure in ${len(input.form.panel?.taperMm ?? 0)} from either side, draw a straight line from there to the lower corner, and cut along it. ${layers}`.trim(),
          check: `The upper edge is ${len(extraMm)} narrower than the lower one, half of it at each side.`,
          sheet: "cutting",
          figures: [widthFigure(input)],
        },
      ]
    : [
        {
          id: "make-ease-top",
          chapter: "make",
          before: "make-length",
          title: "Ease the top in",
          text: `The panel is ${len(extraMm)} wider than the board. Run two gathering threads along the top line, draw them up to ${len(finishedWidthMm)}, and spread the fullness evenly; steam shrinks the little pleats flat.`,
          check: `Along the top line it measures ${len(finishedWidthMm)}.`,
          caution: IRON,
          sheet: "marking",
          figures: [widthFigure(input)],
        },
      ];
}

/** The usual step measures the same width all the way down. */
function slantedHems(input: StyleStepInput): StyleStep[] {
  const { shade, form, size, cloth } = input;
  const { sideTurnMm, sideTurns } = shade.making.hems;
  const { panel } = form;
  if (panel === undefined || panel.taperMm === 0 || sideTurnMm === 0) return [];
  const { len } = stepWords(input);
  const alone = cloth.layers.length === 1;
  const twice = sideTurns === 2 ? `, then by ${len(sideTurnMm)} again` : "";
  return [
    {
      id: "make-slanted-hems",
      chapter: "make",
      replaces: ["make-side-hems"],
      title: alone ? "Sew the side hems" : "Press the side hems",
      text: `With the wrong side of the face up, turn each side in by ${len(sideTurnMm)}${twice}, along its slanted edge, and press. ${
        alone
          ? "Sew them down with small slip stitches, or a blind hem on the machine."
          : "Do not sew them yet: open them out again, the creases stay."
      }`,
      check: `Folded, the face measures ${len(size.finishedWidthMm)} across at the top line and ${len(panel.hemWidthMm)} at the hem. Put it right now; later it cannot be.`,
      caution: IRON,
      sheet: "marking",
    },
  ];
}

/** Heights of the curve over its lowest point: from the middle out to a column. */
function curve(input: StyleStepInput, dipMm: number): StyleStep {
  const { len, bottomHemMm } = stepWords(input);
  const points = input.form.panel?.curve ?? [];
  const places = points.map(({ outMm, upMm }) => `${len(upMm)} at ${len(outMm)}`);
  return {
    id: "make-curve",
    chapter: "make",
    after: "make-lines",
    title: "Draw the curve of the lower edge",
    text: `The hem line that you drew is the level of the lowest point. From the middle of it measure out to both sides, and mark above it: ${listed(places)}. Beyond the last mark go on level to the edge. Join the marks in one smooth curve: a thin batten bent along them, or a chain held up by its ends, gives the line. Cut the lower edge ${len(bottomHemMm)} below the curve, face and lining alike.`,
    check: `Folded in half, the two halves of the curve lie on each other; it is ${len(dipMm)} deep.`,
    sheet: "marking",
  };
}

function levels(input: StyleStepInput, dipMm: number): StyleStep[] {
  const { len, back, lengthMm } = stepWords(input);
  const rows = input.grid.rows.map(({ number, fromHemMm }) => `row ${number} at ${len(fromHemMm)}`);
  return [
    {
      id: "make-level-rows",
      chapter: "make",
      replaces: ["make-rows"],
      title: "Mark the rows",
      text: `Lay the shade on its face and pin a tape across the table, level with the lowest point of the hem. Measure every row from that tape up, and never from the row below: ${listed(rows)}. Mark on the ${back}, at both sides.`,
      check: `At the columns the hem is ${len(dipMm)} above the tape.`,
      sheet: "marking",
    },
    {
      id: "make-dipped-length",
      chapter: "make",
      replaces: ["make-length"],
      title: "Check the finished length",
      brief: `${len(lengthMm)} in the middle · ${len(input.form.panel?.sideLengthMm ?? lengthMm)} at each column`,
      text: `Lay the shade flat and measure from the top line down: ${len(lengthMm)} to the hem in the middle, ${len(input.form.panel?.sideLengthMm ?? lengthMm)} at each column. Draw the top line again there, on the face as well, with chalk that brushes out.`,
      check: "Left and right agree, and the top line is straight and square to the middle.",
      sheet: "marking",
    },
  ];
}

function hem(input: StyleStepInput, isCurved: boolean): StyleStep {
  const { form, shade } = input;
  const { len } = stepWords(input);
  const weight = form.haberdashery.find(({ id }) => id === "hem-weights");
  const ends =
    form.bar !== undefined
      ? " Leave both ends open: the bar goes in there."
      : weight === undefined
        ? " Close both ends."
        : ` Slip a steel weight of about ${len(weight.lengthMm)} into the hem below each column, stitch it in so that it cannot wander, and close both ends.`;
  const cautions = [
    ...(shade.cloths.blackout === undefined ? [IRON] : []),
    ...(weight === undefined ? [] : [SHOT]),
  ];
  const eased = isCurved
    ? ", so that the fold lies on the curve. The edge that is turned is longer than where it comes to lie: spread the spare in small flat pleats and press them"
    : ", so that the fold lies on the hem line";
  return {
    id: "make-soft-hem",
    chapter: "make",
    replaces: form.bar === undefined ? ["make-bottom-hem", "cut-bar", "string-bar"] : ["make-bottom-hem"],
    title: "Sew the bottom hem",
    text: `${hemTurn(input)}${eased}. Sew along the upper edge of the hem by hand, with small loose stitches.${ends}`,
    check: "Held up at the two columns, the lower edge hangs in an even curve.",
    ...(cautions.length > 0 ? { caution: cautions.join(" ") } : {}),
    sheet: "marking",
  };
}

function columns(input: StyleStepInput): StyleStep {
  const { len } = stepWords(input);
  return {
    id: "make-edge-columns",
    chapter: "make",
    replaces: ["make-columns"],
    title: "Mark the columns",
    text: `On every row mark a point ${len(input.grid.columns[0]?.xMm ?? 0)} in from either finished edge, measured along the row. Those are the two columns; there are none between.`,
    check: "Every row has two marks, as far from the left edge as from the right one.",
    sheet: "marking",
    figures: ["shape.column-spacing"],
  };
}

function dress(input: StyleStepInput): StyleStep {
  const { grid } = input;
  const { len } = stepWords(input);
  const lowMm = Math.max(0, grid.raisedHeightMm - grid.headrailMm);
  return {
    id: "train-dips",
    chapter: "train",
    after: "train-fold",
    title: "Dress the dips",
    text: `Raise it and draw each fold down in the middle with both hands, the lowest one furthest, so that all of them hang in curves one inside the other. Fully raised, the middle of the hem hangs ${len(lowMm)} below the rings.`,
    check: "No fold stands straight, and the lowest point is in the middle.",
    sheet: "front",
  };
}
