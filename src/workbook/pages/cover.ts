import { byWeight } from "../../account/index.ts";
import { PLACE_NAMES, PURPOSE_NAMES } from "../../job/index.ts";
import type { Plan } from "../../plan/index.ts";
import { clothLengthText, cordLengthText, forceText, massText } from "../../units/index.ts";
import { columnBlocks, columnBlocksHeight } from "../column-blocks.ts";
import { type FactLine, factList } from "../fact-list.ts";
import { layFigure, setFigure } from "../figure.ts";
import { section } from "../heading.ts";
import { entryHeight, type Noted, notedList } from "../noted-list.ts";
import { columns } from "../paper.ts";
import { setLines } from "../paragraph.ts";
import type { ShadeContext } from "../shade-context.ts";
import { TYPE } from "../type-scale.ts";
import { findingEntry } from "./findings-text.ts";
import { count, STYLE_WORDS, shadeSentence } from "./sentence.ts";

const LEAST_ELEVATION_PT = 225;
const MOST_ELEVATION_PT = 430;
/** The heading over the cautions with the space round it. */
const HEADING_ROOM = 44;

/** The first sheet of a shade: what it is, what it looks like, and what to heed before anything is cut. */
export function coverPage(context: ShadeContext, anchor: string): void {
  const { book, shade } = context;
  book.run({ chapter: "The shade" });
  book.turnPage();
  book.bookmark(shade.windowName, true);
  book.anchor(anchor);
  coverTitle(context);
  const first = firstEntries(context);
  const below =
    first.reduce((sum, entry) => sum + entryHeight(book, entry), HEADING_ROOM) +
    columnBlocksHeight(book, shade.cautions);
  elevationAndSizes(context, Math.max(LEAST_ELEVATION_PT, Math.min(MOST_ELEVATION_PT, book.room - below)));
  section(book, "Before you begin");
  notedList(book, first, 6);
  columnBlocks(book, shade.cautions);
}

function coverTitle({ book, shade, plan }: ShadeContext): void {
  const eyebrow = `Workbook · ${STYLE_WORDS[shade.style]} shade`;
  const title = book.lines(shade.windowName, book.width, TYPE.title);
  const style = title.length > 2 ? TYPE.section : TYPE.title;
  const lines = title.length > 2 ? book.lines(shade.windowName, book.width, style) : title;
  const under = book.lines(whose(plan, shade.roomName), book.width, TYPE.lead);
  const { y } = book;
  book.tags.mark("P", () => setLines(book, [eyebrow], book.left, y, TYPE.label));
  const titleY = y + TYPE.label.leadingPt + 3;
  book.tags.mark("H1", () => setLines(book, lines, book.left, titleY, style));
  const underY = titleY + lines.length * style.leadingPt + 3;
  book.tags.mark("P", () => setLines(book, under, book.left, underY, TYPE.lead));
  book.y = underY + under.length * TYPE.lead.leadingPt + 18;
}

function whose(plan: Plan, roomName: string): string {
  const parts = [roomName, plan.jobName];
  if (plan.client !== undefined) parts.push(`for ${plan.client}`);
  return parts.join(" · ");
}

function elevationAndSizes(context: ShadeContext, height: number): void {
  const { book } = context;
  const left = columns(book.paper, 0, 7);
  const right = columns(book.paper, 7, 5);
  const top = book.y;
  const figure = layFigure(book, context.sheet("front"), left.width, height - 30);
  setFigure(book, figure, left.x, top);
  const words = book.lines(shadeSentence(context), right.width, TYPE.body);
  book.tags.mark("P", () => setLines(book, words, right.x, top, TYPE.body));
  book.y = top + words.length * TYPE.body.leadingPt + 10;
  factList(book, "Key sizes", keySizes(context), { ...right, shares: [1, 1], after: 0 });
  book.y = Math.max(book.y, top + figure.heightPt) + 8;
}

function keySizes({ shade, plan, length }: ShadeContext): FactLine[] {
  const { size, grid, cloth, lift, mass } = shade;
  const face = cloth.layers[0];
  const facts: FactLine[] = [
    { label: "Finished width", text: length(size.finishedWidthMm) },
    { label: "Finished length", text: length(size.finishedLengthMm) },
    { label: "Rows and columns", text: `${grid.rows.length} × ${grid.columns.length}` },
    { label: "Raised, board to hem", text: length(grid.raisedHeightMm) },
  ];
  if (face) {
    facts.push(
      { label: "Face, cut size", text: `${length(face.cutWidthMm)} × ${length(face.cutLengthMm)}` },
      { label: "Face, to buy", text: clothLengthText(face.buyMm, plan.units) },
    );
  }
  facts.push(
    { label: "Board", text: length(size.boardLengthMm) },
    { label: "Cord in all", text: cordLengthText(lift.cordTotalMm, plan.units) },
    { label: "Weight", text: massText(mass.totalKg, plan.units) },
    { label: "Pull at the hand", text: forceText(lift.pullN, plan.units) },
  );
  return facts;
}

/** Place and purpose, and every finding that stops the shade or makes it work badly. */
function firstEntries({ book, plan, shade }: ShadeContext): Noted[] {
  const all = [...plan.findings, ...shade.findings];
  const grave = all.filter(({ weight }) => weight === "stop" || weight === "fix").sort(byWeight);
  const others = all.length - grave.length;
  const more = `${count(others, "more finding")}, less grave, in the chapter “Findings”.`;
  return [
    { word: "Place and purpose", text: [{ words: placeAndPurpose(plan), style: TYPE.cell }] },
    ...grave.map((finding) => findingEntry(book, finding, false)),
    ...(others === 0 ? [] : [{ word: "Also found", text: [{ words: more, style: TYPE.cell }] }]),
  ];
}

function placeAndPurpose({ place, purpose }: Plan): string {
  const where = place === undefined ? "Place not given" : PLACE_NAMES[place];
  const why = purpose === undefined ? "purpose not given" : PURPOSE_NAMES[purpose];
  const ask =
    place === undefined || purpose === undefined
      ? " The rules for cords depend on both: state them in the job before the shade is made."
      : "";
  return `${where}; ${place === undefined ? why : why.charAt(0).toLowerCase() + why.slice(1)}.${ask}`;
}
