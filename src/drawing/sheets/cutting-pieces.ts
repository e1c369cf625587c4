import type { Lay, Layer, LayerCut } from "../../shade-plan/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Point, Primitive, Role } from "../model.ts";
import { type DrawnRect, dimensionOf, line, name, note, rect } from "./shapes.ts";
import { figureRef, type SheetInput } from "./sheet-input.ts";

export const CLOTH_ROLE: Record<Layer, Role> = {
  face: "faceCloth",
  interlining: "wrongSide",
  blackout: "wrongSide",
  lining: "liningCloth",
};

/** More lines of a pattern than this would only blacken the cloth. */
const MOST_REPEATS = 200;
/** Pieces shorter or narrower than this share of the cloth have room for their name alone. */
const LARGE = { width: 0.5, length: 0.2 };

interface LayDrawing {
  lay: Lay;
  usableWidthMm: number;
  /** Upper selvedge of the cloth on the drawing. */
  top: number;
  role: Role;
  /** The layer of a panel; a piece beside the layers has none. */
  cut?: LayerCut;
  /** Sizes already written out in full. */
  sizes: Set<string>;
}

/**
 * A piece lies with its length along the bolt, which runs to the right, unless its layer is turned sideways. Right side
 * up with the tops at the left, the left selvedge of an upright pattern is the lower one.
 */
export function drawLay(input: SheetInput, drawing: LayDrawing): Primitive[] {
  const { lay, usableWidthMm, top, role, cut, sizes } = drawing;
  const { units, shade } = input;
  const y = top + usableWidthMm - lay.xMm - lay.widthMm;
  const area: DrawnRect = { x: lay.yMm, y, width: lay.lengthMm, height: lay.widthMm };
  const ref = { part: lay.panelId };
  const trim = shade.cloth.trims.find(({ id }) => id === lay.panelId);
  const label = cut?.panels.find(({ id }) => id === lay.panelId)?.label ?? trim?.label ?? lay.panelId;
  const right = area.x + area.width;
  const middle: Point = [area.x + area.width / 2, area.y + area.height / 2];
  const size = `${lengthText(lay.lengthMm, units)} × ${lengthText(lay.widthMm, units)}`;
  const isLarge =
    cut !== undefined &&
    lay.widthMm > LARGE.width * cut.usableWidthMm &&
    lay.lengthMm > LARGE.length * cut.lengthMm;
  const isMeasured = isLarge && !sizes.has(size);
  const isNamed = cut !== undefined || !sizes.has(lay.panelId);
  if (isMeasured) sizes.add(size);
  sizes.add(lay.panelId);
  return [
    rect(role, area, ref),
    rect("cut", area, ref),
    ...(cut === undefined ? [] : hemLines(cut, lay, area)),
    ...(cut === undefined ? [] : grain(area, cut)),
    ...(isNamed && cut === undefined
      ? [
          note([right, middle[1]], label, {
            anchor: "start",
            shiftPaperMm: [2, 0],
            yields: true,
            ...ref,
          }),
        ]
      : []),
    ...(cut === undefined
      ? []
      : [
          name(middle, label, {
            roomMm: [area.width * 0.9, area.height * 0.5],
            baseline: "bottom",
            overSize: true,
            ground: role,
            ...ref,
          }),
        ]),
    ...(isMeasured && cut !== undefined ? measured(input, cut, area, role, lay.panelId) : []),
    ...(isMeasured || cut === undefined
      ? []
      : [note(middle, size, { shiftPaperMm: [0, 2.6], ground: role, yields: true, atDesk: true, ...ref })]),
  ];
}

function measured(
  input: SheetInput,
  cut: LayerCut,
  area: DrawnRect,
  ground: Role,
  part: string,
): Primitive[] {
  const right = area.x + area.width;
  const [along, across] = cut.turned ? ["width", "length"] : ["length", "width"];
  const one = (from: Point, to: Point, id: string) =>
    dimensionOf(
      {
        from,
        to,
        offset: -5,
        yields: true,
        ground,
        part,
        ...figureRef(input, `cloth.${cut.layer}-cut-${id}`),
      },
      input.units,
    );
  return [
    one([area.x, area.y], [right, area.y], along ?? "length"),
    one([right, area.y], [right, area.y + area.height], across ?? "width"),
  ];
}

