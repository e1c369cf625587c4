import {
  type Box,
  type Drawing,
  drawShadeTemplates,
  type Placed,
  type PlacedItem,
  place,
  shapesBox,
  speltDrawing,
} from "../../drawing/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { CHECK_BAR_ALT, drawLevelBar, LEVEL_BAR_MM } from "../strips/check-bar.ts";
import { OVERLAP_MM } from "../strips/strip-page.ts";
import { MOST_TILES, type SheetTile, type SheetTiles, tileSheet } from "../strips/tile-sheet.ts";
import { drawPlaced } from "../typeset/draw-placed.ts";
import { openPage, section } from "../typeset/heading.ts";
import { BOTTOM_PT, MARGIN_PT, mm, pt } from "../typeset/paper.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { onPage } from "../typeset/set-text.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";

const JOIN = { paint: "accent", widthPt: 0.8, dashPt: [7, 2, 1.5, 2] } as const;
/** Words keep so far from the edge of a page, mm. */
const EDGE_MM = 1;
/** Over a page of a template: its name and the check bar. */
const OVER_MM = LEVEL_BAR_MM + 3;
const EDGE = { paint: "chalk", widthPt: 0.4 } as const;
const AFTER_PT = 8;

interface Template {
  drawing: Drawing;
  placed: Placed;
  tiled: SheetTiles;
}

/** Templates at full size, cut into pages that are glued together: print, measure, cut, join. */
export function templatesPages(context: ShadeContext): void {
  const { book, plan, shade } = context;
  openPage(book, {
    title: "Templates, full size",
    lead: "Shapes that no tape measure gives, at full size: print, measure the bar, join the pages, cut by them.",
  });
  const page = {
    widthMm: mm(book.paper.widthPt - 2 * MARGIN_PT),
    heightMm: mm(book.paper.heightPt - BOTTOM_PT - book.top) - OVER_MM,
  };
  const templates = drawShadeTemplates(plan, shade).map((asDrawn): Template => {
    const drawing = speltDrawing(asDrawn, book.spell);
    const placed = place(drawing, { scale: 1 });
    const boxes = placed.items.flatMap(boxOf);
    const isDrawn = (tile: Omit<SheetTile, "key">) => boxes.some((box) => touches(box, tile));
    return { drawing, placed, tiled: tileSheet(placed, page, OVERLAP_MM, isDrawn) };
  });
  listOfTemplates(context, templates);
  for (const template of templates) setTemplate(context, template);
}

function listOfTemplates({ book }: ShadeContext, templates: readonly Template[]): void {
  paragraph(
    book,
    "Print at 100 %, “actual size”, never “fit to page”. Measure the bar on each page: 100 mm, or 4 in. Lay each page’s joins on those of its neighbours, so that the dashed lines meet, and glue.",
  );
  section(book, "The templates", 90);
  table(book, {
    title: "Templates and their pages",
    columns: [
      { title: "Template", share: 1.2 },
      { title: "Pages", share: 0.8 },
      { title: "How it is used", share: 4 },
    ],
    rows: templates.map(({ drawing, tiled }): CellLike[] => [
      { text: drawing.title.replace("Template: ", ""), strong: true },
      tiled.tiles.length > MOST_TILES
        ? "too large for pages: take the DXF"
        : `${tiled.tiles.length}, ${tiled.rows} × ${tiled.columns}`,
      drawing.caption,
    ]),
  });
}

/** What a page must hold of an item: all of a shape; of words, the place that they stand at. */
function boxOf(item: PlacedItem): Box[] {
  if (item.kind === "text") {
    const [x, y] = item.at;
    return [{ left: x, top: y, right: x, bottom: y }];
  }
  const box = shapesBox([item]);
  return box === undefined ? [] : [box];
}

/** Words stand whole on a page that has their anchor, moved in where they would run over its edge. */
function wordsWithin(item: PlacedItem, tile: SheetTile): PlacedItem[] {
  if (item.kind !== "text") return [item];
  const [x, y] = item.at;
  if (x < tile.fromXMm || x > tile.toXMm || y < tile.fromYMm || y > tile.toYMm) return [];
  if (item.angleDeg !== 0) return [item];
  const share = item.anchor === "start" ? 0 : item.anchor === "middle" ? 0.5 : 1;
  const from = x - share * item.widthMm;
  const shift =
    Math.max(0, tile.fromXMm + EDGE_MM - from) - Math.max(0, from + item.widthMm - tile.toXMm + EDGE_MM);
  return [{ ...item, at: [x + shift, y] }];
}

function touches({ left, top, right, bottom }: Box, tile: Omit<SheetTile, "key">): boolean {
  return right >= tile.fromXMm && left <= tile.toXMm && bottom >= tile.fromYMm && top <= tile.toYMm;
}

function setTemplate({ book }: ShadeContext, { drawing, placed, tiled }: Template): void {
  if (tiled.tiles.length > MOST_TILES) return;
  const { pen } = book;
  for (const tile of tiled.tiles) {
    const [left, width, height] = [MARGIN_PT, pt(tile.toXMm - tile.fromXMm), pt(tile.toYMm - tile.fromYMm)];
    // Low ones stand over each other; one as high as a page has it to itself.
    book.need(pt(OVER_MM) + height);
    const top = book.y + pt(OVER_MM);
    book.tags.mark(
      "Figure",
      () => {
        pen.doc.addContent(`q ${onPage(left)} ${onPage(top)} ${onPage(width)} ${onPage(height)} re W n`);
        const onTile = { ...placed, items: placed.items.flatMap((item) => wordsWithin(item, tile)) };
        drawPlaced(pen, onTile, left - pt(tile.fromXMm), top - pt(tile.fromYMm));
        pen.doc.addContent("Q");
        pen.box(left, top, width, height, EDGE);
        const at = (xMm: number, yMm: number): Spot => [
          left + pt(xMm - tile.fromXMm),
          top + pt(yMm - tile.fromYMm),
        ];
        for (const [a, b] of joins(tile, tiled, at)) pen.line(a[0], a[1], b[0], b[1], JOIN);
        pen.text(
          `${drawing.title.replace("Template: ", "")}, ${tile.key} of ${tiled.rows} × ${tiled.columns}`,
          left,
          top - 4,
          painted(TYPE.label, "ink"),
        );
      },
      { alt: `${drawing.title}, page ${tile.key} of ${tiled.rows} by ${tiled.columns} at full size` },
    );
    const right = book.paper.widthPt - MARGIN_PT;
    book.tags.mark("Figure", () => drawLevelBar(pen, right, top - 4), { alt: CHECK_BAR_ALT });
    book.y = top + height + AFTER_PT;
  }
}

type Spot = readonly [x: number, y: number];

/** Middle of each overlap with a neighbour: there both pages carry the same line. */
function joins(
  tile: SheetTile,
  { columns, rows }: SheetTiles,
  at: (xMm: number, yMm: number) => Spot,
): (readonly [Spot, Spot])[] {
  const half = OVERLAP_MM / 2;
  const upright = (x: number): readonly [Spot, Spot] => [at(x, tile.fromYMm), at(x, tile.toYMm)];
  const across = (y: number): readonly [Spot, Spot] => [at(tile.fromXMm, y), at(tile.toXMm, y)];
  return [
    ...(tile.column > 0 ? [upright(tile.fromXMm + half)] : []),
    ...(tile.column < columns - 1 ? [upright(tile.toXMm - half)] : []),
    ...(tile.row > 0 ? [across(tile.fromYMm + half)] : []),
    ...(tile.row < rows - 1 ? [across(tile.toYMm - half)] : []),
  ];
}
