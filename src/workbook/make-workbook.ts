import type { CuttingPlan, Plan, ShadePlan } from "../plan/index.ts";
import { Book } from "./book.ts";
import { coverPage } from "./pages/cover.ts";
import { clothTickets, lengthTickets } from "./pages/cutting-plan.ts";
import { guide } from "./pages/guide.ts";
import { jobFront } from "./pages/job-front.ts";
import { pieceLabels } from "./pages/piece-labels.ts";
import { PAPERS, type PaperKind } from "./paper.ts";
import { closeDocument, openDocument } from "./pdf-kit.ts";
import { chaptersOf } from "./shade-chapters.ts";
import { type ShadeContext, shadeContext } from "./shade-context.ts";
import { openFaces, type WorkbookFonts } from "./typeface.ts";

export interface WorkbookProgress {
  /** Parts set so far, and in all: the front page, and every chapter of every shade. */
  done: number;
  total: number;
  pages: number;
}

export interface WorkbookInput {
  plan: Plan;
  /** How everything of the job is cut: tickets for each cloth and length, and labels. */
  cutting?: CuttingPlan;
  /** Only these shades, in the order of the job; all of them unless given. */
  shadeIds?: readonly string[];
  paper: PaperKind;
  fonts: WorkbookFonts;
  /** Written into the document and at the foot of each page; left out, the same plan gives the same bytes. */
  createdOn?: Date;
  onProgress?: (progress: WorkbookProgress) => void;
  /** Looked at between chapters. */
  signal?: AbortSignal;
}

const LANGUAGE = "en";

/**
 * The workbook as PDF: for several shades a front page of the job, then each shade from its cover to its
 * marking strips. Rejects with the signal’s reason when it is stopped.
 */
export async function makeWorkbook(input: WorkbookInput): Promise<Uint8Array> {
  const { plan, fonts, createdOn } = input;
  const paper = PAPERS[input.paper];
  const faces = openFaces(fonts);
  const shades = chosen(plan, input.shadeIds);
  const title = `${shades.length === 1 ? `${shades[0]?.windowName}, ${plan.jobName}` : plan.jobName}: workbook`;
  const doc = openDocument(
    {
      title,
      subject: "How to cut, make, rig and hang the shades of this job",
      lang: LANGUAGE,
      widthPt: paper.widthPt,
      heightPt: paper.heightPt,
      createdOn,
    },
    faces,
  );
  const book = new Book(doc, faces, paper);
  book.tags.open("Document");
  book.run({ job: plan.jobName, remark: remark(plan, createdOn) });
  await setParts(book, parts(book, plan, shades, input.cutting), input);
  book.finish();
  book.tags.close();
  return closeDocument(doc);
}

function chosen(plan: Plan, shadeIds: readonly string[] | undefined): ShadePlan[] {
  if (shadeIds === undefined) return plan.shades;
  const unknown = shadeIds.find((id) => !plan.shades.some((shade) => shade.shadeId === id));
  if (unknown !== undefined) throw new Error(`invalid shadeIds: ${unknown}`);
  return plan.shades.filter((shade) => shadeIds.includes(shade.shadeId));
}

function remark(plan: Plan, createdOn: Date | undefined): string | undefined {
  const parts = [
    ...(plan.demo ? ["Demo: an invented job"] : []),
    ...(createdOn === undefined ? [] : [createdOn.toISOString().slice(0, 10)]),
  ];
  return parts.length === 0 ? undefined : parts.join(" · ");
}

const MOST_NAMED = 4;

/** For the pages of the whole job: which of its shades a rule on cords stops. */
function jobStamp(shades: readonly ShadePlan[]): string | undefined {
  const stopped = shades.filter(({ safety }) => safety.stamp);
  const [first] = stopped;
  if (first === undefined) return undefined;
  const names = stopped.slice(0, MOST_NAMED).map(({ windowName }) => windowName);
  if (stopped.length > MOST_NAMED) names.push(`${stopped.length - MOST_NAMED} more`);
  const many = stopped.length > 1;
  return `Rules on cords failed for ${stopped.length} of ${shades.length} shades: ${names.join(", ")}. Do not sell, give away or install ${many ? "them as they are" : "it as it is"} planned.`;
}

type Part = () => void;

/** Everything to set, piece by piece, so that work can stop between two of them. */
function parts(
  book: Book,
  plan: Plan,
  shades: readonly ShadePlan[],
  cutting: CuttingPlan | undefined,
): Part[] {
  book.run({ stamp: jobStamp(shades) });
  const anchorOf = (shade: ShadePlan) => `shade-${plan.shades.indexOf(shade) + 1}`;
  const front: Part[] = shades.length === 1 ? [] : [() => jobFront(book, plan, shades, anchorOf)];
  return [
    ...front,
    ...shades.flatMap((shade) =>
      shadeParts(shadeContext(book, plan, shade, shades.length === 1), anchorOf(shade)),
    ),
    ...(cutting === undefined ? [] : cuttingParts(book, cutting, jobStamp(shades))),
  ];
}

/** The cutting of the whole job, behind its shades: cloth by cloth, the lengths, a label for each piece. */
function cuttingParts(book: Book, cutting: CuttingPlan, stamp: string | undefined): Part[] {
  const head = (title: string, name: string) => ({ number: 0, title, anchor: `cutting-${name}` });
  return [
    () => {
      book.tags.open("Sect", { title: "Cutting plan" });
      book.run({ shade: "", stamp });
    },
    ...cutting.cloths.map(
      (cloth) => () => clothTickets(book, cutting, cloth, head(`Cutting: ${cloth.clothName}`, cloth.clothId)),
    ),
    () => lengthTickets(book, cutting, head("Cutting to length", "lengths")),
    () => pieceLabels(book, cutting, head("Labels for the pieces", "labels")),
    () => book.tags.leave(),
  ];
}

function shadeParts(context: ShadeContext, anchor: string): Part[] {
  const { book, shade } = context;
  const chapters = chaptersOf(anchor, shade);
  return [
    () => {
      book.tags.open("Sect", { title: shade.windowName });
      book.run({ shade: shade.windowName, stamp: shade.safety.stampText });
      coverPage(context, anchor);
      guide(context, chapters);
    },
    ...chapters.map((chapter) => () => chapter.set(context, chapter)),
    () => {
      book.tags.leave();
      book.endBookmark();
    },
  ];
}

async function setParts(
  book: Book,
  all: readonly Part[],
  { onProgress, signal }: WorkbookInput,
): Promise<void> {
  for (const [i, part] of all.entries()) {
    signal?.throwIfAborted();
    part();
    onProgress?.({ done: i + 1, total: all.length, pages: book.pageCount });
    if (onProgress !== undefined || signal !== undefined) await nextTurn();
  }
  signal?.throwIfAborted();
}

/** Lets messages in between two parts: a stop can only be heard when the thread is free for a moment. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
