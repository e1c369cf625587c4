import {
  breakWords,
  type Drawing,
  type Fit,
  type Placed,
  type Primitive,
  place,
  speltDrawing,
  textWidthEm,
} from "../../drawing/index.ts";
import type { Book } from "./book.ts";
import { drawPlaced } from "./draw-placed.ts";
import { section } from "./heading.ts";
import { columns, mm, pt, type Span } from "./paper.ts";
import { setLines } from "./paragraph.ts";

const CAPTION_GAP = 6;
/** Under a drawing in the flow of a page, pt. */
export const AFTER_FIGURE_PT = 16;
/** Most of the width that one line of words in a drawing may take. */
const WORDS_SHARE = 0.75;
/** From one line of words in a drawing to the next, in ems. */
const LINE_EM = 1.15;
/** Of a text in two lines, what the longer one has at the most. */
const EVEN_SHARE = 0.6;

/** What a drawing shows, in words: its title, from where it is seen, and its facts. */
export function altText(drawing: Pick<Drawing, "title" | "caption" | "facts">): string {
  const facts = drawing.facts.map(({ label, text }) => `${label}: ${text}`);
  const parts = [drawing.title, drawing.caption.replace(/\.$/, ""), ...facts];
  return parts.filter((part) => part !== "").join(". ");
}

/** A drawing laid out for its place, with its caption broken into lines: its height is known before it is set. */
export interface LaidFigure {
  placed: Placed;
  /** Less than 1 where its words alone are larger than its place. */
  zoom: number;
  caption: string[];
  widthPt: number;
  drawnPt: number;
  heightPt: number;
}

/** From where it is seen, and the rest where there is room to read it; nothing where the page says it once for all. */
function captionText(book: Book, { title, caption }: Drawing, isCaptioned: boolean): string {
  if (!isCaptioned) return "";
  if (!book.look.measured) return /^.+?[.](?= |$)/u.exec(caption)?.[0] ?? title;
  return caption === "" ? title : `${title}. ${caption}`;
}

/** With names and numbers alone; of the rows every one is numbered, or every second or third. */
function withoutMeasures(drawing: Drawing, every: number): Drawing {
  return { ...drawing, primitives: drawing.primitives.flatMap((one) => withoutMeasure(one, every)) };
}

/** Rows whose numbers are higher than they lie apart have only every second one numbered, or every third. */
function numberedEvery(drawing: Drawing, scale: number, textScale: number): number {
  const rows = drawing.primitives.flatMap((one) =>
    one.kind === "dimension" && one.running !== undefined && /^row-\d+$/.test(one.part ?? "")
      ? [one.to[1]]
      : [],
  );
  const [first = 0] = rows;
  const apartMm = (Math.abs((rows.at(-1) ?? first) - first) / Math.max(1, rows.length - 1)) * scale;
  return rows.length < 2 ? 1 : Math.max(1, Math.ceil((NUMBER_PAPER_MM * textScale) / apartMm));
}

const NUMBER_PAPER_MM = 3.3;

/** Where nothing stands between the things of a drawing any more, they lie nearer to each other. */
function closer<T extends Primitive>(one: T): T {
  return one.bareShiftPaperMm === undefined ? one : { ...one, shiftPaperMm: one.bareShiftPaperMm };
}

/** A measure of a row or column leaves its number where its line would be; any other leaves nothing. */
function withoutMeasure(one: Primitive, every: number): Primitive[] {
  if (one.atDesk === true) return [];
  if (one.kind === "text" && one.overSize === true) return [{ ...closer(one), baseline: "middle" }];
  if (one.kind !== "dimension") return [closer(one)];
  const [, along, number] = /^(row|column)-(\d+)$/.exec(one.part ?? "") ?? [];
  if (number === undefined || one.running === undefined) return [];
  if (along === "row" && (Number(number) - 1) % every !== 0) return [];
  return [
    {
      kind: "text",
      role: "label",
      at: one.to,
      text: number,
      paperMm: NUMBER_PAPER_MM,
      anchor: "middle",
      strong: true,
      shiftPaperMm: along === "row" ? [-NUMBER_PAPER_MM, 0] : [0, NUMBER_PAPER_MM],
    },
  ];
}

/**
 * A name longer than the drawing may be wide would shrink the drawing to a speck. One that stands above a part is broken
 * into two lines; what is longer still, or stands elsewhere, is cut in the drawing: the tables beside it have it whole.
 */
