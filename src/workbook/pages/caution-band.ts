import type { Caution } from "../../shade-plan/index.ts";
import type { Book } from "../typeset/book.ts";
import { setLines } from "../typeset/paragraph.ts";
import { drawSeverityMark, MARK_WIDTH } from "../typeset/severity-mark.ts";

const PAD = 8;
const AFTER = 14;

/** What cords do to children, of the cautions of a shade: it goes out on the first sheet of every set. */
export function childrenAndCords(cautions: readonly Caution[]): Caution | undefined {
  return cautions.find(({ id }) => id === "children-and-cords");
}

interface LaidBand {
  title: string;
  lines: string[];
  heightPt: number;
}

function layBand(book: Book, { title, text }: Caution): LaidBand {
  const { body, step } = book.look;
  const lines = book.lines(text, book.width - 2 * PAD, body);
  return { title, lines, heightPt: 2 * PAD + step.leadingPt + lines.length * body.leadingPt };
}

/** Height that the band takes of a page, pt; 0 without a caution. */
export function cautionBandHeight(book: Book, caution: Caution | undefined): number {
  return caution === undefined ? 0 : layBand(book, caution).heightPt + AFTER;
}

/** A caution in a frame across the page, with a mark, so that black ink is enough. */
export function cautionBand(book: Book, caution: Caution | undefined): void {
  if (caution === undefined) return;
  const { title, lines, heightPt } = layBand(book, caution);
  const { body, step } = book.look;
  book.need(heightPt);
  const { y, left } = book;
  book.tags.artifact(() => {
    book.pen.box(left, y, book.width, heightPt, { paint: "stop", widthPt: 1.2 });
    drawSeverityMark(book.pen, "stop", left + PAD, y + PAD + step.leadingPt / 2);
  });
  book.tags.mark("H4", () => setLines(book, [title], left + PAD + MARK_WIDTH, y + PAD, step));
  book.tags.mark("P", () => setLines(book, lines, left + PAD, y + PAD + step.leadingPt, body));
  book.y = y + heightPt + AFTER;
}
