import { type Drawing, drawSheet, type Placed, place, speltDrawing } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { SheetKind } from "../../shade-plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { screenSpelling } from "../spelt/screen-english.ts";

/** Sheets that change as the shade is raised. */
export const RAISED_SHEETS: ReadonlySet<SheetKind> = new Set<SheetKind>(["picture", "front", "back", "side"]);

/** Room that the caption takes below a drawing on a phone, in two lines, in letters of the root. */
export const CAPTION_REM = 2.9;

export interface Bounds {
  maxWidthMm: number;
  maxHeightMm: number;
}

/** A placed drawing and the box it is shown in, mm of paper; the box stays the same at every height. */
export interface OnScreen {
  placed: Placed;
  box: { xMm: number; yMm: number; widthMm: number; heightMm: number };
}

interface Frame {
  scale: number;
  /** The shade lowered, as it is seen most of the time. */
  lowered: Placed;
  /** About the model's origin, mm of paper. */
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const frames = new WeakMap<ShadePlan, Map<string, Frame>>();

/** Lays a sheet out within bounds, so that raising the shade moves the shade and nothing else. */
export function placeSheet(
  kind: SheetKind,
  shade: ShadePlan,
  units: UnitChoice,
  raise: number,
  bounds: Bounds,
): OnScreen {
  const spell = screenSpelling();
  const draw = (at: number) => speltDrawing(drawSheet(kind, { units }, shade, { raise: at }), spell);
  if (!RAISED_SHEETS.has(kind)) {
    const placed = place(draw(0), bounds);
    return { placed, box: { xMm: 0, yMm: 0, widthMm: placed.widthMm, heightMm: placed.heightMm } };
  }
  const frame = frameOf(kind, shade, draw, bounds);
  const placed = raise <= 0 ? frame.lowered : place(draw(raise), { scale: frame.scale });
  const [x0, y0] = placed.originMm;
  return {
    placed,
    box: {
      xMm: x0 + frame.left,
      yMm: y0 + frame.top,
      widthMm: frame.right - frame.left,
      heightMm: frame.bottom - frame.top,
    },
  };
}

/** Scale and box that hold the shade lowered and raised. */
function frameOf(kind: SheetKind, shade: ShadePlan, draw: (raise: number) => Drawing, bounds: Bounds): Frame {
  const key = `${kind} ${bounds.maxWidthMm} ${bounds.maxHeightMm}`;
  const known = frames.get(shade)?.get(key);
  if (known) return known;
  const lowered = draw(0);
  const raised = draw(1);
  const fitted = [place(lowered, bounds), place(raised, bounds)] as const;
  const scale = Math.min(fitted[0].scale, fitted[1].scale);
  const atScale = (placed: Placed, drawing: Drawing) =>
    placed.scale === scale ? placed : place(drawing, { scale });
  const boxes = [atScale(fitted[0], lowered), atScale(fitted[1], raised)] as const;
  const frame: Frame = {
    scale,
    lowered: boxes[0],
    left: Math.min(...boxes.map(({ originMm: [x] }) => -x)),
    top: Math.min(...boxes.map(({ originMm: [, y] }) => -y)),
    right: Math.max(...boxes.map(({ originMm: [x], widthMm }) => widthMm - x)),
    bottom: Math.max(...boxes.map(({ originMm: [, y], heightMm }) => heightMm - y)),
  };
  const ofShade = frames.get(shade) ?? new Map<string, Frame>();
  frames.set(shade, ofShade.set(key, frame));
  return frame;
}