function withShortWords(drawing: Drawing, widthMm: number, textScale: number): Drawing {
  const primitives = drawing.primitives.flatMap((one): Primitive[] => {
    if (one.kind !== "text") return [one];
    const roomEm = (widthMm * WORDS_SHARE) / (one.paperMm * textScale);
    if (textWidthEm(one.text) <= roomEm) return [one];
    if (one.strong !== true || one.roomMm !== undefined)
      return [{ ...one, text: shortened(one.text, roomEm) }];
    const [first = "", ...rest] = inTwoLines(one.text, roomEm);
    const [dx, dy] = one.shiftPaperMm ?? [0, 0];
    const up = one.paperMm * LINE_EM;
    return [
      { ...one, text: first, shiftPaperMm: [dx, dy - up] },
      { ...one, text: shortened(rest.join(" "), roomEm) },
    ];
  });
  return { ...drawing, primitives };
}

/** Nearly even lines, so that none is left with a unit alone. */
function inTwoLines(text: string, roomEm: number): string[] {
  const even = breakWords(text, Math.min(roomEm, EVEN_SHARE * textWidthEm(text)));
  return even.length === 2 ? even : breakWords(text, roomEm);
}

function shortened(text: string, roomEm: number): string {
  if (textWidthEm(text) <= roomEm) return text;
  let letters = Array.from(text);
  while (letters.length > 1 && textWidthEm(`${letters.join("")}…`) > roomEm) letters = letters.slice(0, -1);
  return `${letters.join("").trimEnd()}…`;
}

/** Of the height asked for, what a drawing gives up at most so that it and its caption end on this page. */
const GIVES_UP = 0.3;

function captionPt(lines: readonly string[], { look }: Book): number {
  return lines.length === 0 ? 0 : CAPTION_GAP + lines.length * look.caption.leadingPt;
}

/** The height asked for, or a little less where a long caption would else push the drawing off the page. */
function heightWithCaption(
  book: Book,
  drawing: Drawing,
  { widthPt, maxHeightPt, isCaptioned = true }: Place,
): number {
  const caption = captionLines(book, drawing, widthPt, isCaptioned);
  const roomPt = book.room - captionPt(caption, book) - 1;
  return roomPt < maxHeightPt * (1 - GIVES_UP) ? maxHeightPt : Math.min(maxHeightPt, roomPt);
}

function captionLines(book: Book, drawing: Drawing, widthPt: number, isCaptioned: boolean): string[] {
  const text = captionText(book, drawing, isCaptioned);
  return text === "" ? [] : book.lines(text, widthPt, book.look.caption);
}

/** What a drawing may take, its caption aside. */
interface Place {
  widthPt: number;
  maxHeightPt: number;
  /** Said under it from where it is seen; else the page says so. */
  isCaptioned?: boolean;
}

export function layFigure(
  book: Book,
  drawing: Drawing,
  widthPt: number,
  maxHeightPt: number,
  isCaptioned = true,
): LaidFigure {
  const bounds = { maxWidthMm: mm(widthPt), maxHeightMm: mm(maxHeightPt) };
  return laid(book, speltDrawing(drawing, book.spell), bounds, { widthPt, maxHeightPt, isCaptioned });
}

/** One that is made to be cut out: as large as it is, with all of its words, whatever its place. */
export function layFullSize(book: Book, asDrawn: Drawing): LaidFigure {
  const drawing = speltDrawing(asDrawn, book.spell);
  const placed = place(drawing, { scale: 1 });
  return captioned(book, drawing, placed, 1, pt(placed.widthMm), true);
}

/** Things that have less than this share of their place in both directions are a speck beside their measures. */
const SPECK_SHARE = 0.35;
/** Measures are given up for a drawing that grows by at least this factor. */
const WORTH_IT = 1.5;

function laid(book: Book, drawing: Drawing, fit: Fit, room: Place): LaidFigure {
  const { widthPt, maxHeightPt, isCaptioned = true } = room;
  const textScale = book.look.drawingText;
  const laidOut = (looked: Drawing) =>
    place(withShortWords(looked, mm(widthPt), textScale), fit, { textScale });
  const bare = () => {
    const all = laidOut(withoutMeasures(drawing, 1));
    const every = numberedEvery(drawing, all.scale, textScale);
    return every === 1 ? all : laidOut(withoutMeasures(drawing, every));
  };
  const placed = book.look.measured ? laidOut(drawing) : bare();
  const zoomOf = ({ widthMm, heightMm }: Placed) =>
    Math.min(1, widthPt / pt(widthMm), maxHeightPt / pt(heightMm));
  const larger = (measured: Placed, other: Placed) =>
    other.scale * zoomOf(other) > WORTH_IT * measured.scale * zoomOf(measured) ? other : measured;
  const isTight = book.look.measured && (zoomOf(placed) < 1 || isSpeck(placed, fit));
  const chosen = isTight ? larger(placed, bare()) : placed;
  return captioned(book, drawing, chosen, zoomOf(chosen), widthPt, isCaptioned);
}

