import { verifyCloth } from "../../src/cutting/index.ts";
import { toDxf } from "../../src/drawing/dxf/index.ts";
import { drawMarkingStrips, drawSheet, place, toSvg } from "../../src/drawing/index.ts";
import { type Job, jobText, openJobText } from "../../src/job/index.ts";
import { type Plan, plan, planCutting, RemedyTrial, type ShadePlan } from "../../src/plan/index.ts";
import { SHEETS, type SheetKind } from "../../src/shade-plan/index.ts";
import { allLists, toCsv } from "../../src/tables/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { FONTS } from "../workbook/fonts.ts";

const PAGE = { maxWidthMm: 180, maxHeightMm: 235 };
/** Enough for every part of the search to have its turn. */
const CUTTING_TRIES = 20;

/** How far a text is taken: all are opened and planned; what takes longer is done for some. */
export interface CaseDepth {
  /** Steps, findings, review, workings and lists; and the file, written and opened again. */
  words: boolean;
  /** Drawn at these shares of the raise, to SVG and DXF. */
  sheets: readonly SheetKind[];
  raises: readonly number[];
  cutting: boolean;
  remedies: boolean;
  workbook: boolean;
}

const WHOLE_WAY: CaseDepth = {
  words: true,
  sheets: SHEETS,
  raises: [0, 0.5, 1],
  cutting: true,
  remedies: true,
  workbook: true,
};

/**
 * Takes one text the whole way from file to files. Throws at whatever ought not to be.
 * @returns whether it was taken for a job; else it was refused with words
 */
export async function runCase(text: string, depth: CaseDepth = WHOLE_WAY): Promise<boolean> {
  const opened = openJobText(text);
  if (!opened.ok) {
    const words = opened.issues.flatMap(({ field, given, wanted }) => [field, given, wanted]);
    if (words.length === 0 || words.includes(""))
      throw new Error(`refused without words: ${JSON.stringify(words)}`);
    return false;
  }
  const { job } = opened;
  const planned = plan(job);
  for (const shade of planned.shades)
    for (const stage of VALUES) expectNumbers(shade[stage], `plan.${stage}`);
  if (depth.words) readWords(job, planned);
  if (depth.sheets.length > 0)
    for (const shade of planned.shades) drawSheets(planned, shade, depth, !/NaN|Infinity/.test(text));
  if (depth.cutting) cut(job, planned);
  if (depth.remedies) tryRemedies(new RemedyTrial(job), planned);
  if (depth.workbook) await makeWorkbook({ plan: planned, paper: "a4", fonts: FONTS });
  return true;
}

/** What stands in a plan at once; all else of it is made when someone reads it. */
const VALUES = ["existing", "size", "grid", "form", "feel", "cloth", "mass", "lift"] as const;

function readWords(job: Job, planned: Plan): void {
  expectNumbers(planned, "plan");
  for (const list of allLists(planned)) {
    expectNumbers(list.rows, list.name);
    toCsv(list);
  }
  const again = openJobText(jobText(job));
  if (!again.ok) throw new Error(`its own file is refused: ${JSON.stringify(again.issues.slice(0, 3))}`);
  if (jobText(again.job) !== jobText(job)) throw new Error("a job that was saved opens as another");
}

function drawSheets(planned: Plan, shade: ShadePlan, depth: CaseDepth, checksText: boolean): void {
  const { sheets, raises } = depth;
  const drawings = [
    ...sheets.flatMap((kind) => raises.map((raise) => drawSheet(kind, planned, shade, { raise }))),
    ...(depth.workbook ? drawMarkingStrips(planned, shade) : []),
  ];
  for (const drawing of drawings) {
    const placed = place(drawing, PAGE);
    expectNumbers(placed, drawing.id);
    for (const file of [toSvg(placed), toDxf(drawing)])
      if (checksText && /\b(?:NaN|Infinity)\b/.test(file))
        throw new Error(`${drawing.id}: no number in a file`);
  }
}

function cut(job: Job, planned: Plan): void {
  const cutting = planCutting(job, planned, CUTTING_TRIES);
  expectNumbers(cutting, "cutting");
  for (const { clothId, problem, answer } of cutting.cloths) {
    if (!("bolts" in answer)) continue;
    const faults = verifyCloth(problem, answer);
    if (faults.length > 0) throw new Error(`cloth ${clothId}: ${faults[0]}`);
  }
}

/** The first remedy of each shade and of the job. */
function tryRemedies(trial: RemedyTrial, planned: Plan): void {
  for (const findings of [planned.findings, ...planned.shades.map((shade) => shade.findings)]) {
    const found = findings.find(({ remedies }) => remedies.length > 0);
    const [remedy] = found?.remedies ?? [];
    if (found !== undefined && remedy !== undefined) trial.cures(found, remedy);
  }
}

/** @throws Error where a number is none */
function expectNumbers(value: unknown, path: string): void {
  const bad = notANumberIn(value);
  if (bad !== undefined) throw new Error(`${path}${bad.path} is ${bad.value}`);
}

/** The path is put together on the way back alone: there are thousands of numbers in a plan. */
function notANumberIn(value: unknown): { path: string; value: number } | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : { path: "", value };
  if (typeof value !== "object" || value === null) return undefined;
  if (Array.isArray(value)) {
    for (const inner of value) {
      const bad = notANumberIn(inner);
      if (bad !== undefined) return bad;
    }
    return undefined;
  }
  for (const key of Object.keys(value)) {
    const bad = notANumberIn((value as Record<string, unknown>)[key]);
    if (bad !== undefined) return { ...bad, path: `.${key}${bad.path}` };
  }
  return undefined;
}
