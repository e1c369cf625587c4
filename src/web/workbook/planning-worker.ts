import "../no-code-from-text.ts";
import { expose, transfer } from "comlink";
import { jobLessons } from "../../answers/index.ts";
import { type Job, jobText } from "../../job/index.ts";
import { lettersWithoutShape, openFaces, withoutShapeText } from "../../letters/index.ts";
import {
  buyAsCut,
  type CuttingPlan,
  JobPlanner,
  type Plan,
  plan,
  planAndCut,
  proveRemedies,
  shareEqual,
  withSurface,
} from "../../plan/index.ts";
import {
  countPages,
  makeWorkbook,
  type PaperKind,
  PRINT_SETS,
  type PrintSet,
  type WorkbookProgress,
} from "../../workbook/index.ts";
import { type SurfaceRead, surfaceKey } from "../picture/surface-read.ts";
import { englishHere } from "../spelt/english-here.ts";
import { summaryOf } from "../state/job-summary.ts";
import { type SummaryNews, SummaryTeller } from "../state/summary-news.ts";
import { withLife } from "../workers/worker-life.ts";
import { fetchWorkbookFonts } from "./fonts.ts";

/** Cloths that are hung for the sheet of findings alone, seconds each: those of a house, not of a contract. */
const MOST_HUNG = 8;

/** With what the screen has read of each cloth as it hangs; of so many shades it is read here where it has not. */
function withSurfacesRead(job: Job, plan: Plan, read: readonly SurfaceRead[], mostHung: number): Plan {
  const isFew = plan.shades.filter(({ folds }) => folds === undefined).length <= mostHung;
  return withSurface(plan, (shade) => {
    const key = surfaceKey(shade, job.units);
    return read.find((one) => one.key === key)?.findings ?? (isFew ? undefined : []);
  });
}

export type PageCounts = Awaited<ReturnType<typeof countPages>>;

/** What was last summed up: a job comes as a copy, and shares again with the one before what did not change. */
const planner = new JobPlanner();
let last: Job | undefined;
const teller = new SummaryTeller();

/** The heavy work, off the thread that draws the page. Plans are made here too: a job is smaller to send than its plan. */
const service = {
  /** @param known the name of the last answer that the asker has */
  summary(job: Job, known: string | undefined): SummaryNews {
    last = shareEqual(last, job);
    return teller.tell(summaryOf(planner.plan(last)), known);
  },

  async workbook(
    job: Job,
    paper: PaperKind,
    sets: PrintSet[],
    shadeIds: string[] | undefined,
    onProgress: (progress: WorkbookProgress) => void,
    cutting: CuttingPlan | undefined,
    read: readonly SurfaceRead[],
  ): Promise<Uint8Array> {
    // One shade of a large job need not wait for two thousand.
    const planned =
      cutting === undefined
        ? planAndCut(job, shadeIds === undefined ? {} : { only: shadeIds })
        : { plan: buyAsCut(job, plan(job), cutting), cutting };
    const bytes = await makeWorkbook({
      ...planned,
      plan: sets.includes("findings")
        ? withSurfacesRead(job, proveRemedies(job, planned.plan), read, MOST_HUNG)
        : proveRemedies(job, planned.plan),
      lessonsOf: jobLessons(job),
      english: englishHere(job),
      sets,
      paper,
      fonts: await fetchWorkbookFonts(),
      createdOn: new Date(),
      onProgress,
    });
    return transfer(bytes, [bytes.buffer]);
  },

  /** Pages of every set, of these shades. */
  async pages(
    job: Job,
    paper: PaperKind,
    shadeIds: string[] | undefined,
    read: readonly SurfaceRead[],
  ): Promise<PageCounts> {
    const planned = planAndCut(job, shadeIds === undefined ? {} : { only: shadeIds });
    return countPages({
      ...planned,
      plan: withSurfacesRead(job, planned.plan, read, 0),
      lessonsOf: jobLessons(job),
      english: englishHere(job),
      sets: PRINT_SETS,
      paper,
      fonts: await fetchWorkbookFonts(),
    });
  },

  /** A sentence on letters of the job that no page can show, where there are any. */
  async lettersLacking(job: Job): Promise<string | undefined> {
    const { regular } = openFaces(await fetchWorkbookFonts());
    return withoutShapeText(lettersWithoutShape(jobText(job), regular));
  },
};

export type PlanningService = typeof service;

expose(withLife(service));
