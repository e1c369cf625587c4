import { toDxf } from "../drawing/dxf/index.ts";
import { place, roomViews, toSvg } from "../drawing/index.ts";
import type { CuttingPlan, Plan } from "../plan/index.ts";
import { jobStamp } from "../safety/index.ts";
import { allLists, toCsv } from "../tables/index.ts";
import { makeWorkbook, type PaperKind } from "../workbook/index.ts";
import { cuttingFiles } from "./cutting-files.ts";
import { fileNames } from "./file-names.ts";
import { type FittedDrawing, planDrawings, roomDrawings } from "./plan-drawings.ts";
import { workbookFonts } from "./workbook-fonts.ts";
import type { OutFile } from "./write-files.ts";

/**
 * Everything that is written for a plan, one file at a time, so that a job of two thousand shades
 * needs no more memory than one.
 */
export async function* planFiles(
  plan: Plan,
  cutting: CuttingPlan | undefined,
  paper: PaperKind,
  createdOn: Date,
): AsyncGenerator<OutFile> {
  yield { path: "plan.json", content: `${JSON.stringify(plan, null, 2)}\n` };
  yield {
    path: "workbook.pdf",
    content: await makeWorkbook({
      plan,
      ...(cutting === undefined ? {} : { cutting }),
      paper,
      fonts: workbookFonts(),
      createdOn,
    }),
  };
  const stamp = jobStamp(plan.shades);
  for (const list of allLists(plan)) yield { path: `lists/${list.name}.csv`, content: toCsv(list, stamp) };
  if (cutting !== undefined) yield* cuttingFiles(cutting, stamp);
  const folders = fileNames(plan.shades.map(({ shadeId }) => shadeId));
  for (const shade of plan.shades) {
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
  { drawing, fit, trueScale = drawing }: FittedDrawing,
  stamp: string | undefined,
): Generator<OutFile> {
  yield { path: `${folder}/${drawing.id}.svg`, content: toSvg(place(drawing, fit), "light", stamp) };
  yield {
    path: `${folder}/${drawing.id}.dxf`,
    content: toDxf(trueScale, "scale" in fit ? fit : undefined, stamp),
  };
}
