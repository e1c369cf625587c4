export * from "./bench-formulas.ts";
export * from "./bench-tests.ts";
export * from "./beyond-rectangle.ts";
export * from "./board-allowance.ts";
export * from "./catalogue.ts";
export * from "./child-pull.ts";
export * from "./cloth.ts";
export { colourOf, USUAL_KIND } from "./cloth-colour.ts";
export * from "./cloth-photo.ts";
export * from "./cloth-stiffness.ts";
export * from "./cord-stiffness.ts";
export { type CutCloth, cutOffBoltMm, type LaidPiece } from "./cut-work.ts";
export * from "./cutting.ts";
export * from "./defaults.ts";
export * from "./english.ts";
export { EXISTING_TASK_WORDS, EXISTING_TASKS, type Existing, type ExistingTask } from "./existing.ts";
export * from "./eye-friction.ts";
export * from "./eye-on-board.ts";
export { fieldAccepts } from "./field-accepts.ts";
export * from "./footholds.ts";
export * from "./hardware.ts";
export * from "./in-line.ts";
export * from "./job.ts";
export * from "./job-text.ts";
export * from "./lift-traits.ts";
export * from "./making.ts";
export * from "./new-job.ts";
export * from "./open-job.ts";
export * from "./part-origin.ts";
export * from "./parts.ts";
export * from "./parts-at-hand.ts";
export * from "./parts-file.ts";
export * from "./patch.ts";
export { daySchema, LONGEST_MM, MOST_PARTS } from "./primitives.ts";
export { issuesOf, type JobIssue, notRead, readDocument } from "./read-document.ts";
export * from "./reads.ts";
export * from "./resolve.ts";
export {
  hasBar,
  layersGsm,
  ROUGH_HEMS,
  roughFullness,
  SHEER_GSM,
  usualLengthFullness,
} from "./rough-mass.ts";
export { splitWindow } from "./split-window.ts";
export * from "./stock.ts";
export * from "./style-defaults.ts";
export * from "./style-traits.ts";
