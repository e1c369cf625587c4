import type { Plan, ShadePlan } from "../../plan/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Book } from "../book.ts";
import { openChapter, section } from "../heading.ts";
import { notedList } from "../noted-list.ts";
import { paragraph, setLines } from "../paragraph.ts";
import { table } from "../table.ts";
import type { CellLike } from "../table-spec.ts";
import { painted, TYPE } from "../type-scale.ts";
import { findingsList } from "./findings.ts";
import { roomPages } from "./rooms.ts";
import { count } from "./sentence.ts";
import { shoppingAndCost } from "./shopping.ts";
import { workingEntries } from "./working-text.ts";

/** The whole job before its shades: which they are, what stands in the way, what to buy for all of them. */
export function jobFront(
  book: Book,
  plan: Plan,
  shades: readonly ShadePlan[],
  anchorOf: (shade: ShadePlan) => string,
): void {
  book.run({ chapter: "The job" });
  book.turnPage();
  book.bookmark("The job", true);
  frontTitle(book, plan, shades.length);
  shadeTable(book, plan, shades, anchorOf);
  if (plan.findings.length > 0) {
    section(book, "Findings for the whole job", 80);
    findingsList(book, plan.findings);
  }
  roomPages(book, plan, shades);
  openChapter(book, {
    number: 0,
    title: "Shopping and cost of the whole job",
    anchor: "job-shopping",
    lead: "All shades of the job together, rounded once.",
  });
  shoppingAndCost(book, plan.cost);
  if (plan.workings.length > 0) {
    section(book, "How the sums came about", 80);
    notedList(book, workingEntries(plan, plan.workings, true));
  }
  book.endBookmark();
}

function frontTitle(book: Book, plan: Plan, shades: number): void {
  const large = book.lines(plan.jobName, book.width, TYPE.title);
  const style = large.length > 2 ? TYPE.section : TYPE.title;
  const lines = large.length > 2 ? book.lines(plan.jobName, book.width, style) : large;
  const { y } = book;
  book.tags.mark("P", () =>
    setLines(book, [`Workbook · ${count(shades, "shade")}`], book.left, y, TYPE.label),
  );
  const titleY = y + TYPE.label.leadingPt + 3;
  book.tags.mark("H1", () => setLines(book, lines, book.left, titleY, style));
  book.y = titleY + lines.length * style.leadingPt + 3;
  if (plan.client !== undefined) paragraph(book, `For ${plan.client}`, { style: TYPE.lead });
  book.y += 10;
}

function shadeTable(
  book: Book,
  plan: Plan,
  shades: readonly ShadePlan[],
  anchorOf: (shade: ShadePlan) => string,
): void {
  const grave = (shade: ShadePlan) =>
    shade.findings.filter(({ severity }) => severity === "stop" || severity === "fix").length;
  const rows = shades.map((shade): CellLike[] => [
    { text: shade.windowName, strong: true },
    shade.roomName,
    lengthText(shade.size.finishedWidthMm, plan.units),
    lengthText(shade.size.finishedLengthMm, plan.units),
    grave(shade) === 0 ? "" : `${grave(shade)} to fix`,
    { text: "", sign: { widthPt: 0, draw: (x, y) => pageNumber(book, anchorOf(shade), x, y) } },
  ]);
  table(book, {
    title: "Shades of the job",
    heading: "Shades",
    columns: [
      { title: "Window", share: 3.2 },
      { title: "Room", share: 2 },
      { title: "Width", share: 1.3, align: "measure" },
      { title: "Length", share: 1.3, align: "measure" },
      { title: "Findings", share: 1 },
      { title: "Page", share: 0.6 },
    ],
    rows,
  });
}

/** The page on which a shade begins: known only at the end. */
function pageNumber(book: Book, anchor: string, x: number, middleY: number): void {
  const style = painted(TYPE.cellStrong, "accent");
  book.later(() =>
    book.tags.artifact(() =>
      book.pen.text(String(book.pageOf(anchor)), x, middleY + style.sizePt * 0.33, style),
    ),
  );
}
