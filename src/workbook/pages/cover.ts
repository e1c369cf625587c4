import { bySeverity, type Finding, SEVERITY_WORDS } from "../../figures/index.ts";
import { PLACE_NAMES, PURPOSE_NAMES, STYLE_NAMES } from "../../job/index.ts";
import type { Plan } from "../../plan/index.ts";
import { clothLengthText, cordLengthText, forceText, massText } from "../../units/index.ts";
import { columnBlocks, fittingBlocks, layBlocks, setBlocks, type TitledText } from "../column-blocks.ts";
import { type FactLine, factList } from "../fact-list.ts";
import { layFigure, setFigure } from "../figure.ts";
import { section } from "../heading.ts";
import { columns } from "../paper.ts";
import { setLines } from "../paragraph.ts";
import { hasUnprintable, NO_SHAPE } from "../printable.ts";
import { drawSeverityMark, MARK_WIDTH, SEVERITY_PAINTS } from "../severity-mark.ts";
import type { ShadeContext } from "../shade-context.ts";
import { painted, TYPE } from "../type-scale.ts";
import { remediesText } from "./findings-text.ts";
import { count, shadeSentence } from "./sentence.ts";

/** Height that the key sizes take under the elevation, pt. */
const SIZES_PT = 200;
const LEFT_COLUMNS = 5;

/** The first sheet of a shade: what it is, what it looks like, and what to heed before anything is cut. */
export function coverPage(context: ShadeContext, anchor: string): void {
  const { book, shade } = context;
  book.run({ chapter: "The shade" });
  book.turnPage();
  book.bookmark(shade.windowName, true);
  book.anchor(anchor);
  coverTitle(context);
  const top = book.y;
  elevationAndSizes(context);
  const end = book.y;
  book.y = top;
  const rest = heed(context);
  book.y = Math.max(book.y, end);
  if (rest.length > 0) {
    book.turnPage();
    section(book, "Before you begin, continued");
    columnBlocks(book, rest);
  }
}

function coverTitle({ book, shade, plan }: ShadeContext): void {
  const eyebrow = `Workbook · ${STYLE_NAMES[shade.style]} shade`;
  const large = book.lines(shade.windowName, book.width, TYPE.title);
  const style = large.length > 2 ? TYPE.section : TYPE.title;
  const lines = large.length > 2 ? book.lines(shade.windowName, book.width, style) : large;
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

function elevationAndSizes(context: ShadeContext): void {
  const { book } = context;
  const left = columns(book.paper, 0, LEFT_COLUMNS);
  const top = book.y;
  const figure = layFigure(book, context.sheet("front"), left.width, book.room - SIZES_PT - 40);
  setFigure(book, figure, left.x, top);
  book.y = top + figure.heightPt + 12;
  factList(book, "Key sizes", keySizes(context), { ...left, shares: [1, 1.05], after: 0 });
}

function keySizes({ shade, plan, length }: ShadeContext): FactLine[] {
  const { size, grid, cloth, lift, mass } = shade;
  const face = cloth.layers[0];
  return [
    { label: "Finished", text: `${length(size.finishedWidthMm)} × ${length(size.finishedLengthMm)}` },
    ...(face
      ? [
          { label: "Face, cut size", text: `${length(face.cutWidthMm)} × ${length(face.cutLengthMm)}` },
          { label: "Face, to buy", text: clothLengthText(face.buyMm, plan.units) },
        ]
      : []),
    { label: "Board", text: length(size.boardLengthMm) },
    { label: "Raised, to the hem", text: length(grid.raisedHeightMm) },
    { label: "Cord in all", text: cordLengthText(lift.cordTotalMm, plan.units) },
    { label: "Weight", text: massText(mass.totalKg, plan.units) },
    ...(lift.kind === "motor"
      ? []
      : [{ label: "Pull at the hand", text: forceText(lift.pullN, plan.units) }]),
  ];
}

/** The sentence, and everything to heed, as far as it goes on the page. What is left over is given back. */
function heed(context: ShadeContext): TitledText[] {
  const { book } = context;
  const right = columns(book.paper, LEFT_COLUMNS, 12 - LEFT_COLUMNS);
  const words = book.lines(shadeSentence(context), right.width, TYPE.body);
  const { y } = book;
  book.tags.mark("P", () => setLines(book, words, right.x, y, TYPE.body));
  book.y += words.length * TYPE.body.leadingPt + 14;
  section(book, "Before you begin", 0, right);
  const items = toHeed(context);
  const blocks = layBlocks(book, items, right.width);
  const fit = fittingBlocks(blocks, book.room);
  book.y = setBlocks(book, blocks.slice(0, fit), right, book.y);
  return items.slice(fit);
}

/** Place and purpose, every finding that stops the shade or makes it work badly, and the cautions. */
function toHeed(context: ShadeContext): TitledText[] {
  const { book, plan, shade, findings } = context;
  const grave = findings.filter(({ severity }) => severity === "stop" || severity === "fix").sort(bySeverity);
  const others = findings.length - grave.length;
  const more = `${count(others, "finding")} less severe in the chapter “Findings”.`;
  return [
    { title: "Place and purpose", text: placeAndPurpose(plan) },
    ...grave.map((finding) => graveFinding(book.pen, finding)),
    ...(lacksLetters(context) ? [{ title: "Letters without a shape", text: LACKING }] : []),
    ...(others === 0 ? [] : [{ title: grave.length === 0 ? "Found" : "Also found", text: more }]),
    ...shade.cautions.map(({ title, text }) => ({ title, text })),
  ];
}

const LACKING = `${NO_SHAPE} stands for a letter of a name that the type of this workbook has no shape for.`;

function lacksLetters({ book, plan, shade }: ShadeContext): boolean {
  const names = [plan.jobName, plan.client ?? "", shade.roomName, shade.windowName];
  const cloths = shade.cloth.layers.map(({ clothName }) => clothName);
  return [...names, ...cloths].some((name) => hasUnprintable(name, book.faces.regular));
}

function graveFinding(pen: Parameters<typeof drawSeverityMark>[0], finding: Finding): TitledText {
  const { severity, text } = finding;
  const would = remediesText(finding);
  return {
    title: SEVERITY_WORDS[severity],
    titleStyle: painted(TYPE.cellStrong, SEVERITY_PAINTS[severity]),
    mark: { widthPt: MARK_WIDTH, draw: (x, y) => drawSeverityMark(pen, severity, x, y) },
    text,
    ...(would === undefined ? {} : { small: would }),
  };
}

function placeAndPurpose({ place, purpose }: Plan): string {
  const where = place === undefined ? "Place not given" : PLACE_NAMES[place];
  const why = purpose === undefined ? "purpose not given" : PURPOSE_NAMES[purpose].toLowerCase();
  const ask =
    place === undefined || purpose === undefined
      ? " The rules for cords depend on both: state them in the job before the shade is made."
      : "";
  return `${where}; ${why}.${ask}`;
}
