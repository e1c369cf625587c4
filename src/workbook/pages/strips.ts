import type { ShadeContext } from "../shade-context.ts";
import { CHECK_BAR_ALT, drawCheckBar } from "../strips/check-bar.ts";
import { drawTestSquare, drawTile, type TilePosition } from "../strips/draw-tile.ts";
import { type PiecePlace, packPieces } from "../strips/pack-pieces.ts";
import { shadeStrips } from "../strips/shade-strips.ts";
import {
  OVER_A_PIECE_PT,
  OVERLAP_MM,
  stripPage,
  TEST_SQUARE_MM,
  tileLengthMm,
} from "../strips/strip-page.ts";
import { type Strip, type Tile, tileStrip } from "../strips/tile-strip.ts";
import type { Book } from "../typeset/book.ts";
import { openPage, section } from "../typeset/heading.ts";
import { LIST } from "../typeset/look.ts";
import { MARGIN_PT, pt } from "../typeset/paper.ts";
import { setLines } from "../typeset/paragraph.ts";
import { flowTable, layTable, table, tableHeight } from "../typeset/table.ts";
import type { CellLike, TableSpec } from "../typeset/table-spec.ts";
import { TYPE } from "../typeset/type-scale.ts";
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
    lead: "Strips as long as the shade, as wide, and as its board: lay them down and mark by them.",
  });
  cautionBand(book, childrenAndCords(context.shade.cautions));
  const tileMm = tileLengthMm(stripPage(book), plan.units.system === "imperial");
  const strips = shadeStrips(context).map((strip) => speltStrip(strip, book));
  const pieces = strips.flatMap((strip) =>
    tileStrip(strip, tileMm, OVERLAP_MM).map((tile) => ({ strip, tile })),
  );
  howTo(book);
  listOfStrips(context, strips, pieces);
  const page = stripPage(book);
  const places = packPieces(pieces, ({ tile }) => pt(tile.printedToMm - tile.printedFromMm), {
    columnHeight: page.bottom - page.top,
    columns: page.columnsX.length,
    between: OVER_A_PIECE_PT,
  });
  const sheets = Math.max(0, ...places.map(({ sheet }) => sheet + 1));
  for (let i = 0; i < sheets; i++) {
    book.turnPage();
    setStripPage(
      context,
      places.filter(({ sheet }) => sheet === i),
    );
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
    "Measure the square beside this: each side is 100 mm, the sloping line in it 4 in. Then the bar on every page: 100 mm on one side, 4 in on the other. If it is not so, nothing on that page is true.",
  ],
  [
    "Cut and join",
    "Cut along the dashed edges. Lay each join on the same join of the next piece, so that the diamonds lie on each other, and glue.",
  ],
  [
    "Check",
    "Figures along the left edge count from the start of the strip. Measure all of it with the steel tape before you mark by it: paper and glue both give.",
  ],
] as const;

/** Between the words and the test square beside them, pt. */
const BESIDE_PT = 18;

/** What is done, with the test square beside it: once a print run, since every page after it has a bar. */
function howTo(book: Book): void {
  const side = pt(TEST_SQUARE_MM);
  section(book, "How to use them", side);
  const top = book.y;
  const width = book.width - side - BESIDE_PT;
  let y = top;
  for (const [word, words] of HOW_TO) {
    const lines = book.lines(words, width, TYPE.cell);
    const at = y;
    book.tags.mark("H4", () => setLines(book, [book.spell(word)], book.left, at, TYPE.cellStrong));
    book.tags.mark("P", () => setLines(book, lines, book.left, at + TYPE.cellStrong.leadingPt, TYPE.cell));
    y += TYPE.cellStrong.leadingPt + lines.length * TYPE.cell.leadingPt + 8;
  }
  book.tags.mark("Figure", () => drawTestSquare(book.pen, book.left + book.width - side, top), {
    alt: "Test square: each side measures 100 mm, the sloping line in it 4 in",
  });
  book.y = Math.max(y, top + side) + 8;
}

function listOfStrips(
  { book, length }: ShadeContext,
  strips: readonly Strip[],
  pieces: readonly Piece[],
): void {
  const spec: TableSpec = {
    title: "The strips and their pieces",
    heading: "The strips",
    whole: true,
    columns: [
      { title: "Strip", share: 0.55 },
      { title: "What it marks", share: 1.9 },
      { title: "Length", share: 1.1, align: "measure" },
      { title: "Pieces", share: 1 },
      { title: "How it is laid", share: 4.8 },
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
  };
  const laid = layTable(book, spec);
  // Five strips end under the square where their rows stand close.
  if (tableHeight(laid) <= book.room) flowTable(book, laid);
  else book.withLook({ ...book.look, cellPadPt: LIST.cellPadPt }, () => table(book, spec));
}

function setStripPage({ book, plan }: ShadeContext, places: readonly PiecePlace<Piece>[]): void {
  const page = stripPage(book);
  const [before] = book.lines(BEFORE_CUTTING, book.width, TYPE.cellStrong);
  book.tags.mark("P", () => setLines(book, [before ?? ""], book.left, book.top, TYPE.cellStrong));
  for (const { piece, column, up } of places) {
    const { strip, tile } = piece;
    const place: TilePosition = {
      x: page.columnsX[column] ?? MARGIN_PT,
      width: page.stripWidth,
      bottom: page.bottom - up,
    };
    book.tags.mark("Figure", () => drawTile(book.pen, strip, tile, place, plan.units), {
      alt: tileAlt(strip, tile),
    });
  }
  book.tags.mark("Figure", () => drawCheckBar(book.pen, page.barX, page.bottom), { alt: CHECK_BAR_ALT });
}

/** One line on each page. */
const BEFORE_CUTTING =
  "Measure the bar at the right: 100 mm, or 4 in. If it is not, print this page again at 100 %.";

function tileAlt(strip: Strip, tile: Tile): string {
  const marks = tile.marks.map(({ name, text }) => `${name} at ${text}`).join(", ");
  return `${strip.title}, piece ${tile.key}, ${tile.index} of ${tile.of}: ${marks || "no marks"}`;
}
