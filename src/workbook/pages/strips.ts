import type { ShadeContext } from "../shade-context.ts";
import { drawTestSquare, drawTile, type TilePosition } from "../strips/draw-tile.ts";
import { shadeStrips } from "../strips/shade-strips.ts";
import {
  OVERLAP_MM,
  STRIPS_ON_A_PAGE,
  type StripPage,
  stripPage,
  TEST_SQUARE_MM,
  tileLengthMm,
} from "../strips/strip-page.ts";
import { type Strip, type Tile, tileStrip } from "../strips/tile-strip.ts";
import type { Book } from "../typeset/book.ts";
import { openPage, section } from "../typeset/heading.ts";
import { notedList } from "../typeset/noted-list.ts";
import { MARGIN_PT, pt } from "../typeset/paper.ts";
import { paragraph, setLines } from "../typeset/paragraph.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { type TextStyle, TYPE } from "../typeset/type-scale.ts";
import { cautionBand, childrenAndCords } from "./caution-band.ts";

interface Piece {
  strip: Strip;
  tile: Tile;
}

/** Full-size strips, cut into pieces over pages: print, measure the square, cut out, join, mark. */
export function stripsPages(context: ShadeContext): void {
  const { book, plan } = context;
  openPage(book, {
    title: "Marking strips, full size",
    lead: "Strips of paper as long as the shade is wide, as it is long, and as its board: lay them down and mark by them.",
  });
  cautionBand(book, childrenAndCords(context.shade.cautions));
  const tileMm = tileLengthMm(stripPage(book), plan.units.system === "imperial");
  const strips = shadeStrips(context).map((strip) => speltStrip(strip, book));
  const pieces = strips.flatMap((strip) =>
    tileStrip(strip, tileMm, OVERLAP_MM).map((tile) => ({ strip, tile })),
  );
  howTo(book);
  listOfStrips(context, strips, pieces);
  for (let i = 0; i < pieces.length; i += STRIPS_ON_A_PAGE) {
    book.turnPage();
    setStripPage(context, pieces.slice(i, i + STRIPS_ON_A_PAGE));
  }
}

function speltStrip(strip: Strip, { spell }: Book): Strip {
  const marks = strip.marks.map((mark) => ({ ...mark, name: spell(mark.name) }));
  return { ...strip, name: spell(strip.name), title: spell(strip.title), marks };
}

const HOW_TO = [
  ["Print", "Print these pages at 100 %, “actual size”, never “fit to page”."],
  [
    "Measure",
    "Measure the square on every page: each side is 100 mm, the sloping line in it 4 in. If it is not so, nothing on that page is true.",
  ],
  [
    "Cut and join",
    "Cut along the dashed edges. Lay each join on the same join of the next piece, so that the diamonds lie on each other, and glue.",
  ],
  ["Check", "Measure the whole strip with the steel tape before you mark by it: paper and glue both give."],
] as const;

function howTo(book: Book): void {
  section(book, "How to use them", 100);
  notedList(
    book,
    HOW_TO.map(([word, words]) => ({ word, text: [{ words, style: TYPE.body }] })),
  );
}

function listOfStrips(
  { book, length }: ShadeContext,
  strips: readonly Strip[],
  pieces: readonly Piece[],
): void {
  table(book, {
    title: "The strips and their pieces",
    heading: "The strips",
    columns: [
      { title: "Strip", share: 0.6 },
      { title: "What it marks", share: 2.2 },
      { title: "Length", share: 1.2, align: "measure" },
      { title: "Pieces", share: 1.1 },
      { title: "How it is laid", share: 4 },
    ],
    rows: strips.map((strip): CellLike[] => {
      const keys = pieces.filter((piece) => piece.strip === strip).map(({ tile }) => tile.key);
      const last = keys.at(-1) ?? "";
      return [
        { text: strip.key, strong: true },
        strip.title,
        length(strip.lengthMm),
        keys.length === 1 ? last : `${keys[0]} to ${last}`,
        strip.use,
      ];
    }),
    after: 8,
  });
  paragraph(
    book,
    "Figures along the left edge of each piece are inches or centimetres from the start of its strip.",
    {
      style: TYPE.small,
    },
  );
}

function setStripPage({ book, plan }: ShadeContext, pieces: readonly Piece[]): void {
  const page = stripPage(book);
  pieces.forEach(({ strip, tile }, i) => {
    const place: TilePosition = {
      x: page.stripsX[i] ?? MARGIN_PT,
      width: page.stripWidth,
      bottom: page.bottom,
    };
    book.tags.mark("Figure", () => drawTile(book.pen, strip, tile, place, plan.units), {
      alt: tileAlt(strip, tile),
    });
  });
  setAside(book, pieces, page);
}

function tileAlt(strip: Strip, tile: Tile): string {
  const marks = tile.marks.map(({ name, text }) => `${name} at ${text}`).join(", ");
  return `${strip.title}, piece ${tile.key}, ${tile.index} of ${tile.of}: ${marks || "no marks"}`;
}

function setAside(book: Book, pieces: readonly Piece[], { asideX: x }: StripPage): void {
  const width = pt(TEST_SQUARE_MM);
  const { top } = book;
  book.tags.mark("Figure", () => drawTestSquare(book.pen, x, top), {
    alt: "Test square: each side measures 100 mm, the sloping line in it 4 in",
  });
  let y = top + width + 14;
  const say = (text: string, style: TextStyle) => {
    const lines = book.lines(text, width, style);
    const at = y;
    book.tags.mark("P", () => setLines(book, lines, x, at, style));
    y += lines.length * style.leadingPt + 6;
  };
  say(
    "If a side of the square is not 100 mm, do not use this page: print it again at 100 %.",
    TYPE.cellStrong,
  );
  for (const strip of new Set(pieces.map((piece) => piece.strip))) {
    say(`${strip.key}  ${strip.title}`, TYPE.cellStrong);
    say(strip.use, TYPE.cell);
  }
}
