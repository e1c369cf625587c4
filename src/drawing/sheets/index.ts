import type { Plan, ShadePlan } from "../../plan/index.ts";
import type { SheetKind } from "../../shade-plan/index.ts";
import type { Drawing } from "../model.ts";
import { drawBack } from "./back.ts";
import { drawBoardSheet } from "./board.ts";
import { drawControlSheet } from "./control.ts";
import { drawCutting } from "./cutting.ts";
import { drawForce } from "./force.ts";
import { drawFront } from "./front.ts";
import { drawMarking, drawMarkingApart } from "./marking.ts";
import { drawPicture } from "./picture.ts";
import type { SheetInput } from "./sheet-input.ts";
import { drawSide } from "./side.ts";
import { drawEachStrip, drawStrips } from "./strips.ts";
import { drawTemplates } from "./templates.ts";

export { areaOnBolt, type BoltDrawingInput, drawBoltPlan, drawBoltStretches } from "./bolt.ts";
export { marksAlong } from "./cloth-marks.ts";
export { drawLegend } from "./legend.ts";
export { drawRoom, type RoomOptions, type RoomView, roomViews } from "./room.ts";
export { BETWEEN_MM, type Standing, standInRoom } from "./stand-in-room.ts";
export { drawStyleSample, SAMPLE_RAISE, styleSampleJob } from "./style-sample.ts";
export { hasTemplates } from "./templates.ts";

/** Who draws which sheet. */
const SHEET_DRAWERS: Record<SheetKind, (input: SheetInput) => Drawing> = {
  picture: drawPicture,
  front: drawFront,
  back: drawBack,
  side: drawSide,
  cutting: drawCutting,
  marking: drawMarking,
  board: drawBoardSheet,
  lock: drawControlSheet,
  force: drawForce,
  strips: drawStrips,
};

export interface SheetOptions {
  /** 0 lowered, 1 raised; front, back and side follow it. */
  raise?: number;
  /** Nothing drawn larger than it is against the rest; otherwise the board may be drawn deeper. */
  trueScale?: boolean;
  /** The side no further down than the shade hangs at this height: what is raised is drawn large. */
  near?: boolean;
}

/** One sheet of one shade as data, in mm of the real thing. */
export function drawSheet(
  kind: SheetKind,
  plan: Pick<Plan, "units">,
  shade: ShadePlan,
  { raise = 0, trueScale = false, near = false }: SheetOptions = {},
): Drawing {
  return SHEET_DRAWERS[kind]({ units: plan.units, shade, raise, trueScale, near });
}

/** The marking sheet in two: what is marked on the flat cloth first, where anything is, and the finished shade. */
export function drawMarkingSheets(
  plan: Pick<Plan, "units">,
  shade: ShadePlan,
): ReturnType<typeof drawMarkingApart> {
  return drawMarkingApart({ units: plan.units, shade, raise: 0 });
}

/**
 * A sheet as a lesson shows it, large: of the marking sheet the finished shade alone, since what is marked on the flat cloth
 * first is a second drawing beside which it would be a speck.
 */
export function drawForLesson(
  kind: SheetKind,
  plan: Pick<Plan, "units">,
  shade: ShadePlan,
  raise: number,
): Drawing {
  return kind === "marking"
    ? drawMarkingSheets(plan, shade).finished
    : drawSheet(kind, plan, shade, { raise, near: true });
}

/** The marking strips one by one, to be tiled at full size. */
export function drawMarkingStrips(plan: Pick<Plan, "units">, shade: ShadePlan): Drawing[] {
  return drawEachStrip({ units: plan.units, shade, raise: 0 });
}

/** Templates at full size, for what is cut or folded along a shape; none where all is straight and square. */
export function drawShadeTemplates(plan: Pick<Plan, "units">, shade: ShadePlan): Drawing[] {
  return drawTemplates({ units: plan.units, shade, raise: 0 });
}
