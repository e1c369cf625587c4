import { LAYER_NAMES } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { AnswerFigure } from "../answer-figure.ts";
import type { QuestionCard } from "../card.ts";
import type { AskedShade } from "../facts.ts";

function layerFigures({ shade, figure }: AskedShade, ...what: string[]): AnswerFigure[] {
  return shade.cloth.layers.flatMap(({ layer }) =>
    what.flatMap((one) => figure(shade, `cloth.${layer}-${one}`)),
  );
}

export const CLOTH_CARDS: readonly QuestionCard[] = [
  {
    id: "how-much-cloth",
    question: "How much cloth do I need?",
    also: "fabric yardage yards metres material buy lining how many widths drops",
    asks: ["widthMm", "lengthMm", "clothMm", "repeatMm"],
    answer: (facts) => {
      const { shade, units } = facts;
      const layers = shade.cloth.layers.map(
        ({ layer, buyMm, widths }) =>
          `${LAYER_NAMES[layer].toLowerCase()} ${clothLengthText(buyMm, units)} (${counted(widths, "width")})`,
      );
      return {
        text: `${layers.join("; ")}.`.replace(/^./, (letter) => letter.toUpperCase()),
        figures: layerFigures(facts, "cut-width", "cut-length", "repeat-length", "length", "buy"),
        reason:
          "Cut width by usable width gives the widths, rounded up. Each width is as long as the shade with its hem and what the board takes, raised to whole repeats where there is a pattern. Use the usable width, not the one on the label.",
        cite: cite("curtain-encyclopaedia", "pp. 116–119"),
      };
    },
  },
  {
    id: "cut-size",
    question: "How large do I cut the cloth?",
    also: "cut size allowances hem side hem seam turning lining size",
    asks: ["widthMm", "lengthMm"],
    answer: (facts) => {
      const { shade, len } = facts;
      return {
        text: `${shade.cloth.layers
          .map(
            ({ layer, cutWidthMm, cutLengthMm }) =>
              `${LAYER_NAMES[layer]} ${len(cutWidthMm)} × ${len(cutLengthMm)}`,
          )
          .join("; ")}.`,
        figures: shade.cloth.layers.flatMap(({ layer, makeUp }) =>
          makeUp.slice(1).map(({ label, widthMm, lengthMm }) => ({
            label: `${LAYER_NAMES[layer]}: ${label}`,
            text: `${widthMm === 0 ? "" : `width + ${len(widthMm)}`}${widthMm === 0 || lengthMm === 0 ? "" : ", "}${lengthMm === 0 ? "" : `length + ${len(lengthMm)}`}`,
          })),
        ),
        reason:
          "Published allowances differ widely, from 1 to 6 in across and 4 1/2 to 10 in along: each is a setting. Check the width before the side hems are sewn, not after.",
        cite: cite("hem-guides", "allowances vary: each is a setting"),
      };
    },
  },
  {
    id: "pattern-repeat",
    question: "How much more does a pattern take?",
    also: "repeat matching half drop motif waste joined widths",
    asks: ["lengthMm", "repeatMm", "clothMm", "widthMm"],
    answer: (facts) => {
      const { shade, units, len } = facts;
      const face = shade.cloth.layers.find(({ layer }) => layer === "face");
      const repeatMm = face?.repeatMm;
      if (face === undefined || repeatMm === undefined) {
        return {
          text: "Nothing: this cloth is plain. Type the height of one repeat to see what it takes.",
          figures: layerFigures(facts, "cut-length", "length"),
          reason:
            "Every drop of a patterned cloth begins at the same place of the pattern, so each is raised to whole repeats, up and never down.",
          cite: cite("curtain-encyclopaedia", "pp. 116–119"),
        };
      }
      const moreMm =
        face.widths * Math.max(0, face.repeatLengthMm - (face.turned ? face.cutWidthMm : face.cutLengthMm));
      return {
        text: `Each of ${counted(face.widths, "drop")} is raised to whole repeats of ${len(repeatMm)}: ${len(face.repeatLengthMm)}, together ${clothLengthText(moreMm, units)} more than plain cloth.`,
        figures: layerFigures(facts, "cut-length", "repeat-length", "length", "buy"),
        reason:
          face.match === "half-drop"
            ? "On a half drop every second width lies half a repeat lower. Guides differ on what that takes more: one whole repeat for each order, half of one, or nothing where the rounding up has left enough."
            : "Every drop begins at the same place of the pattern, so each is raised to whole repeats, up and never down.",
        cite:
          face.match === "half-drop" ? cite("half-drop-faq") : cite("curtain-encyclopaedia", "pp. 116–119"),
      };
    },
  },
  {
    id: "shrink",
    question: "Will it shrink?",
    also: "wash washing shrinkage pre-wash steam laundering",
    asks: ["widthMm", "lengthMm"],
    answer: (facts) => {
      const { finishedLengthMm, finishedWidthMm } = facts.shade.size;
      const { len } = facts;
      return {
        text: `Count on up to 3 in 100 each way unless the cloth was washed or steamed first: ${len(finishedLengthMm * 0.03)} of this length, ${len(finishedWidthMm * 0.03)} of this width.`,
        figures: [
          { label: "3 % of the length", text: len(finishedLengthMm * 0.03) },
          { label: "3 % of the width", text: len(finishedWidthMm * 0.03) },
        ],
        reason:
          "The specification for such cloth allows that much after washing or cleaning. Face and lining shrink unlike, and the shade puckers. Wash or steam before it is cut, or enter the shrinkage of each cloth: its cut size grows by it.",
        cite: cite("astm-d3691"),
      };
    },
  },
];
