import type { ActionKind, StepAction } from "../../shade-plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import type { Drawing } from "../model.ts";
import type { ActionDrawing, ActionInput } from "./action-input.ts";
import { drawBasteLayers } from "./baste-layers.ts";
import { drawCoverBoard } from "./cover-board.ts";
import { drawDressFolds } from "./dress-folds.ts";
import { drawnWithFewerPoints } from "./fewer-points.ts";
import { drawFixShade } from "./fix-shade.ts";
import { drawFixTag } from "./fix-tag.ts";
import { drawHangBoard } from "./hang-board.ts";
import { drawJoinTails } from "./join-tails.ts";
import { drawLevelHem } from "./level-hem.ts";
import { drawMarkRows } from "./mark-rows.ts";
import { drawMeasureOpening } from "./measure-opening.ts";
import { drawMitreCorner } from "./mitre-corner.ts";
import { drawPressHem } from "./press-hem.ts";
import { drawScrewLock } from "./screw-lock.ts";
import { drawSetEye } from "./set-eye.ts";
import { drawSewRing } from "./sew-ring.ts";
import { drawSewSleeve } from "./sew-sleeve.ts";
import { drawShakeLock } from "./shake-lock.ts";
import { drawSlideIn } from "./slide-in.ts";
import { drawSquareCloth } from "./square-cloth.ts";
import { drawThreadLock } from "./thread-lock.ts";
import { drawTieFolds } from "./tie-folds.ts";
import { drawTieRing } from "./tie-ring.ts";
import { drawWindCleat } from "./wind-cleat.ts";
import { drawWindSpool } from "./wind-spool.ts";

/** Who draws which action. */
const ACTION_DRAWERS: { [Kind in ActionKind]: (input: ActionInput<Kind>) => ActionDrawing } = {
  "measure-opening": drawMeasureOpening,
  "square-cloth": drawSquareCloth,
  "press-hem": drawPressHem,
  "mitre-corner": drawMitreCorner,
  "mark-rows": drawMarkRows,
  "baste-layers": drawBasteLayers,
  "sew-ring": drawSewRing,
  "sew-sleeve": drawSewSleeve,
  "slide-in": drawSlideIn,
  "cover-board": drawCoverBoard,
  "fix-shade": drawFixShade,
  "set-eye": drawSetEye,
  "tie-ring": drawTieRing,
  "shake-lock": drawShakeLock,
  "thread-lock": drawThreadLock,
  "screw-lock": drawScrewLock,
  "wind-spool": drawWindSpool,
  "hang-board": drawHangBoard,
  "wind-cleat": drawWindCleat,
  "level-hem": drawLevelHem,
  "join-tails": drawJoinTails,
  "dress-folds": drawDressFolds,
  "tie-folds": drawTieFolds,
  "fix-tag": drawFixTag,
};

export const ACTION_KINDS = Object.keys(ACTION_DRAWERS) as ActionKind[];

/** Drawn once for all sheets that show it, as long as the step is there. */
const drawn = new WeakMap<StepAction, { units: UnitChoice; drawing: Drawing }>();

/** What the hands do in one step, with this shade's own figures: not to scale, to be read beside the words of the step. */
export function drawAction(action: StepAction, units: UnitChoice): Drawing {
  const known = drawn.get(action);
  if (known?.units === units) return known.drawing;
  const drawing = drawnAnew(action, units);
  drawn.set(action, { units, drawing });
  return drawing;
}

function drawnAnew(action: StepAction, units: UnitChoice): Drawing {
  const draw = ACTION_DRAWERS[action.kind] as (input: {
    action: StepAction;
    units: UnitChoice;
  }) => ActionDrawing;
  const { title, primitives, facts } = draw({ action, units });
  return {
    id: `action-${action.kind}`,
    title,
    caption: "Not to scale.",
    primitives: drawnWithFewerPoints(primitives),
    facts,
  };
}
