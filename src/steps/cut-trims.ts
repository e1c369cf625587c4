import { acrossBoltMm, type Step, type Trim, trimCannotBeCut } from "../shade-plan/index.ts";
import { counted } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** Pieces beside the layers: bands first, then what the board takes, then strips and sleeves. */
export function cutTrims(bench: Bench): Step[] {
  return [
    ...group(bench, "cut-bands", "Cut the bands", [
      "banding-side",
      "banding-bottom",
      "banding-top",
      "bottom-band",
    ]),
    ...group(bench, "cut-board-cloth", "Cut the cloth for the board", [
      "board-cover",
      "board-return",
      "dust-strip",
    ]),
    ...group(bench, "cut-frill", "Cut the frill", ["frill"]),
    ...group(bench, "cut-strips", "Cut the pocket strips", ["pocket-strip"]),
    ...group(bench, "cut-sleeves", "Cut the sleeves for the cords", ["sleeve"]),
  ];
}

function group(bench: Bench, id: string, title: string, ids: readonly string[]): Step[] {
  const trims = bench.cloth.trims.filter((trim) => ids.includes(trim.id));
  if (trims.length === 0) return [];
  return [
    {
      id,
      chapter: "cut",
      title,
      text: sentences(...trims.map((trim) => piece(bench, trim))),
      check: "Each lies with its grain as it is drawn.",
      sheet: "cutting",
      ...figuresOf(trims),
    },
  ];
}

/** The width of the cloth that a piece is cut from, mm. */
function usableMm({ cloth }: Bench, { clothId }: Trim): number {
  const bolts = [...cloth.layers, ...cloth.trimBolts];
  return bolts.find((bolt) => bolt.clothId === clothId)?.usableWidthMm ?? Infinity;
}

function piece(bench: Bench, trim: Trim): string {
  return trimCannotBeCut(trim, usableMm(bench, trim)) ? cannotCut(bench, trim) : cutPiece(bench, trim);
}

/** What is the case, where there is nothing to cut. */
function cannotCut(bench: Bench, trim: Trim): string {
  const { label, clothName } = trim;
  const { len } = bench;
  return `${label}: it takes ${len(acrossBoltMm(trim))} across the bolt, and “${clothName}” is ${len(usableMm(bench, trim))} wide, so it cannot be cut from it. Choose a wider cloth for it first.`;
}

function cutPiece({ len }: Bench, { label, clothName, count, widthMm, lengthMm, grain, why }: Trim): string {
  const size = `${len(widthMm)} wide and ${len(lengthMm)} long`;
  const way = {
    warp: ", its length along the bolt",
    weft: ", its length across the bolt",
    free: "",
  }[grain];
  const pieces = count === 1 ? `one piece, ${size}` : `${counted(count, "piece")}, each ${size}`;
  return `${label}, from “${clothName}”: ${pieces}${way} (${why}).`;
}

const FIGURES: Record<string, readonly string[]> = {
  "board-cover": ["cloth.cover-width", "cloth.cover-length"],
  "board-return": ["cloth.return-width", "cloth.return-length"],
  "dust-strip": ["cloth.dust-strip-width"],
  frill: ["shape.frill", "cloth.frill-cut-depth"],
  sleeve: ["cloth.sleeve-width", "cloth.sleeve-length"],
};

function figuresOf(trims: readonly Trim[]): Pick<Step, "figures"> {
  const figures = trims.flatMap(({ id }) => FIGURES[id] ?? []);
  return figures.length === 0 ? {} : { figures };
}
