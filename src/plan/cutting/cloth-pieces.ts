import { acrossRepeatMm, firstColumnMm } from "../../cloth/index.ts";
import type { Piece } from "../../cutting/index.ts";
import type { Cloth } from "../../job/index.ts";
import {
  clothTaken,
  type Lay,
  type Layer,
  type LayerCut,
  type Panel,
  type Trim,
} from "../../shade-plan/index.ts";
import type { ShadePlan } from "../plan-types.ts";

/** Seen with the shade: joined to each other's colour, so cut from one dye lot. */
const SEEN: readonly Layer[] = ["face"];

/** Every piece that the shades take of each cloth: panels of all layers, and what is cut beside them. */
export function clothPieces(
  shades: readonly ShadePlan[],
  cloths: readonly Cloth[],
): ReadonlyMap<string, Piece[]> {
  const pieces = new Map(cloths.map(({ id }): [string, Piece[]] => [id, []]));
  // Each shade once: of thousands a plan is made again whenever it is read.
  for (const { shadeId, windowName, cloth, existing } of shades)
    for (const one of cloths)
      pieces.get(one.id)?.push(...piecesOf({ shadeId, windowName, cloth, existing }, one));
  return pieces;
}

type CutShade = Pick<ShadePlan, "shadeId" | "windowName" | "cloth" | "existing">;

function piecesOf(shade: CutShade, cloth: Cloth): Piece[] {
  const { layers, trims } = clothTaken(shade.cloth, shade.existing);
  return [
    ...layers
      .filter(({ clothId }) => clothId === cloth.id)
      .flatMap((layer) => layer.panels.map((panel) => panelPiece(shade, layer, panel, cloth))),
    ...trims.filter(({ clothId }) => clothId === cloth.id).flatMap((trim) => trimPieces(shade, trim, cloth)),
  ];
}

function panelPiece(shade: CutShade, layer: LayerCut, panel: Panel, cloth: Cloth): Piece {
  const lay = layer.lays.find(({ panelId }) => panelId === panel.id);
  const [widthMm, lengthMm] = layer.turned
    ? [panel.lengthMm, panel.widthMm]
    : [panel.widthMm, panel.lengthMm];
  const start = lay && startOf(layer, panel, lay, cloth);
  return {
    id: `${shade.shadeId}/${panel.id}`,
    shade: shade.windowName,
    part: layer.turned ? `${panel.label}, sideways` : panel.label,
    widthMm,
    lengthMm,
    grain: "fixed",
    nap: napOf(cloth),
    ...(start === undefined ? {} : { start }),
    ...(SEEN.includes(layer.layer) ? { lotGroup: shade.shadeId } : { hidden: true }),
  };
}

/**
 * Where a piece lies in the repeat. The cloth's stage tells the place on a bolt that begins with a repeat; on a half
 * drop that place counts from the column in which the piece lies there, here from the first column.
 */
function startOf(layer: LayerCut, panel: Panel, lay: Lay, cloth: Cloth): Piece["start"] {
  const { repeat } = cloth;
  if (repeat === undefined || panel.inRepeat === undefined) return undefined;
  const alongMm = moduloMm(lay.yMm, repeat.verticalMm);
  if (!layer.motif?.acrossKnown || panel.inRepeat.acrossMm === undefined) return { alongMm };
  const { firstMm, stepMm } = columnsOf(cloth);
  const column = Math.floor((lay.xMm - firstMm) / stepMm + 1e-6);
  const halfMm = repeat.match === "half-drop" && column % 2 !== 0 ? repeat.verticalMm / 2 : 0;
  return {
    alongMm: moduloMm(alongMm - halfMm, repeat.verticalMm),
    acrossMm: Math.max(0, lay.xMm - firstMm - column * stepMm),
  };
}

/**
 * Columns of the repeat across the bolt: where the first begins, and from one to the next, mm. The step is the one that
 * the search goes by, so that a piece found again from its column lies just where the cloth's stage laid it.
 */
export function columnsOf({ repeat, usableWidthMm }: Cloth): { firstMm: number; stepMm: number } {
  if (repeat === undefined) return { firstMm: 0, stepMm: usableWidthMm };
  const stepMm = acrossRepeatMm(repeat, usableWidthMm, 0);
  return { firstMm: firstColumnMm(repeat, stepMm, usableWidthMm), stepMm: onRepeatGridMm(stepMm) };
}

/** The search lays patterns on a grid of this fineness; nobody measures a repeat so finely. */
const REPEAT_STEPS_PER_MM = 160;

export function onRepeatGridMm(mm: number): number {
  return Math.round(mm * REPEAT_STEPS_PER_MM) / REPEAT_STEPS_PER_MM;
}

function moduloMm(valueMm: number, stepMm: number): number {
  const rest = valueMm - Math.floor(valueMm / stepMm) * stepMm;
  return stepMm - rest < 1e-6 ? 0 : rest;
}

/** A pattern, a top or a pile keeps a piece the right way up. */
function napOf(cloth: Cloth): Piece["nap"] {
  const oneWay = cloth.direction === "one-way" || cloth.nap === true || cloth.repeat !== undefined;
  return oneWay ? "one-way" : "either";
}

function trimPieces(shade: CutShade, trim: Trim, cloth: Cloth): Piece[] {
  const [widthMm, lengthMm] =
    trim.grain === "weft" ? [trim.lengthMm, trim.widthMm] : [trim.widthMm, trim.lengthMm];
  return Array.from({ length: trim.count }, (_, n) => ({
    id: `${shade.shadeId}/${trim.id}-${n + 1}`,
    shade: shade.windowName,
    part: trim.count === 1 ? trim.label : `${trim.label} ${n + 1} of ${trim.count}`,
    widthMm,
    lengthMm,
    grain: trim.grain === "free" ? "free" : "fixed",
    nap: napOf(cloth),
  }));
}
