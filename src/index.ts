/**
 * Shadewright as a library: open or begin a job, plan it, draw it, list it, print it.
 *
 * ```ts
 * const job = newJob({ id: "bay", name: "Bay window", system: "metric" });
 * job.rooms[0]?.windows.push(newWindow({ id: "left", name: "Left", widthMm: 905, heightMm: 1500 }));
 * const { shades, findings } = plan(job);
 * ```
 *
 * Lengths are millimetres, forces newtons, masses kilograms, cloth grams per square metre; each name ends in
 * its unit. Nothing here reads a clock, a file or a network: fonts and dates are handed in.
 */

export {
  type Drawing,
  drawBoltPlan,
  drawBoltStretches,
  drawMarkingStrips,
  drawRoom,
  drawSheet,
  drawTag,
  type Fit,
  type LetterOutlines,
  type Placed,
  type Primitive,
  place,
  type RoomView,
  roomViews,
  toSvg,
} from "./drawing/index.ts";
export {
  type Finding,
  type Remedy,
  SEVERITIES,
  type Severity,
  STAGES,
  type Stage,
  type Working,
} from "./figures/index.ts";
export {
  type Job,
  type JobInput,
  type JobIssue,
  jobText,
  newJob,
  newWindow,
  type OpenedJob,
  openJob,
  openJobText,
} from "./job/index.ts";
export { letterOutlines, type WorkbookFonts } from "./letters/index.ts";
export {
  buyAsCut,
  type CuttingPlan,
  type Plan,
  plan,
  planCutting,
  proveRemedies,
  type ShadePlan,
} from "./plan/index.ts";
export { SHEETS, type SheetKind } from "./shade-plan/index.ts";
export { type Cite, citeText, SOURCES, type SourceId } from "./sources/index.ts";
export { allLists, cuttingLists, type Table, toCsv } from "./tables/index.ts";
export { lengthText, parseLength, type UnitChoice } from "./units/index.ts";
export {
  makeWorkbook,
  PRINT_SETS,
  type PrintSet,
  SET_PRESETS,
  type WorkbookInput,
  writeWorkbook,
} from "./workbook/index.ts";
