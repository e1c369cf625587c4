import { drawLegend, drawSheet } from "../../drawing/index.ts";
import { isGrave, SEVERITIES, SEVERITY_WORDS, severityCounts } from "../../figures/index.ts";
import { asShown, type Plan, type ShadePlan } from "../../plan/index.ts";
import { type Caution, LINE_SHEETS } from "../../shade-plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Book } from "../typeset/book.ts";
import { columnBlocks } from "../typeset/column-blocks.ts";
import { figure } from "../typeset/figure.ts";
import { openPage, section } from "../typeset/heading.ts";
import { columns } from "../typeset/paper.ts";
import { setLines } from "../typeset/paragraph.ts";
import {
  drawSeverityMark,
  MARK_WIDTH,
  SEVERITY_MEANINGS,
  SEVERITY_PAINTS,
} from "../typeset/severity-mark.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";
import { roomPages } from "./rooms.ts";

const LEGEND_COLUMNS = 3;
const LEAST_LEGEND_PT = 200;
const CAPTION_PT = 20;

/** What is said once for a job: its shades and rooms, the cautions with their sources, the marks, the legend. */
export function jobPages(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  openPage(book, {
    title: plan.jobName,
    lead: `${plan.client === undefined ? "" : `For ${plan.client}. `}Said once for the whole job: cautions, marks and lines.`,
  });
  if (shades.length > 1) shadeTable(book, plan, shades);
  cautions(book, shades);
  marks(book);
  legend(book, plan, shades);
  roomPages(book, plan, shades);
}

function shadeTable(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  const grave = ({ findings }: ShadePlan) => severityCounts(asShown(findings).filter(isGrave));
  table(book, {
    title: "Shades of the job",
    heading: "Shades",
    columns: [
      { title: "Window", share: 3.2 },
      { title: "Room", share: 2.2 },
      { title: "Width", share: 1.3, align: "measure" },
      { title: "Length", share: 1.3, align: "measure" },
      { title: "Findings", share: 1.2 },
    ],
    rows: shades.map((shade): CellLike[] => [
      { text: shade.windowName, strong: true },
      shade.roomName,
      lengthText(shade.size.finishedWidthMm, plan.units),
      lengthText(shade.size.finishedLengthMm, plan.units),
      grave(shade),
    ]),
  });
}

/** Each caution of any of the shades once; what is about the cords of one of them stands with that one. */
function cautions(book: Book, shades: readonly ShadePlan[]): void {
  const known = new Map<string, Caution>();
  for (const caution of shades.flatMap((shade) => shade.cautions)) {
    const own = caution.id === "cords-of-this-shade" || caution.id === "rules-of-the-place";
    if (shades.length === 1 || !own) known.set(`${caution.title} ${caution.text}`, caution);
  }
  if (known.size === 0) return;
  section(book, "Before you begin", 80);
  columnBlocks(
    book,
    [...known.values()].map(({ title, text, cite }) => ({
      title,
      text,
      ...(cite === undefined ? {} : { small: `${citeText(cite)}.` }),
    })),
  );
}

/** The four marks of findings, side by side. */
function marks(book: Book): void {
  section(book, "Marks beside findings", 60);
  const top = book.y;
  const word = TYPE.strong;
  const ends = SEVERITIES.map((severity, i) => {
    const { x, width } = columns(book.paper, i * 3, 3);
    book.tags.artifact(() => drawSeverityMark(book.pen, severity, x, top + word.leadingPt / 2));
    const name = [SEVERITY_WORDS[severity]];
    book.tags.mark("H4", () =>
      setLines(book, name, x + MARK_WIDTH, top, painted(word, SEVERITY_PAINTS[severity])),
    );
    const meaning = book.lines(SEVERITY_MEANINGS[severity], width, TYPE.note);
    const under = top + word.leadingPt + 2;
    book.tags.mark("P", () => setLines(book, meaning, x, under, TYPE.note));
    return under + meaning.length * TYPE.note.leadingPt;
  });
  book.y = Math.max(...ends) + 14;
}

/** Lines, tints and cords of the drawings of the first shade of each style and lift. */
function legend(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  const kinds = new Map(shades.map((shade) => [`${shade.style} ${shade.lift.kind}`, shade]));
  const drawings = [...kinds.values()].flatMap((shade) =>
    LINE_SHEETS.map((kind) => drawSheet(kind, plan, shade)),
  );
  if (drawings.length === 0) return;
  section(book, "In the drawings", LEAST_LEGEND_PT);
  figure(book, drawLegend(drawings, LEGEND_COLUMNS), book.room - CAPTION_PT);
}
