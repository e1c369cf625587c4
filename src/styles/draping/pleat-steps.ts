import type { StyleStep } from "../../shade-plan/index.ts";
import { IRON, listed } from "../../words/index.ts";
import { hemTurn, stepWords } from "../base/step-words.ts";
import type { StyleStepInput } from "../style.ts";
import { isHemmedAlone } from "./pleat-figures.ts";

/** Pleats marked on the hemmed cloth, folded, held, and the rings behind them. */
export function pleatSteps(input: StyleStepInput): StyleStep[] {
  if (input.form.pleats.length === 0) return [hem(input)];
  return [...inserts(input), hem(input), lines(input), fold(input)];
}

/** The pieces of a face that is cut apart for its pleats, joined again. */
function inserts(input: StyleStepInput): StyleStep[] {
  const { shade, form } = input;
  if (form.apart === undefined) return [];
  const { len } = stepWords(input);
  return [
    {
      id: "make-inserts",
      chapter: "make",
      replaces: ["make-join-face"],
      before: "make-lines",
      title: "Join the inserts",
      text: `Lay the pieces side by side, right side up, the same end up: ${listed(form.apart.map(({ label }) => label.toLowerCase()))}. Sew them together in that order, right sides facing, ${len(shade.making.hems.seamMm)} from the edge, and press the seams open. The seams are the lines of the pleats.`,
      check: "The seams run straight and upright, as far apart at the top as at the hem.",
      caution: IRON,
      sheet: "marking",
      figures: [
        "shape.insert-cut",
        ...(isHemmedAlone(shade.making) ? ["shape.side-cut"] : []),
        ...(form.pleats.length > 1 ? ["shape.centre-cut"] : []),
      ],
    },
  ];
}

function flatWidthMm({ size, form }: StyleStepInput): number {
  return form.pleats.reduce((sum, { foldedMm }) => sum + foldedMm, size.finishedWidthMm);
}

/** Open for a bar between the pleats, or closed: no bar runs across a pleat. */
function hem(input: StyleStepInput): StyleStep {
  const { form } = input;
  const { len, lengthMm } = stepWords(input);
  const flatLengthMm = form.allowances.reduce((sum, one) => sum + one.lengthMm, lengthMm);
  const barred = form.bar !== undefined;
  return {
    id: "make-pleated-hem",
    chapter: "make",
    replaces: barred ? ["make-bottom-hem"] : ["make-bottom-hem", "cut-bar", "string-bar"],
    title: "Sew the bottom hem",
    text: `${hemTurn(input)}, so that the fold lies on the hem line. The lining goes in with it where it reaches so far. Sew along the upper edge of the hem${
      barred
        ? " and close both its ends, but leave it open for a thumb’s width at the middle line of each pleat: the weight bar goes in there and lies between the pleats alone"
        : " and close both its ends: no bar goes in"
    }.`,
    check: `From the hem to the top line it measures ${len(flatLengthMm)} at the left, the centre and the right.`,
    caution: IRON,
    sheet: "marking",
  };
}

function lines(input: StyleStepInput): StyleStep {
  const { form } = input;
  const { len, back } = stepWords(input);
  const places = form.pleats.map(
    ({ number, flatMm }) => `pleat ${number} at ${listed(flatMm.map((mm) => len(mm)))}`,
  );
  return {
    id: "make-pleat-lines",
    chapter: "make",
    before: "make-rows",
    title: "Mark the pleats",
    text: `Lay the hemmed shade flat on its face, the hem towards you, so that its left edge seen from the room is at your right. From that edge mark on the ${back}, at the top line, at the hem and twice between, three lines for each pleat: ${listed(places)}. The first and the last of the three meet; the one between is the back of the pleat. Join the marks with a long straight edge.`,
    check: `From the last line to the other edge it is ${len(flatWidthMm(input) - (form.pleats.at(-1)?.flatMm[2] ?? 0))}, at the top and at the hem.`,
    sheet: "marking",
    figures: ["shape.flat-width"],
  };
}

function fold(input: StyleStepInput): StyleStep {
  const { shade, form, size } = input;
  const { pleat } = shade.making;
  const { len } = stepWords(input);
  const inverted = pleat.kind === "inverted";
  const meet = inverted
    ? "Bring the first and the last line of each pleat together on the right side, so that their cloth lies at the back, half to either side, its middle line straight behind the join."
    : "Bring the first and the last line of each pleat together on the wrong side, so that their cloth stands at the front as a flat box, its middle line straight over the join.";
  const held =
    pleat.held === "sewn"
      ? `Sew the two lines together by hand from ${len(pleat.sewnAtTopMm)} below the top line to ${len(pleat.openAtHemMm)} above the hem; above and below they are only pressed.`
      : `Sew the two lines together from the top line down for ${len(pleat.sewnAtTopMm)}. Below that the pleat is only pressed: it opens when the shade goes up. Baste it until the rings are on.`;
  return {
    id: "make-pleats",
    chapter: "make",
    after: "make-pleat-lines",
    title: form.pleats.length === 1 ? "Fold the pleat" : `Fold ${form.pleats.length} pleats`,
    brief:
      pleat.held === "sewn"
        ? `sewn from ${len(pleat.sewnAtTopMm)} below the top line to ${len(pleat.openAtHemMm)} above the hem`
        : `sewn ${len(pleat.sewnAtTopMm)} down from the top line`,
    text: `${meet} Press. ${held}`,
    check: `Pleated, the shade measures ${len(size.finishedWidthMm)} across at the top, the middle and the hem.`,
    caution: IRON,
    sheet: "front",
  };
}
