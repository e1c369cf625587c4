import { LAYER_NAMES, type LayerCut, type Trim } from "../../shade-plan/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { figure, figureBeside, isNarrow, type Split } from "../figure.ts";
import { type ChapterHead, openChapter, section } from "../heading.ts";
import { paragraph } from "../paragraph.ts";
import type { ShadeContext } from "../shade-context.ts";
import { table, tablesBeside } from "../table.ts";
import type { CellLike, Table } from "../table-spec.ts";
import { capital } from "./sentence.ts";

/** Every piece on the cloth, its size, and how the cut size is made up. */
export function cuttingPage(context: ShadeContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, {
    ...head,
    lead: "Square the cloth on a drawn thread first. Sizes are cut sizes, hems and seams included.",
  });
  layout(context);
  pieces(context);
  trims(context);
  buy(context);
  repeats(context);
  ribs(context);
}

const LAYOUT_PT = 300;
/** Height for each cloth where the drawing stands beside the tables. */
const EACH_PT = 165;

/** The cloth as it lies, and how the cut sizes come about: side by side where the drawing leaves room. */
function layout(context: ShadeContext): void {
  const { book, shade, sheet } = context;
  const drawing = sheet("cutting");
  const specs = shade.cloth.layers.map((layer) => makeUp(context, layer));
  if (isNarrow(book, drawing, LAYOUT_PT)) {
    const { layers, trimBolts } = shade.cloth;
    const cloths = layers.length + trimBolts.filter(({ beside }) => beside === undefined).length;
    const split: Split = {
      figureColumns: 6,
      maxHeight: Math.min(book.room - 30, EACH_PT * Math.max(2, cloths)),
    };
    figureBeside(book, drawing, split, (right) => {
      for (const spec of specs) table(book, { ...spec, ...right });
    });
    return;
  }
  figure(book, drawing, LAYOUT_PT);
  for (let i = 0; i < specs.length; i += 2)
    tablesBeside(book, specs.slice(i, i + 1), specs.slice(i + 1, i + 2));
}

function pieces({ book, shade, length }: ShadeContext): void {
  const rows = shade.cloth.layers.flatMap((layer) =>
    layer.panels.map((panel): CellLike[] => [
      { text: panel.label, strong: true },
      layer.clothName,
      { text: length(panel.widthMm), strong: true },
      { text: length(panel.lengthMm), strong: true },
      panel.full ? "full width" : "",
    ]),
  );
  table(book, {
    heading: "Pieces to cut",
    title: "Pieces to cut",
    columns: [
      { title: "Piece", share: 2.4 },
      { title: "From", share: 2.6 },
      { title: "Width", share: 1.4, align: "measure" },
      { title: "Length", share: 1.4, align: "measure" },
      { title: "", share: 1 },
    ],
    rows,
  });
}

const GRAIN: Record<Trim["grain"], string> = {
  warp: "length along the bolt",
  weft: "length across the bolt",
  free: "either way",
};

/** Bands, covers, strips: whatever is cut beside the panels. */
function trims({ book, shade, length }: ShadeContext): void {
  if (shade.cloth.trims.length === 0) return;
  table(book, {
    heading: "Pieces beside the layers",
    title: "Bands, covers and strips to cut",
    columns: [
      { title: "Piece", share: 2.4 },
      { title: "From", share: 2.2 },
      { title: "Count", share: 0.7 },
      { title: "Width", share: 1.3, align: "measure" },
      { title: "Length", share: 1.3, align: "measure" },
      { title: "Grain", share: 1.9 },
    ],
    rows: shade.cloth.trims.map((trim): CellLike[] => [
      { text: trim.label, strong: true },
      trim.clothName,
      String(trim.count),
      { text: length(trim.widthMm), strong: true },
      { text: length(trim.lengthMm), strong: true },
      GRAIN[trim.grain],
    ]),
  });
}

function buy({ book, shade, plan, length }: ShadeContext): void {
  table(book, {
    heading: "Cloth to buy",
    title: "Cloth to buy",
    columns: [
      { title: "Layer", share: 1.3 },
      { title: "Cloth", share: 2.6 },
      { title: "Usable width", share: 1.3, align: "measure" },
      { title: "Widths", share: 0.8 },
      { title: "Off the bolt", share: 1.4, align: "measure" },
      { title: "To buy", share: 1.2, align: "measure" },
    ],
    rows: shade.cloth.layers
      .map((layer): CellLike[] => [
        { text: LAYER_NAMES[layer.layer], strong: true },
        layer.clothName,
        length(layer.usableWidthMm),
        String(layer.widths),
        length(layer.lengthMm),
        { text: clothLengthText(layer.buyMm, plan.units), strong: true },
      ])
      .concat(
        shade.cloth.trimBolts.flatMap((bolt): CellLike[][] =>
          bolt.buyMm === undefined
            ? []
            : [
                [
                  { text: "Pieces beside", strong: true },
                  bolt.clothName,
                  length(bolt.usableWidthMm),
                  "",
                  length(bolt.lengthMm),
                  { text: clothLengthText(bolt.buyMm, plan.units), strong: true },
                ],
              ],
        ),
      ),
  });
}

function makeUp({ length }: ShadeContext, layer: LayerCut): Table {
  const name = LAYER_NAMES[layer.layer].toLowerCase();
  const rows: CellLike[][] = layer.makeUp.map(({ label, widthMm, lengthMm }) => [
    capital(label),
    widthMm === 0 ? "" : length(widthMm),
    lengthMm === 0 ? "" : length(lengthMm),
  ]);
  rows.push(["Cut size", length(layer.cutWidthMm), length(layer.cutLengthMm)]);
  return {
    heading: `Cut size of the ${name}`,
    title: `How the cut size of the ${name} is made up`,
    columns: [
      { title: "Part", share: 2.2 },
      { title: "Width", share: 1.2, align: "measure" },
      { title: "Length", share: 1.2, align: "measure" },
    ],
    rows,
    sum: true,
  };
}

function repeats({ book, shade, length }: ShadeContext): void {
  for (const layer of shade.cloth.layers) {
    if (layer.repeatMm === undefined) continue;
    const match = layer.match === "half-drop" ? "half-drop" : "straight";
    paragraph(
      book,
      `${LAYER_NAMES[layer.layer]}: pattern repeat ${length(layer.repeatMm)}, ${match} match. The first cut comes ${length(layer.startWasteMm)} after a repeat begins; each drop takes ${length(layer.repeatLengthMm)} of the bolt, a whole number of repeats.`,
    );
  }
}

function ribs({ book, shade, length }: ShadeContext): void {
  const { ribLines, ribLengthMm } = shade.cloth;
  if (ribLines.length === 0) return;
  section(book, "Ribs", 40);
  const cut = ribLengthMm === undefined ? "" : `, each cut ${length(ribLengthMm)} long`;
  paragraph(book, `${ribLines.length} ribs${cut}.`);
}
