import "../no-code-from-text.ts";
import { expose, transfer } from "comlink";
import { jobLessons } from "../../answers/index.ts";
import { type Job, jobText } from "../../job/index.ts";
import { lettersWithoutShape, openFaces, withoutShapeText } from "../../letters/index.ts";
import {
  buyAsCut,
  type CuttingPlan,
  JobPlanner,
  plan,
  planAndCut,
  proveRemedies,
  shareEqual,
} from "../../plan/index.ts";
import {
  countPages,
  makeWorkbook,
  type PaperKind,
  PRINT_SETS,
  type PrintSet,
  type WorkbookProgress,
} from "../../workbook/index.ts";
import { summaryOf } from "../state/job-summary.ts";
import { type SummaryNews, SummaryTeller } from "../state/summary-news.ts";
import { withLife } from "../workers/worker-life.ts";
import { fetchWorkbookFonts } from "./fonts.ts";

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
  ): Promise<Uint8Array> {
    // One shade of a large job need not wait for two thousand.
    const planned =
      cutting === undefined
        ? planAndCut(job, shadeIds === undefined ? {} : { only: shadeIds })
        : { plan: buyAsCut(job, plan(job), cutting), cutting };
    const bytes = await makeWorkbook({
      ...planned,
      plan: proveRemedies(job, planned.plan),
      lessonsOf: jobLessons(job),
      sets,
      paper,
      fonts: await fetchWorkbookFonts(),
      createdOn: new Date(),
      onProgress,
    });
    return transfer(bytes, [bytes.buffer]);
  },

  /** Pages of every set, of these shades. */
  async pages(job: Job, paper: PaperKind, shadeIds: string[] | undefined): Promise<PageCounts> {
    return countPages({
      ...planAndCut(job, shadeIds === undefined ? {} : { only: shadeIds }),
      lessonsOf: jobLessons(job),
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
