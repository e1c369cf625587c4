import { cite } from "../../sources/index.ts";
import { counted } from "../../words/index.ts";
import type { QuestionCard } from "../card.ts";
import { areRowsEven, rowReason } from "../row-reason.ts";

export const FOLD_CARDS: readonly QuestionCard[] = [
  {
    id: "rows-apart",
    question: "How far apart are the rows of rings?",
    also: "ring spacing rows folds how many folds depth of fold mark rings vertical",
    asks: ["lengthMm", "rowsApartMm", "headrailMm"],
    answer: (facts) => {
      const { shade } = facts;
      const { grid } = shade;
      const [first] = grid.spacingsMm;
      const { reason, cite: reasonCite } = rowReason(shade);
      return {
        text: `${counted(grid.rows.length, "row")}, the first ${facts.len(grid.bottomSectionMm)} above the hem${first === undefined || !areRowsEven(shade) ? "" : `, then every ${facts.len(first)}`}.`,
        figures: [
          ...facts.figure(shade, "shape.half-folds"),
          ...facts.figure(shade, "shape.half-fold"),
          ...grid.rows.map(({ number, fromHemMm }) => ({
            label: `Row ${number} above the hem`,
            text: facts.len(fromHemMm),
          })),
        ],
        reason: `${reason} Mark from the hem up.`,
        cite: reasonCite,
      };
    },
  },
  {
    id: "raised-height",
    question: "How much window does it cover when it is raised?",
    also: "stack height stack up pulled up fully open light glass left",
    asks: ["lengthMm", "rowsApartMm", "headrailMm"],
    answer: (facts) => {
      const { shade } = facts;
      return {
        text: `${facts.len(shade.grid.raisedHeightMm)}, from the top line to the hem.`,
        figures: [
          ...facts.figure(shade, "shape.headrail-needed"),
          ...facts.figure(shade, "shape.half-fold"),
          ...facts.figure(shade, "shape.raised-height"),
        ],
        reason:
          "The headrail stays flat and one half fold hangs below it; all other folds lie behind one another at the same height. Rows closer together make it less. An outside mount higher above the opening frees the glass.",
        cite: cite("pocket-spacing"),
      };
    },
  },
  {
    id: "headrail",
    question: "How much flat cloth stays under the board?",
    also: "headrail allowance top row of rings to board distance stack will not rise",
    asks: ["lengthMm", "headrailMm"],
    answer: (facts) => {
      const { shade } = facts;
      return {
        text: `${facts.len(shade.grid.headrailMm)} here.`,
        figures: facts.figure(shade, "shape.headrail-needed"),
        reason:
          "Board, eyes and lock hang down behind the cloth, and the gathered rings need room below them. With too little, the rings meet the eyes before the shade is up; with more, it only hangs lower when raised.",
        cite: cite("headrail-allowance"),
      };
    },
  },
  {
    id: "outer-rings",
    question: "How far in from the edge do the outer rings go?",
    also: "edge inset side rings first column from the edge",
    asks: ["widthMm", "columnsApartMm"],
    answer: (facts) => {
      const first = facts.shade.grid.columns[0]?.xMm ?? 0;
      return {
        text: `${facts.len(first)} here.`,
        figures: facts.figure(facts.shade, "shape.column-spacing"),
        reason:
          "Tutorials put them 1 in from the edge; an older safety text asks for 2 in or more, so that a cord at the side cannot be drawn out. The further in, the more the side of a limp cloth curls.",
        cite: cite("old-inner-cord-clauses"),
      };
    },
  },
];
