import { forceText, trimmed, type UnitChoice } from "../../units/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { type FactLine, factTable } from "../typeset/fact-list.ts";
import { figure } from "../typeset/figure.ts";
import { type ChapterHead, openChapter } from "../typeset/heading.ts";
import { besideHeight, table, tablesBeside } from "../typeset/table.ts";
import type { CellLike, Table } from "../typeset/table-spec.ts";

/** The board, drilled and covered: eyes above the columns, brackets or screws, the cloth round it. */
export function boardPage(context: ShadeContext, head: ChapterHead): void {
  const { book, shade } = context;
  openChapter(book, {
    ...head,
    lead: "Drawn from below. Mark from the left end of the board, left as seen from the room.",
  });
  figure(book, context.sheet("board"), 260);
  const sizes = { ...factTable("The board", boardFacts(context), [1, 1.5]), heading: "Sizes" };
  // Under a tube there are no eyes: its spools have a page of their own.
  const places = [
    ...(shade.board.eyes.length > 0 ? [eyes(context)] : []),
    ...(shade.board.brackets.length > 0 ? [fixings(context)] : []),
  ];
  if (besideHeight(book, [sizes], places) <= book.room) {
    tablesBeside(book, [sizes], places);
    return;
  }
  table(book, sizes);
  tablesBeside(book, places.slice(0, 1), places.slice(1));
}

function boardFacts({ shade, plan, length }: ShadeContext): FactLine[] {
  const { board } = shade;
  const cover = shade.cloth.trims.find(({ id }) => id === "board-cover");
  const facts: FactLine[] = [
    { label: "Section", text: board.sectionName },
    { label: "Length", text: length(board.lengthMm) },
    { label: "Depth × thickness", text: `${length(board.depthMm)} × ${length(board.thicknessMm)}` },
    { label: "Left end", text: `${length(board.leftMm)} inside the left finished edge` },
    ...(cover === undefined
      ? []
      : [
          {
            label: "Covering",
            text: `${cover.count > 1 ? `${cover.count} pieces, each ` : ""}${length(cover.lengthMm)} × ${length(cover.widthMm)}, ${cover.clothName}`,
          },
        ]),
    {
      label: "Screws",
      text: `${board.screws.count}, each ${length(board.screws.lengthMm)}, into ${board.screws.into}`,
    },
    ...(board.screwsZMm === undefined
      ? []
      : [{ label: "Screws from the wall edge", text: length(board.screwsZMm) }]),
    { label: "Load on the fixings", text: forceText(board.loadN, plan.units) },
    ...strengthFacts(board, plan.units, length),
  ];
  if (board.barName !== undefined) {
    const cut = board.barLengthMm === undefined ? "" : `, cut ${length(board.barLengthMm)} long`;
    facts.push({ label: "Weight bar", text: `${board.barName}${cut}` });
  }
  return facts;
}

/** What a tug puts it to, and how it stands up to that by mean strengths over a factor. */
function strengthFacts(
  { strength }: ShadeContext["shade"]["board"],
  units: UnitChoice,
  length: ShadeContext["length"],
): FactLine[] {
  if (strength === undefined) return [];
  const { deflectionMm, deflectionLimitMm, pullN, shearN, screwShare } = strength;
  const along = shearN > 0 ? `, ${forceText(shearN, units)} along the wall` : "";
  return [
    { label: "Bends with a tug", text: `${length(deflectionMm)}; ${length(deflectionLimitMm)} is allowed` },
    { label: "Hardest worked screw", text: `${forceText(pullN, units)} out of the wall${along}` },
    ...(screwShare === undefined
      ? []
      : [
          {
            label: "Of what it may be put to",
            text: `${trimmed(100 * screwShare, 0)} %, at a factor of five`,
          },
        ]),
  ];
}

function eyes({ shade, length }: ShadeContext): Table {
  const { board } = shade;
  return {
    heading: "Screw eyes",
    title: "Places of the screw eyes",
    columns: [
      { title: "", share: 0.7 },
      { title: "From the board’s left end", share: 1.4, align: "measure" },
      { title: "From the left finished edge", share: 1.4, align: "measure" },
      { title: "From the wall side", share: 1.1, align: "measure" },
    ],
    rows: board.eyes.map((eye, i): CellLike[] => [
      { text: `Eye ${i + 1}`, strong: true },
      { text: length(eye.xMm - board.leftMm), strong: true },
      length(eye.xMm),
      length(eye.zMm),
    ]),
  };
}

function fixings({ shade, plan, length }: ShadeContext): Table {
  const { board } = shade;
  const brackets = board.fixing === "brackets";
  const one = brackets ? "Bracket" : "Screw";
  const title = brackets ? "Brackets" : "Screws up through the board";
  return {
    heading: title,
    title,
    columns: [
      { title: "", share: 0.9 },
      { title: "From the board’s left end", share: 1.4, align: "measure" },
      { title: "From the left finished edge", share: 1.4, align: "measure" },
      { title: "Carries, with a tug", share: 1.2 },
    ],
    rows: board.brackets.map((bracket, i): CellLike[] => [
      { text: `${one} ${bracket.number}`, strong: true },
      { text: length(bracket.xMm - board.leftMm), strong: true },
      length(bracket.xMm),
      board.strength === undefined ? "" : forceText(board.strength.reactionsN[i] ?? 0, plan.units),
    ]),
  };
}
