import type { Lesson } from "../answers/index.ts";
import { hasTemplates } from "../drawing/index.ts";
import type { CuttingPlan, Plan, ShadePlan } from "../plan/index.ts";
import { childrenAndCords } from "./pages/caution-band.ts";
import { childSafetyPage } from "./pages/child-safety.ts";
import { offerPaper } from "./pages/client/offer-head.ts";
import { invoicePage, orderPage, quotePage } from "./pages/client/papers.ts";
import { parcelLabels } from "./pages/client/parcel-labels.ts";
import { clientSheet } from "./pages/client/shade-sheet.ts";
import { clothTickets } from "./pages/cutting-plan.ts";
import { findingsPage, jobFindingsPage } from "./pages/findings.ts";
import { forcesPage } from "./pages/forces.ts";
import { handOverSheet } from "./pages/hand-over.ts";
import { jobPages } from "./pages/job-pages.ts";
import { lengthTickets } from "./pages/length-tickets.ts";
import { lessonPages } from "./pages/lesson.ts";
import { pieceLabels } from "./pages/piece-labels.ts";
import { jobShoppingPage, shoppingPage } from "./pages/shopping.ts";
import { stepsPage } from "./pages/steps.ts";
import { stripsPages } from "./pages/strips.ts";
import { cutPage } from "./pages/table/cut-page.ts";
import { hangPage } from "./pages/table/hang-page.ts";
import { jobCard } from "./pages/table/job-card.ts";
import { makePage } from "./pages/table/make-page.ts";
import { markPage } from "./pages/table/mark-page.ts";
import { rigPage } from "./pages/table/rig-page.ts";
import { tagPage } from "./pages/tag.ts";
import { templatesPages } from "./pages/templates.ts";
import { ownFitPages, testSheetPage } from "./pages/test-sheet.ts";
import { jobWorkings, jobWorkingsPage, workingsPage } from "./pages/workings.ts";
import { inPrintOrder, type PrintSet, SET_WORDS } from "./print-sets/index.ts";
import { type ShadeContext, shadeContext } from "./shade-context.ts";
import type { Book } from "./typeset/book.ts";
import { ARMS_LENGTH, CLASS, DESK, LIST, type PageLook } from "./typeset/look.ts";

/** Pages that are handed over together, numbered by themselves. */
export interface Sheaf {
  set: PrintSet | "job";
  /** Absent for what is about the whole job. */
  shade?: ShadePlan;
  look: PageLook;
  print: () => void;
}

/** What stands at the foot of a sheaf: which it is, and for whom. */
export const SHEAF_WORDS = {
  ...SET_WORDS,
  job: { name: "The job", reader: "for everyone who works on it", about: "cautions, marks and lines" },
} satisfies Record<Sheaf["set"], unknown>;

/** All of it; what is about the job as a whole, to put in front; or the sheets of the shades without that. */
export type WorkbookPart = "whole" | "front" | "shades";

export interface SheavesInput {
  book: Book;
  plan: Plan;
  cutting?: CuttingPlan;
  shades: readonly ShadePlan[];
  sets: readonly PrintSet[];
  createdOn?: Date;
  part?: WorkbookPart;
  lessonsOf?: (shade: ShadePlan) => readonly Lesson[];
}

/** All sheaves of a workbook in the order of printing: the job, each shade with its sets, what is bought and cut. */
export function sheavesOf(input: SheavesInput): Sheaf[] {
  const sets = inPrintOrder(input.sets);
  const { part = "whole" } = input;
  return [
    ...(part === "shades" ? [] : jobFirst(input, sets)),
    ...(part === "front" ? [] : input.shades.flatMap((shade) => ofShade(input, shade, sets))),
    ...(part === "shades" ? [] : jobLast(input, sets)),
  ];
}

function jobFirst(input: SheavesInput, sets: readonly PrintSet[]): Sheaf[] {
  const { book, plan, shades } = input;
  const several = shades.length !== 1;
  const sheaf = (set: Sheaf["set"], print: () => void): Sheaf => ({ set, look: DESK, print });
  return [
    ...(shades.length === 0 ? [] : clientPapers(input, sets)),
    // What is said once belongs to the sheets by which the shades are made.
    ...(sets.includes("table") || sets.includes("steps") || shades.length === 0
      ? [sheaf("job", () => jobPages(book, plan, shades))]
      : []),
    ...(several && sets.includes("findings") ? [sheaf("findings", () => jobFindingsPage(book, plan))] : []),
  ];
}

/** What is about the whole job and goes to its client. */
function clientPapers({ book, plan, shades, createdOn }: SheavesInput, sets: readonly PrintSet[]): Sheaf[] {
  const paper = () => offerPaper(book, plan, shades, createdOn);
  const print: Partial<Record<PrintSet, () => void>> = {
    client: () => quotePage(paper()),
    order: () => orderPage(paper()),
    invoice: () => invoicePage(paper()),
    label: () => parcelLabels(book, plan, shades),
  };
  return sets.flatMap((set) => {
    const one = print[set];
    return one === undefined ? [] : [{ set, look: DESK, print: one }];
  });
}

