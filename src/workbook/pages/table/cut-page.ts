import { LAYER_NAMES, type Trim } from "../../../shade-plan/index.ts";
import { clothLengthText, nearestMark } from "../../../units/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { figureBeside } from "../../typeset/figure.ts";
import { openPage } from "../../typeset/heading.ts";
import { paragraph } from "../../typeset/paragraph.ts";
import { table } from "../../typeset/table.ts";
import type { CellLike, TableSpec } from "../../typeset/table-spec.ts";
import { tickCell } from "../../typeset/tick-cell.ts";

const LEAST_FIGURE_PT = 170;
const MOST_FIGURE_PT = 340;
const AROUND_FIGURE_PT = 60;
const ROW_PT = 27;

/** What comes off the bolt and off the saw, with its sizes in large figures. */
export function cutPage(context: ShadeContext): void {
  const { book } = context;
  openPage(book, {
    title: "Cut",
    lead: "Cut sizes, hems and seams included. Square the cloth on a drawn thread first.",
  });
  const rows = pieceRows(context);
  const height = book.room - (rows.length + 2) * ROW_PT - AROUND_FIGURE_PT;
  const split = { figureColumns: 6, maxHeight: Math.max(LEAST_FIGURE_PT, Math.min(MOST_FIGURE_PT, height)) };
  figureBeside(book, context.sheet("cutting"), split, (right) => {
    for (const one of [toSaw(context), toBuy(context)]) table(book, { ...one, ...right });
  });
  repeats(context);
  table(book, {
    title: "Pieces of cloth to cut",
    columns: [
      { title: "Piece", share: 2.3 },
      { title: "Width", share: 1.3, align: "measure" },
      { title: "Length", share: 1.3, align: "measure" },
      { title: "From", share: 2.4 },
    ],
    rows,
  });
}

const GRAIN: Record<Trim["grain"], string> = {
  warp: "; length along the bolt",
  weft: "; length across the bolt",
  free: "",
};

function pieceRows({ book, shade, length }: ShadeContext): CellLike[][] {
  const { layers, trims } = shade.cloth;
  return [
    ...layers.flatMap((layer) =>
      layer.panels.map((panel): CellLike[] => [
        tickCell(book, panel.label),
        { text: length(panel.widthMm), strong: true },
        { text: length(panel.lengthMm), strong: true },
        layer.clothName,
      ]),
    ),
    ...trims.map((trim): CellLike[] => [
      tickCell(book, trim.count > 1 ? `${trim.count} × ${trim.label}` : trim.label),
      { text: length(trim.widthMm), strong: true },
      { text: length(trim.lengthMm), strong: true },
      `${trim.clothName}${GRAIN[trim.grain]}`,
    ]),
  ];
}

/** A pattern decides where the first cut comes. */
function repeats({ book, shade, plan, length }: ShadeContext): void {
  for (const layer of shade.cloth.layers) {
    if (layer.repeatMm === undefined) continue;
    const match = layer.match === "half-drop" ? "half-drop" : "straight";
    paragraph(
      book,
      `${LAYER_NAMES[layer.layer]}: repeat ${length(layer.repeatMm)}, ${match} match. First cut ${nearestMark(layer.startWasteMm, plan.units.ruler) > 0 ? `${length(layer.startWasteMm)} after` : "where"} a repeat begins; each drop takes ${length(layer.repeatLengthMm)}.`,
    );
  }
}

function toBuy({ shade, plan }: ShadeContext): TableSpec {
  const { layers, trimBolts } = shade.cloth;
  const row = (name: string, buyMm: number): CellLike[] => [
    name,
    { text: clothLengthText(buyMm, plan.units), strong: true },
  ];
  return {
    heading: "Cloth to buy",
    title: "Cloth to buy",
    columns: [
      { title: "", share: 1.7 },
      { title: "", share: 1, align: "measure" },
    ],
    rows: [
      ...layers.map(({ layer, clothName, buyMm }) => row(`${LAYER_NAMES[layer]}: ${clothName}`, buyMm)),
      ...trimBolts.flatMap(({ buyMm, clothName }) => (buyMm === undefined ? [] : [row(clothName, buyMm)])),
    ],
  };
}

function toSaw({ book, shade, length }: ShadeContext): TableSpec {
  const { board, cloth, lift } = shade;
  const row = (name: string, lengthMm: number): CellLike[] => [
    tickCell(book, name),
    { text: length(lengthMm), strong: true },
  ];
  const ribs = cloth.ribLines.length;
  return {
    heading: "To saw",
    title: "Board, bar, ribs and tube to saw",
    columns: [
      { title: "", share: 1.7 },
      { title: "", share: 1, align: "measure" },
    ],
    rows: [
      row(`Board: ${board.sectionName}`, board.cutMm),
      ...(board.barLengthMm === undefined ? [] : [row(`Bar: ${board.barName ?? ""}`, board.barLengthMm)]),
      ...(cloth.ribLengthMm === undefined || ribs === 0
        ? []
        : [row(ribs === 1 ? "Rib" : `${ribs} ribs, each`, cloth.ribLengthMm)]),
      ...(lift.takeUp !== "tube" ? [] : [row(`Tube: ${lift.tube.name}`, lift.tube.lengthMm)]),
    ],
  };
}
