import { toDxf } from "../../src/drawing/dxf/index.ts";
import { drawMarkingStrips, drawSheet, place, toSvg } from "../../src/drawing/index.ts";
import { openJobText } from "../../src/job/index.ts";
import { type Plan, plan, RemedyTrial, type ShadePlan } from "../../src/plan/index.ts";
import { SHEETS } from "../../src/shade-plan/index.ts";
import { allLists, toCsv } from "../../src/tables/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { FONTS } from "../workbook/fonts.ts";

const PAGE = { maxWidthMm: 180, maxHeightMm: 235 };

/** How far a text is taken: all are opened, planned and listed; what takes longer is done for some. */
export interface CaseDepth {
  drawings: boolean;
  remedies: boolean;
  workbook: boolean;
}

const WHOLE_WAY: CaseDepth = { drawings: true, remedies: true, workbook: true };

/** Takes one text the whole way from file to files. Throws at whatever ought not to be. */
export async function runCase(text: string, depth: CaseDepth = WHOLE_WAY): Promise<void> {
  const opened = openJobText(text);
  if (!opened.ok) {
    const words = opened.issues.flatMap(({ field, given, wanted }) => [field, given, wanted]);
    if (words.length === 0 || words.includes(""))
      throw new Error(`refused without words: ${JSON.stringify(words)}`);
    return;
  }
  const planned = plan(opened.job);
  expectNumbers(planned, "plan");
  for (const list of allLists(planned)) {
    expectNumbers(list.rows, list.name);
    toCsv(list);
  }
  if (depth.drawings) for (const shade of planned.shades) drawAll(planned, shade, !/NaN|Infinity/.test(text));
  if (depth.remedies) tryRemedies(new RemedyTrial(opened.job), planned);
  if (depth.workbook) await makeWorkbook({ plan: planned, paper: "a4", fonts: FONTS });
}

function drawAll(planned: Plan, shade: ShadePlan, checksText: boolean): void {
  const drawings = [
    ...SHEETS.flatMap((kind) => [0, 0.5, 1].map((raise) => drawSheet(kind, planned, shade, { raise }))),
    ...drawMarkingStrips(planned, shade),
  ];
  for (const drawing of drawings) {
    const placed = place(drawing, PAGE);
    expectNumbers(placed, drawing.id);
    for (const file of [toSvg(placed), toDxf(drawing)])
      if (checksText && /\b(?:NaN|Infinity)\b/.test(file))
        throw new Error(`${drawing.id}: no number in a file`);
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

function expectNumbers(value: unknown, path: string): void {
  if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`${path} is ${value}`);
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value))
    expectNumbers(inner, /^\d+$/.test(key) ? path : `${path}.${key}`);
}