const JOB_SETS = ["order", "invoice", "label", "shopping", "cutting", "parts"] as const;
type ShadeSet = Exclude<PrintSet, (typeof JOB_SETS)[number]>;

const LOOKS: Partial<Record<ShadeSet, PageLook>> = { table: ARMS_LENGTH, lesson: CLASS };

const SHADE_PAGES: Record<Exclude<ShadeSet, "lesson">, (context: ShadeContext) => void> = {
  client: clientSheet,
  handover: handOverSheet,
  table: (context) => {
    for (const page of tablePages(context.shade)) page(context);
  },
  steps: stepsPage,
  strips: (context) => {
    stripsPages(context);
    // A shade of straight lines and square corners needs none.
    if (context.shade.existing === undefined && hasTemplates(context.shade)) templatesPages(context);
  },
  tag: tagPage,
  "child-safety": childSafetyPage,
  findings: findingsPage,
  workings: (context) => {
    forcesPage(context);
    workingsPage(context);
  },
};

/** Of a shade that hangs already nothing is cut, and only new rings are marked and sewn. */
function tablePages({ existing }: ShadePlan): ((context: ShadeContext) => void)[] {
  if (existing === undefined) return [jobCard, cutPage, markPage, rigPage, makePage, hangPage];
  const sewing = existing.takes.rings > 0 || existing.takes.sleeves;
  return [
    jobCard,
    ...(existing.takes.rings > 0 ? [markPage] : []),
    rigPage,
    ...(sewing ? [makePage] : []),
    hangPage,
  ];
}

function isOfShade(set: PrintSet): set is ShadeSet {
  return !JOB_SETS.some((one) => one === set);
}

function ofShade(
  { book, plan, shades, createdOn, lessonsOf, part }: SheavesInput,
  shade: ShadePlan,
  sets: readonly PrintSet[],
): Sheaf[] {
  const alone = shades.length === 1;
  // One for all sheaves of a shade, so that each drawing is made once, and let go with the last of them.
  let context: ShadeContext | undefined;
  // Strips and templates are for cloth that is marked and cut.
  const marks = shade.existing === undefined || shade.existing.takes.rings > 0;
  const own = sets
    .filter(isOfShade)
    .filter((set) => (set !== "strips" || marks) && (set !== "lesson" || lessonsOf !== undefined));
  const sheaves = own.map(
    (set, i): Sheaf => ({
      set,
      shade,
      look: LOOKS[set] ?? DESK,
      print: () => {
        context ??= shadeContext(book, plan, shade, alone, createdOn);
        if (set === "lesson") lessonPages(book, plan, lessonsOf?.(shade) ?? []);
        else SHADE_PAGES[set](context);
        if (i === own.length - 1) context = undefined;
      },
    }),
  );
  if (!sets.includes("shopping") || buysTogether(plan, shades) || part === "shades") return sheaves;
  const print = () => shoppingPage(shadeContext(book, plan, shade, alone, createdOn));
  return [...sheaves, { set: "shopping", shade, look: LIST, print }];
}

/** A job that is printed whole is bought for once. */
function buysTogether(plan: Plan, shades: readonly ShadePlan[]): boolean {
  return shades.length === plan.shades.length;
}

function jobLast({ book, plan, cutting, shades }: SheavesInput, sets: readonly PrintSet[]): Sheaf[] {
  const sheaf = (set: PrintSet, print: () => void, look = DESK): Sheaf => ({ set, look, print });
  const workings = sets.includes("workings") ? jobWorkings(plan, shades) : [];
  return [
    ...(workings.length > 0 ? [sheaf("workings", () => jobWorkingsPage(book, plan, workings))] : []),
    ...(sets.includes("shopping") && buysTogether(plan, shades) && shades.length > 0
      ? [sheaf("shopping", () => jobShoppingPage(book, plan), LIST)]
      : []),
    ...(sets.includes("cutting") && cutting !== undefined
      ? [sheaf("cutting", () => cuttingPages(book, plan, cutting, shades))]
      : []),
    ...(sets.includes("parts")
      ? [
          sheaf("parts", () => {
            testSheetPage(book);
            ownFitPages(book, plan, shades);
          }),
        ]
      : []),
  ];
}

/** The cutting of the whole job: cloth by cloth, the lengths, a label for each piece. */
function cuttingPages(book: Book, plan: Plan, cutting: CuttingPlan, shades: readonly ShadePlan[]): void {
  const caution = childrenAndCords(shades[0]?.cautions ?? []);
  cutting.cloths.forEach((cloth, i) => {
    clothTickets(book, cutting, cloth, i === 0 ? caution : undefined);
  });
  lengthTickets(book, cutting);
  pieceLabels(book, cutting, plan);
}
