import { LAYER_NAMES, type Trim } from "../../../shade-plan/index.ts";
import { clothLengthText, nearestMark } from "../../../units/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { figureBeside } from "../../typeset/figure.ts";
import { openPage } from "../../typeset/heading.ts";
import { paragraph, paragraphsHeight } from "../../typeset/paragraph.ts";
import { flowTable, layTable, table, tableHeight } from "../../typeset/table.ts";
import type { CellLike, TableSpec } from "../../typeset/table-spec.ts";
import { tickCell } from "../../typeset/tick-cell.ts";

const LEAST_FIGURE_PT = 170;
const MOST_FIGURE_PT = 340;
/** The caption under the cloths, and the white around all of it. */
const AROUND_FIGURE_PT = 90;
const AFTER_PT = 8;

/** What comes off the bolt and off the saw, with its sizes in large figures. */
export function cutPage(context: ShadeContext): void {
  const { book } = context;
  openPage(book, {
    title: "Cut",
    lead: "Cut sizes, hems and seams included. Square the cloth on a drawn thread first.",
  });
  const pieces = layTable(book, piecesTable(context));
  const said = repeats(context);
  const underPt = paragraphsHeight(book, said, book.width, AFTER_PT) + tableHeight(pieces) + AROUND_FIGURE_PT;
  const height = book.room - underPt;
  const split = { figureColumns: 6, maxHeight: Math.max(LEAST_FIGURE_PT, Math.min(MOST_FIGURE_PT, height)) };
  figureBeside(book, context.sheet("cutting"), split, (right) => {
    for (const one of [toSaw(context), toBuy(context)])
      if (one.rows.length > 0) table(book, { ...one, ...right });
  });
  for (const text of said) paragraph(book, text, { after: AFTER_PT });
  flowTable(book, pieces);
}

function piecesTable(context: ShadeContext): TableSpec {
  return {
    title: "Pieces of cloth to cut",
    columns: [
      { title: "Piece", share: 2.3 },
      { title: "Width", share: 1.3, align: "measure" },
      { title: "Length", share: 1.3, align: "measure" },
      { title: "From", share: 2.4 },
    ],
    rows: pieceRows(context),
  };
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
function repeats({ shade, plan, length }: ShadeContext): string[] {
  return shade.cloth.layers.flatMap((layer) => {
    if (layer.repeatMm === undefined) return [];
    const match = layer.match === "half-drop" ? "half-drop" : "straight";
    return [
      `${LAYER_NAMES[layer.layer]}: repeat ${length(layer.repeatMm)}, ${match} match. First cut ${nearestMark(layer.startWasteMm, plan.units.ruler) > 0 ? `${length(layer.startWasteMm)} after` : "where"} a repeat begins; each drop takes ${length(layer.repeatLengthMm)}.`,
    ];
  });
}

/** As the shopping list has it; where that is for several shades, what this one would take. */
function toBuy({ shade, plan }: ShadeContext): TableSpec {
  const { layers, trimBolts } = shade.cloth;
  const isOnly = plan.shades.length === 1;
  const row = (name: string, buyMm: number): CellLike[] => [
    name,
    { text: clothLengthText(buyMm, plan.units), strong: true },
  ];
  return {
    heading: isOnly ? "Cloth to buy" : "Cloth, for this shade alone",
    title: "Cloth to buy",
    columns: [
      { title: "", share: 1.7 },
      { title: "", share: 1, align: "measure" },
    ],
    rows: isOnly
      ? plan.cost.shopping
          .filter(({ group }) => group === "cloth")
          .map(({ label, buyText }): CellLike[] => [label, { text: buyText, strong: true }])
      : [
          ...layers.map(({ layer, clothName, buyMm }) => row(`${LAYER_NAMES[layer]}: ${clothName}`, buyMm)),
          ...trimBolts.flatMap(({ buyMm, clothName }) =>
            buyMm === undefined ? [] : [row(clothName, buyMm)],
          ),
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
