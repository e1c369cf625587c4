import type { Lesson } from "../answers/index.ts";
import { type English, spellerOf } from "../job/index.ts";
import { openFaces, type WorkbookFonts } from "../letters/index.ts";
import type { CuttingPlan, Plan, ShadePlan } from "../plan/index.ts";
import { jobStamp, madeForText } from "../safety/index.ts";
import { type PrintSet, usualSets } from "./print-sets/index.ts";
import { SHEAF_WORDS, type Sheaf, sheavesOf, type WorkbookPart } from "./sheaves.ts";
import { Book } from "./typeset/book.ts";
import { dayText } from "./typeset/day-text.ts";
import { PAPERS, type PaperKind } from "./typeset/paper.ts";
import { joined, openDocument, writeOut } from "./typeset/pdf-kit.ts";

export interface WorkbookProgress {
  /** Sheaves set so far, and in all: each set of each shade is one. */
  done: number;
  total: number;
  pages: number;
  /** The set that was set last. */
  set: Sheaf["set"];
}

export interface WorkbookInput {
  plan: Plan;
  /** How everything of the job is cut: tickets for each cloth and length, and labels. */
  cutting?: CuttingPlan;
  /** The lessons of a shade, made from its job; without it none are printed. */
  lessonsOf?: (shade: ShadePlan) => readonly Lesson[];
  /** In whose English it is read; in the plan’s own unless told. */
  english?: English;
  /** Only these shades, in the order of the job; all of them unless given. */
  shadeIds?: readonly string[];
  /** Where a job is printed in several files; the whole of it unless told. */
  part?: WorkbookPart;
  /** What is printed, in print order; the usual sets unless told. */
  sets?: readonly PrintSet[];
  paper: PaperKind;
  fonts: WorkbookFonts;
  /** Written into the document and at the foot of each page; left out, the same plan gives the same bytes. */
  createdOn?: Date;
  onProgress?: (progress: WorkbookProgress) => void;
  /** Looked at between two sheaves. */
  signal?: AbortSignal;
}

/** Tags of BCP 47. */
const LANGUAGES = { british: "en-GB", american: "en-US" } as const;

/**
 * The workbook as PDF, sheaf by sheaf: each set of each shade stands alone. Rejects with the signal’s reason when it is
 * stopped.
 */
export async function makeWorkbook(input: WorkbookInput): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  await writeWorkbook(input, async (chunk) => {
    chunks.push(chunk);
  });
  return joined(chunks);
}

/**
 * The same, written while it is made: a job of any size needs the memory of one sheaf.
 * @param write called with one piece after the other, each only when the one before is written
 */
export async function writeWorkbook(
  input: WorkbookInput,
  write: (chunk: Uint8Array) => Promise<void>,
): Promise<void> {
  const { plan, fonts, createdOn, part, english = plan.english } = input;
  const { sets = usualSets(plan.shades.length) } = input;
  const paper = PAPERS[input.paper];
  const faces = openFaces(fonts);
  const spell = spellerOf(english);
  const shades = chosen(plan, input.shadeIds);
  const title = `${shades.length === 1 ? `${shades[0]?.windowName}, ${plan.jobName}` : plan.jobName}: workbook`;
  const doc = openDocument(
    {
      title: spell(title),
      subject: "How to cut, make, rig and hang the shades of this job",
      lang: LANGUAGES[english.spelling],
      widthPt: paper.widthPt,
      heightPt: paper.heightPt,
      createdOn,
    },
    faces,
  );
  const out = writeOut(doc, write);
  const book = new Book(doc, faces, paper, spell);
  book.tags.open("Document");
  book.run({ remark: remark(plan, createdOn) });
  const sheaves = sheavesOf({
    book,
    plan,
    shades,
    sets,
    cutting: input.cutting,
    createdOn,
    lessonsOf: input.lessonsOf,
    part,
  });
  const stamp = jobStamp(shades);
  await print(book, plan, sheaves, stamp, input, out.written);
  book.tags.close();
  doc.end();
  await out.ended;
}

/** Pages of each set, `job` for what is said once: set and thrown away, since nothing less tells it truly. */
export async function countPages(input: WorkbookInput): Promise<Partial<Record<Sheaf["set"], number>>> {
  const counts: Partial<Record<Sheaf["set"], number>> = {};
  let before = 0;
  const onProgress = (progress: WorkbookProgress) => {
    counts[progress.set] = (counts[progress.set] ?? 0) + progress.pages - before;
    before = progress.pages;
    input.onProgress?.(progress);
  };
  await writeWorkbook({ ...input, onProgress }, async () => {});
  return counts;
}

function chosen(plan: Plan, shadeIds: readonly string[] | undefined): ShadePlan[] {
  if (shadeIds === undefined) return plan.shades;
  const unknown = shadeIds.find((id) => !plan.shades.some((shade) => shade.shadeId === id));
  if (unknown !== undefined) throw new Error(`invalid shadeIds: ${unknown}`);
  return plan.shades.filter((shade) => shadeIds.includes(shade.shadeId));
}

/** At the foot of every page: for whom the shades are made, and when it was printed. */
function remark(plan: Plan, createdOn: Date | undefined): string {
  const parts = [
    madeForText(plan),
    ...(plan.demo ? ["Demo: an invented job"] : []),
    ...(createdOn === undefined ? [] : [dayText(createdOn)]),
  ];
  return parts.join(" · ");
}

async function print(
  book: Book,
  plan: Plan,
  sheaves: readonly Sheaf[],
  stamp: string | undefined,
  { onProgress, signal }: WorkbookInput,
  written: () => Promise<void>,
): Promise<void> {
  let last: ShadePlan | undefined;
  for (const [i, sheaf] of sheaves.entries()) {
    signal?.throwIfAborted();
    if (last !== sheaf.shade) {
      if (last !== undefined) book.closeBookmark();
      if (sheaf.shade !== undefined) book.openBookmark(sheaf.shade.windowName);
      last = sheaf.shade;
    }
    printSheaf(book, plan, sheaf, stamp);
    await written();
    onProgress?.({ done: i + 1, total: sheaves.length, pages: book.pageCount, set: sheaf.set });
    if (onProgress !== undefined || signal !== undefined) await nextTurn();
  }
  signal?.throwIfAborted();
}

function printSheaf(
  book: Book,
  plan: Plan,
  { set, shade, look, print: set_ }: Sheaf,
  stamp: string | undefined,
): void {
  const { name, reader } = SHEAF_WORDS[set];
  book.look = look;
  book.run({
    job: plan.jobName,
    shade:
      shade === undefined ? "" : [shade.roomName, shade.windowName].filter((word) => word !== "").join(" · "),
    set: name,
    reader,
    stamp: shade === undefined ? stamp : shade.safety.stampText,
  });
  book.openBookmark(name);
  book.tags.open("Sect", { title: shade === undefined ? name : `${name}: ${shade.windowName}` });
  set_();
  book.tags.close();
  book.closeBookmark();
  book.endSheaf();
}

/** Lets messages in between two sheaves: a stop can only be heard when the thread is free for a moment. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
