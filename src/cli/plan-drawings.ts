import {
  type Drawing,
  drawAction,
  drawMarkingStrips,
  drawRoom,
  drawShadeTemplates,
  drawSheet,
  drawTag,
  type Fit,
  knownOfTag,
  type RoomView,
} from "../drawing/index.ts";
import type { Plan, ShadePlan } from "../plan/index.ts";
import { SHEETS, type SheetKind } from "../shade-plan/index.ts";

/** Sheets that show the shade at a height: lowered, half raised, raised. */
const RAISING: readonly SheetKind[] = ["picture", "front", "back", "side"];
const HEIGHTS = [0, 0.5, 1];

/** What a page of either paper takes within its margins. */
const PAGE: Fit = { maxWidthMm: 180, maxHeightMm: 235 };
const PAGE_ON_ITS_SIDE: Fit = { maxWidthMm: 235, maxHeightMm: 180 };
/** Beside the words of its step. */
const BESIDE_WORDS: Fit = { maxWidthMm: 90, maxHeightMm: 70 };
const FULL_SIZE: Fit = { scale: 1 };

export interface FittedDrawing {
  drawing: Drawing;
  fit: Fit;
  /** The same for a file in millimetres, where the drawing itself stretches something for the eye. */
  trueScale?: Drawing;
  /** Unless told, it is: what is not has no place in a file that is measured by. */
  toScale?: boolean;
}

/** Of a shade that hangs already no cloth is cut, and nothing is marked but new rings. */
function showsNew({ existing }: ShadePlan, kind: SheetKind): boolean {
  if (existing === undefined) return true;
  return kind !== "cutting" && (kind !== "marking" || existing.takes.rings > 0);
}

/** Every drawing of one shade: sheets to fit a page, what the hands do step by step, marking strips and child-safety tag at full size. */
export function* planDrawings(plan: Plan, shade: ShadePlan, madeOn: Date): Generator<FittedDrawing> {
  for (const kind of SHEETS) {
    // The strips come one by one below, so that each can be printed and laid on the cloth.
    if (kind === "strips" || !showsNew(shade, kind)) continue;
    for (const raise of RAISING.includes(kind) ? HEIGHTS : [0]) {
      yield {
        drawing: drawSheet(kind, plan, shade, { raise }),
        fit: PAGE,
        ...(kind === "board" ? { trueScale: drawSheet(kind, plan, shade, { raise, trueScale: true }) } : {}),
      };
    }
  }
  for (const [i, { action }] of shade.steps.entries()) {
    if (action === undefined) continue;
    const drawing = drawAction(action, plan.units);
    const number = String(i + 1).padStart(2, "0");
    yield { drawing: { ...drawing, id: `step-${number}-${action.kind}` }, fit: BESIDE_WORDS, toScale: false };
  }
  for (const drawing of [
    ...(showsNew(shade, "marking") ? drawMarkingStrips(plan, shade) : []),
    ...(showsNew(shade, "cutting") ? drawShadeTemplates(plan, shade) : []),
    ...drawTag(shade, knownOfTag(plan, shade, madeOn)),
  ]) {
    yield { drawing, fit: FULL_SIZE };
  }
}

/** All windows of a room to one scale, lowered, half raised and raised, to fit a page laid on its side. */
export function* roomDrawings(plan: Plan, view: RoomView): Generator<FittedDrawing> {
  for (const raise of HEIGHTS) yield { drawing: drawRoom(plan, view, { raise }), fit: PAGE_ON_ITS_SIDE };
}
