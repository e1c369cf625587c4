import type { Lesson } from "../answers/index.ts";
import { toDxf } from "../drawing/dxf/index.ts";
import { type LetterOutlines, place, roomViews, speltDrawing, toSvg } from "../drawing/index.ts";
import { groupedBy } from "../figures/index.ts";
import { type Job, jobText, spellerOf } from "../job/index.ts";
import { letterOutlines } from "../letters/index.ts";
import type { CuttingPlan, Plan, ShadePlan } from "../plan/index.ts";
import { jobStamp } from "../safety/index.ts";
import { PLAN_LISTS } from "../tables/index.ts";
import type { Spell } from "../words/index.ts";
import {
  type PaperKind,
  type PrintSet,
  type WorkbookInput,
  type WorkbookProgress,
  writeWorkbook,
} from "../workbook/index.ts";
import { cuttingFiles } from "./cutting-files.ts";
import { fileNames } from "./file-names.ts";
import { planListFile } from "./list-file.ts";
import { type FittedDrawing, planDrawings, roomDrawings } from "./plan-drawings.ts";
import { writePlanJson } from "./plan-json.ts";
import { stampOf } from "./safety-stop.ts";
import { timeLeft } from "./time-left.ts";
import { usualFiles, type WorkbookFiles } from "./workbook-files.ts";
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
  /** As many as are usual for so many windows unless told. */
  files?: WorkbookFiles;
  /** Whether each shade's drawings are written as files of their own too, as they are unless told: some sixty a shade. */
  drawings?: boolean;
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
  drawings = true,
  progress,
  ...print
}: PlanFilesInput): AsyncGenerator<OutFile> {
  if (job !== undefined) yield { path: "planned-job.json", content: jobText(job), isResult: true };
  yield { path: "plan.json", content: (write) => writePlanJson(plan, write) };
  const fonts = readWorkbookFonts();
  const letters = letterOutlines(fonts);
  yield* workbooks({
    plan,
    fonts,
    ...(cutting === undefined ? {} : { cutting }),
    createdOn,
    ...(progress === undefined ? {} : { progress }),
    ...print,
  });
  const stamp = await stampOf(plan);
  const spell = spellerOf(plan.english);
  for (const list of PLAN_LISTS) yield planListFile("lists", list, { plan, spell, stamp });
  if (cutting !== undefined) yield* cuttingFiles(plan, cutting, letters);
  if (drawings)
    yield* drawingsOf({ plan, createdOn, spell, letters, ...(progress === undefined ? {} : { progress }) });
}

interface DrawingsInput extends Pick<PlanFilesInput, "plan" | "createdOn" | "progress"> {
  spell: Spell;
  letters: LetterOutlines;
}

function* drawingsOf({ plan, createdOn, progress, spell, letters }: DrawingsInput): Generator<OutFile> {
  const folders = fileNames(plan.shades.map(({ shadeId }) => shadeId));
  const left = timeLeft();
  for (const [i, shade] of plan.shades.entries()) {
    progress?.(`Drawings: ${i + 1} of ${plan.shades.length} shades${left(i / plan.shades.length)}`);
    const folder = `drawings/${folders.get(shade.shadeId)}`;
    for (const one of planDrawings(plan, shade, createdOn))
      yield* drawingFiles(folder, speltFitted(one, spell), letters, shade.safety.stampText);
  }
  const rooms = fileNames(plan.rooms.map(({ roomId }) => roomId));
  for (const view of roomViews(plan)) {
    // A window alone stands on its own front sheet.
    if (view.shades.length < 2) continue;
    const folder = `rooms/${rooms.get(view.roomId)}`;
    for (const one of roomDrawings(plan, view))
      yield* drawingFiles(folder, speltFitted(one, spell), letters, jobStamp(view.shades));
  }
}

function* workbooks({
  plan,
  files = usualFiles(plan.shades.length),
  progress,
  ...print
}: PlanFilesInput & Pick<WorkbookInput, "fonts">): Generator<OutFile> {
  const tell = (name: string) => {
    const left = timeLeft();
    return ({ done, total, pages }: WorkbookProgress) =>
      progress?.(`${name}: ${pages} pages, ${Math.round((100 * done) / total)} %${left(done / total)}`);
  };
  const workbook = (path: string, name: string, more: Partial<WorkbookInput>): OutFile => ({
    path,
    content: (write) => writeWorkbook({ plan, ...print, onProgress: tell(name), ...more }, write),
  });
  if (files === "one") {
    yield workbook("workbook.pdf", "Workbook", {});
    return;
  }
  yield workbook("workbook.pdf", "Front", { part: "front" });
  const bound = files === "room" ? byRoom(plan.shades) : plan.shades.map((shade) => [shade]);
  const names = fileNames(bound.map(([first]) => (files === "room" ? first?.roomId : first?.shadeId) ?? ""));
  const left = timeLeft();
  for (const [i, shades] of bound.entries()) {
    const [first] = shades;
    const id = (files === "room" ? first?.roomId : first?.shadeId) ?? "";
    progress?.(`Workbooks: ${i + 1} of ${bound.length}${left(i / bound.length)}`);
    yield workbook(`workbooks/${names.get(id)}.pdf`, first?.roomName ?? "", {
      part: "shades",
      shadeIds: shades.map(({ shadeId }) => shadeId),
      onProgress: () => {},
    });
  }
}

function byRoom(shades: readonly ShadePlan[]): ShadePlan[][] {
  return [...groupedBy(shades, ({ roomId }) => roomId).values()];
}

function speltFitted(one: FittedDrawing, spell: Spell): FittedDrawing {
  const { drawing, trueScale } = one;
  return {
    ...one,
    drawing: speltDrawing(drawing, spell),
    ...(trueScale === undefined ? {} : { trueScale: speltDrawing(trueScale, spell) }),
  };
}

function* drawingFiles(
  folder: string,
  { drawing, fit, trueScale = drawing, toScale = true }: FittedDrawing,
  letters: LetterOutlines,
  stamp: string | undefined,
): Generator<OutFile> {
  yield { path: `${folder}/${drawing.id}.svg`, content: toSvg(place(drawing, fit), { stamp, letters }) };
  // A picture has no lines.
  if (!toScale || drawing.primitives.every(({ kind }) => kind === "facets")) return;
  yield {
    path: `${folder}/${drawing.id}.dxf`,
    content: toDxf(trueScale, "scale" in fit ? fit : undefined, stamp),
  };
}
