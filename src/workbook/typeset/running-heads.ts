import { NO_SHAPE, onOneLine } from "../../letters/index.ts";
import { breakLines } from "./break-lines.ts";
import { FOOT_PT, HEAD_PT, MARGIN_PT, type Paper } from "./paper.ts";
import type { Pen } from "./pen.ts";
import { stampHeight } from "./stamp.ts";
import { TYPE } from "./type-scale.ts";

/** What a page says of itself at head and foot. */
export interface Running {
  job: string;
  shade: string;
  /** Which sheaf of pages this is, and for whom. */
  set: string;
  reader: string;
  /** Words at the right of the foot: that the job is invented, or when it was made. */
  remark?: string;
  /** Why nobody should have this shade as it is planned: stands under the head of every page. */
  stamp?: string;
}

const GAP = 24;

interface Head {
  job: string[];
  shade: string[];
  /** Both stand on one line. */
  together: boolean;
}

/** Job and shade on one line where they fit, under each other where they do not: names are never cut short. */
function setHead(pen: Pen, running: Running, width: number): Head {
  const job = onOneLine(running.job, pen.faces.semibold);
  const shade = onOneLine(running.shade, pen.faces.regular);
  const together = pen.widthOf(job, TYPE.runningStrong) + GAP + pen.widthOf(shade, TYPE.running) <= width;
  return {
    job: breakLines(job, width, TYPE.runningStrong, pen.faces),
    shade: shade === "" ? [] : breakLines(shade, width, TYPE.running, pen.faces),
    together,
  };
}

const UNDER_HEAD = 34;
/** From the rule under the head to a stamp. */
const STAMP_GAP = 8;
const UNDER_STAMP = 22;

function ruleY(pen: Pen, running: Running, width: number): number {
  const { job, shade, together } = setHead(pen, running, width);
  const lines = together ? 1 : job.length + shade.length;
  return HEAD_PT + (lines - 1) * TYPE.running.leadingPt + 6;
}

/** Where the stamp of a page begins, pt from the top. */
export function stampTop(pen: Pen, running: Running, width: number): number {
  return ruleY(pen, running, width) + STAMP_GAP;
}

/** Where the text of a page begins under its head, pt from the top. */
export function headHeight(pen: Pen, running: Running, width: number): number {
  if (running.stamp === undefined) return ruleY(pen, running, width) - 6 + UNDER_HEAD;
  return stampTop(pen, running, width) + stampHeight(pen, running.stamp, width) + UNDER_STAMP;
}

export function drawHead(pen: Pen, running: Running, left: number, width: number): void {
  const { job, shade, together } = setHead(pen, running, width);
  let y = HEAD_PT;
  for (const line of job) {
    pen.text(line, left, y, TYPE.runningStrong);
    y += TYPE.running.leadingPt;
  }
  if (together) y = HEAD_PT;
  for (const line of shade) {
    pen.text(line, together ? left + width : left, y, TYPE.running, together ? "end" : "start");
    y += TYPE.running.leadingPt;
  }
  const rule = ruleY(pen, running, width);
  pen.line(left, rule, left + width, rule);
}

export function drawFoot(
  pen: Pen,
  running: Running,
  page: { number: number; total: number; lacksLetters: boolean },
  paper: Paper,
): void {
  const y = paper.heightPt - FOOT_PT;
  const right = paper.widthPt - MARGIN_PT;
  const over = y - TYPE.running.leadingPt;
  pen.text(running.set, MARGIN_PT, over, TYPE.runningStrong);
  pen.text(running.reader, MARGIN_PT, y, TYPE.running);
  const lack = page.lacksLetters ? `${NO_SHAPE} is a letter that this type has no shape for · ` : "";
  pen.text(`${lack}page ${page.number} of ${page.total}`, right, over, TYPE.runningStrong, "end");
  if (running.remark !== undefined) pen.text(running.remark, right, y, TYPE.running, "end");
}