function isSpeck({ thingsMm: [width, height] }: Placed, fit: Fit): boolean {
  if ("scale" in fit) return false;
  return width < SPECK_SHARE * fit.maxWidthMm && height < SPECK_SHARE * fit.maxHeightMm;
}

function captioned(
  book: Book,
  drawing: Drawing,
  placed: Placed,
  zoom: number,
  captionWidthPt: number,
  isCaptioned: boolean,
): LaidFigure {
  const caption = captionLines(book, drawing, captionWidthPt, isCaptioned);
  const drawnPt = pt(placed.heightMm) * zoom;
  return {
    placed,
    zoom,
    caption,
    widthPt: pt(placed.widthMm) * zoom,
    drawnPt,
    heightPt: drawnPt + captionPt(caption, book),
  };
}

/** Sets a laid figure with its top left corner at (x, y), its caption under it. */
export function setFigure(book: Book, figure: LaidFigure, x: number, y: number): void {
  const { placed, zoom, drawnPt } = figure;
  book.tags.mark("Figure", () => drawPlaced(book.pen, placed, x, y, zoom), {
    alt: altText(placed),
    bbox: [x, y, x + figure.widthPt, y + drawnPt],
  });
  if (figure.caption.length === 0) return;
  const captionY = y + drawnPt + CAPTION_GAP;
  book.tags.mark("Caption", () => setLines(book, figure.caption, x, captionY, book.look.caption));
}

/** A drawing in the flow of the page. */
export function figure(book: Book, drawing: Drawing, maxHeight: number, isCaptioned = true): void {
  const place = { widthPt: book.width, maxHeightPt: maxHeight, isCaptioned };
  const height = heightWithCaption(book, drawing, place);
  const one = layFigure(book, drawing, book.width, height, isCaptioned);
  book.need(one.heightPt);
  setFigure(book, one, book.left, book.y);
  book.y += one.heightPt + AFTER_FIGURE_PT;
}

interface RowLook {
  /** Over the drawings; it never parts from them. */
  heading?: string;
  /** Each as large as its place allows; at one scale unless told, so that they can be compared. */
  ownScales?: boolean;
}

/** Drawings side by side on one level. */
export function figureRow(
  book: Book,
  drawings: readonly Drawing[],
  maxHeight: number,
  { heading, ownScales = false }: RowLook = {},
): void {
  const share = 12 / drawings.length;
  const { width } = columns(book.paper, 0, share);
  const alone = drawings.map((drawing) => layFigure(book, drawing, width, maxHeight));
  const scale = Math.min(...alone.map(({ placed }) => placed.scale));
  const row = ownScales
    ? alone
    : drawings.map((drawing) =>
        laid(book, speltDrawing(drawing, book.spell), { scale }, { widthPt: width, maxHeightPt: maxHeight }),
      );
  const origin = Math.max(...row.map(originPt));
  const height = Math.max(...row.map((one) => origin - originPt(one) + one.heightPt));
  if (heading === undefined) book.need(height);
  else section(book, heading, height);
  const top = book.y;
  row.forEach((one, i) => {
    setFigure(book, one, columns(book.paper, i * share, share).x, top + origin - originPt(one));
  });
  book.y = top + height + AFTER_FIGURE_PT;
}

/** How far under its top edge the model’s own origin lies, pt. */
function originPt({ placed, zoom }: LaidFigure): number {
  return pt(placed.originMm[1]) * zoom;
}

export interface Split {
  figureColumns: number;
  maxHeight: number;
  isCaptioned?: boolean;
}

/**
 * A drawing at the left and something else at its right, from the same height.
 * The page goes on under the longer of the two.
 */
export function figureBeside(book: Book, drawing: Drawing, split: Split, body: (right: Span) => void): void {
  const { figureColumns, maxHeight, isCaptioned = true } = split;
  const left = columns(book.paper, 0, figureColumns);
  const place = { widthPt: left.width, maxHeightPt: maxHeight, isCaptioned };
  const one = layFigure(book, drawing, left.width, heightWithCaption(book, drawing, place), isCaptioned);
  book.need(one.heightPt);
  const top = book.y;
  const page = book.pageCount;
  setFigure(book, one, left.x, top);
  body(columns(book.paper, figureColumns, 12 - figureColumns));
  if (book.pageCount === page) book.y = Math.max(book.y, top + one.heightPt + AFTER_FIGURE_PT);
}
