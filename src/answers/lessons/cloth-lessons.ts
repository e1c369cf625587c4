import { LAYER_NAMES } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { areRowsEven, hasHalfFolds, rowReason } from "../row-reason.ts";
import type { LessonMaker } from "./lesson.ts";

const ROW_FIGURES = [
  "shape.half-folds",
  "shape.half-fold",
  "shape.hobble-tape",
  "shape.tuck-spacing",
  "shape.row-spacing",
  "shape.raised-height",
  "shape.columns",
] as const;

/** Of a row's place, so far that it is told as a sum of two others, mm. */
const SAME_MM = 0.05;

export const rowsAndFolds: LessonMaker = (facts) => {
  const { shade, len } = facts;
  const { grid } = shade;
  const top = grid.rows.at(-1)?.number ?? 1;
  const [firstMm = 0] = grid.spacingsMm;
  const isHeadrailAndSpacing = Math.abs(grid.topSectionMm - grid.headrailMm - firstMm) < SAME_MM;
  const { reason, cite: reasonCite } = rowReason(shade);
  return {
    title: "Rows and folds",
    question: "How far apart are the rows, and how high is it when raised?",
    shade,
    views: [
      {
        sheet: "marking",
        raise: 0,
        points: [
          { part: "row-1", text: `First row, ${len(grid.bottomSectionMm)} above the hem.` },
          ...(grid.rows.length < 2
            ? []
            : [
                {
                  part: "row-2",
                  text: areRowsEven(shade)
                    ? `Then every ${len(firstMm)}${hasHalfFolds(shade) ? ": two half folds from row to row" : ""}.`
                    : `Second row, ${len(firstMm)} above the first.`,
                },
              ]),
          ...(grid.rows.length < 3
            ? []
            : [
                {
                  part: `row-${top}`,
                  text: `Top row, ${len(grid.topSectionMm)} below the top line${isHeadrailAndSpacing ? ": the headrail and one spacing" : ""}.`,
                },
              ]),
          {
            part: "column-1",
            text: `${counted(grid.columns.length, "column")}, ${len(grid.columnSpacingMm)} apart.`,
          },
        ],
      },
      {
        sheet: "side",
        raise: 1,
        points: [
          {
            part: "headrail",
            text: `${len(grid.headrailMm)} stay flat: board, lift and gathered rings need them.`,
          },
        ],
      },
    ],
    figures: ROW_FIGURES.flatMap((id) => facts.figure(shade, id)),
    reason: `${reason} Mark from the hem up, on the back, at both edges and in the middle.`,
    cite: reasonCite,
  };
};

export const yardage: LessonMaker = (facts) => {
  const { shade, len, units } = facts;
  const face = shade.cloth.layers.find(({ layer }) => layer === "face");
  if (face === undefined) return undefined;
  const { repeatMm } = face;
  return {
    title: "How much cloth",
    question: repeatMm === undefined ? "How much do I buy?" : "How much do I buy, with the repeat?",
    shade,
    views: [
      {
        sheet: "cutting",
        raise: 0,
        points: shade.cloth.layers.map(({ layer, cutWidthMm, cutLengthMm, widths, buyMm }) => ({
          part: `${layer}-1`,
          text: `${LAYER_NAMES[layer]}: ${len(cutWidthMm)} × ${len(cutLengthMm)}, ${counted(widths, "width")}, ${clothLengthText(buyMm, units)} to buy.`,
        })),
      },
    ],
    figures: ["cut-width", "cut-length", "repeat-length", "length", "buy"].flatMap((one) =>
      facts.figure(shade, `cloth.face-${one}`),
    ),
    reason:
      repeatMm === undefined
        ? "Cut width by usable width gives the widths, rounded up. With a pattern each drop would be raised to whole repeats, up and never down."
        : `Each drop is raised to whole repeats of ${len(repeatMm)}, up and never down, so that every one begins at the same place of the pattern.${face.match === "half-drop" ? " On a half drop every second width lies half a repeat lower." : ""}`,
    cite: cite("curtain-encyclopaedia", "pp. 116–119"),
  };
};