/** Where the finished outline runs on a panel: its side edges on the outer panels, its top line and its hem line. */
function hemLines(cut: LayerCut, lay: Lay, area: DrawnRect): Primitive[] {
  const { leftMm, rightMm, topMm, bottomMm } = cut.edges;
  const first = cut.panels[0]?.id === lay.panelId;
  const last = cut.panels.at(-1)?.id === lay.panelId;
  const [x, y, right, bottom] = [area.x, area.y, area.x + area.width, area.y + area.height];
  const upright = (at: number): Point[] => [
    [at, y],
    [at, bottom],
  ];
  const level = (at: number): Point[] => [
    [x, at],
    [right, at],
  ];
  // Sideways a piece is seen upright, its left edge at the end of the bolt.
  const lines: [marginMm: number, points: Point[]][] = cut.turned
    ? [
        [topMm, level(y + topMm)],
        [bottomMm, level(bottom - bottomMm)],
        [leftMm, upright(x + leftMm)],
        [rightMm, upright(right - rightMm)],
      ]
    : [
        [topMm, upright(x + topMm)],
        [bottomMm, upright(right - bottomMm)],
        [first ? leftMm : 0, level(bottom - leftMm)],
        [last ? rightMm : 0, level(y + rightMm)],
      ];
  return lines
    .filter(([marginMm]) => marginMm > 0.5)
    .map(([, points]) => line("hidden", points, { part: lay.panelId }));
}

/** Along the warp, and which end is the top where that matters. */
function grain(area: DrawnRect, cut: LayerCut): Primitive[] {
  const y = area.y + area.height * 0.7;
  const oneWay = cut.motif !== undefined || cut.panels.length > 1 || cut.turned;
  const isRoomy = area.height > 0.25 * cut.usableWidthMm;
  const top: Point = cut.turned
    ? [area.x + area.width * 0.12, area.y + cut.edges.topMm]
    : [area.x + cut.edges.topMm, area.y + area.height * 0.3];
  return [
    // Words fill a narrow piece.
    ...(area.height > LARGE.width * cut.usableWidthMm
      ? [
          line("grain", [
            [area.x + area.width * 0.3, y],
            [area.x + area.width * 0.7, y],
          ]),
        ]
      : []),
    ...(oneWay && isRoomy
      ? [
          note(top, "top", {
            anchor: "start",
            shiftPaperMm: cut.turned ? [0, 2.4] : [1.6, 0],
            ground: CLOTH_ROLE[cut.layer],
            yields: true,
            atDesk: true,
          }),
        ]
      : []),
  ];
}

/** Where repeats begin: along the bolt, and across it where the repeat across is known. */
export function patternLines(cut: LayerCut, top: number, lengthMm: number): Primitive[] {
  const { repeatMm, motif, usableWidthMm } = cut;
  if (repeatMm === undefined || lengthMm / repeatMm > MOST_REPEATS) return [];
  const lines: Primitive[] = [];
  for (let x = repeatMm; x < lengthMm; x += repeatMm) {
    lines.push(
      line("repeatLine", [
        [x, top],
        [x, top + usableWidthMm],
      ]),
    );
  }
  const panel = cut.panels[0];
  const lay = cut.lays.find(({ panelId }) => panelId === panel?.id);
  const acrossMm = panel?.inRepeat?.acrossMm;
  if (motif === undefined || lay === undefined || acrossMm === undefined || cut.turned) return lines;
  const columnMm = (motif.repeatXMm * cut.cutWidthMm) / shrunkWidth(cut);
  if (usableWidthMm / columnMm > MOST_REPEATS) return lines;
  const first = (((lay.xMm - acrossMm) % columnMm) + columnMm) % columnMm;
  for (let x = first; x < usableWidthMm; x += columnMm) {
    if (x < 1) continue;
    const y = top + usableWidthMm - x;
    lines.push(
      line("repeatLine", [
        [0, y],
        [lengthMm, y],
      ]),
    );
  }
  return lines;
}

/** Width of a layer once what still shrinks has shrunk, mm. */
function shrunkWidth(cut: LayerCut): number {
  const shrinkage = cut.makeUp.find(({ label }) => label === "shrinkage")?.widthMm ?? 0;
  return cut.cutWidthMm - shrinkage;
}
