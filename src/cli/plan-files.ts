import type { Lesson } from "../answers/index.ts";
import { toDxf } from "../drawing/dxf/index.ts";
import { place, roomViews, toSvg } from "../drawing/index.ts";
import { type Job, jobText } from "../job/index.ts";
import type { CuttingPlan, Plan, ShadePlan } from "../plan/index.ts";
import { jobStamp } from "../safety/index.ts";
import { allLists, toCsv } from "../tables/index.ts";
import { type PaperKind, type PrintSet, writeWorkbook } from "../workbook/index.ts";
import { cuttingFiles } from "./cutting-files.ts";
import { fileNames } from "./file-names.ts";
import { type FittedDrawing, planDrawings, roomDrawings } from "./plan-drawings.ts";
import { writePlanJson } from "./plan-json.ts";
import { readWorkbookFonts } from "./workbook-fonts.ts";
import type { OutFile } from "./write-files.ts";

export interface PlanFilesInput {
  plan: Plan;
  cutting?: CuttingPlan;
  /** The job with the parts that it was planned with, where they came from a file of their own. */
  job?: Job;
  sets?: readonly PrintSet[];
  lessonsOf?: (shade: ShadePlan) => readonly Lesson[];
  paper: PaperKind;
  createdOn: Date;
  /** A line on how far it is. */
  progress?: (text: string) => void;
}

/**
 * Everything that is written for a plan, one file at a time and the large ones piece by piece, so that a job of two
 * thousand shades needs no more memory than one.
 */
export async function* planFiles({
  plan,
  cutting,
  job,
  createdOn,
  progress,
  ...print
}: PlanFilesInput): AsyncGenerator<OutFile> {
  if (job !== undefined) yield { path: "planned-job.json", content: jobText(job) };
  yield { path: "plan.json", content: (write) => writePlanJson(plan, write) };
  yield {
    path: "workbook.pdf",
    content: (write) =>
      writeWorkbook(
        {
          plan,
          ...(cutting === undefined ? {} : { cutting }),
          ...print,
          fonts: readWorkbookFonts(),
          createdOn,
          onProgress: ({ done, total, pages }) =>
            progress?.(`Workbook: ${pages} pages, ${Math.round((100 * done) / total)} %`),
        },
        write,
      ),
  };
  const stamp = jobStamp(plan.shades);
  for (const list of allLists(plan)) yield { path: `lists/${list.name}.csv`, content: toCsv(list, stamp) };
  if (cutting !== undefined) yield* cuttingFiles(cutting, stamp);
  const folders = fileNames(plan.shades.map(({ shadeId }) => shadeId));
  for (const [i, shade] of plan.shades.entries()) {
    progress?.(`Drawings: ${i + 1} of ${plan.shades.length} shades`);
    const folder = `drawings/${folders.get(shade.shadeId)}`;
    for (const one of planDrawings(plan, shade, createdOn))
      yield* drawingFiles(folder, one, shade.safety.stampText);
  }
  const rooms = fileNames(plan.rooms.map(({ roomId }) => roomId));
  for (const view of roomViews(plan)) {
    // A window alone stands on its own front sheet.
    if (view.shades.length < 2) continue;
    const folder = `rooms/${rooms.get(view.roomId)}`;
    for (const one of roomDrawings(plan, view)) yield* drawingFiles(folder, one, jobStamp(view.shades));
  }
}

function* drawingFiles(
  folder: string,
  { drawing, fit, trueScale = drawing, toScale = true }: FittedDrawing,
  stamp: string | undefined,
): Generator<OutFile> {
  yield { path: `${folder}/${drawing.id}.svg`, content: toSvg(place(drawing, fit), "light", stamp) };
  // A picture has no lines.
  if (!toScale || drawing.primitives.every(({ kind }) => kind === "facets")) return;
  yield {
    path: `${folder}/${drawing.id}.dxf`,
    content: toDxf(trueScale, "scale" in fit ? fit : undefined, stamp),
  };
}
