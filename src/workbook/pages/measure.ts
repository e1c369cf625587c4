import type { Opening } from "../../job/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { type FactLine, factTable } from "../typeset/fact-list.ts";
import { figureBeside } from "../typeset/figure.ts";
import { type ChapterHead, openChapter, section } from "../typeset/heading.ts";
import { notedList } from "../typeset/noted-list.ts";
import type { Span } from "../typeset/paper.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { table, tablesBeside } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { TYPE } from "../typeset/type-scale.ts";
import { measuringFigure } from "./measuring-figure.ts";
import { workingEntries } from "./working-text.ts";

/** A blank to write a measurement into by hand, pt. */
const BLANK = { width: 92, height: 16 };
const WRITE_ROW_PT = 22;

/** What was measured, what was taken off or added, how square it is, and blanks to measure again. */
export function measurePage(context: ShadeContext, head: ChapterHead): void {
  const { book, shade } = context;
  openChapter(book, {
    ...head,
    lead: "Measure again with a steel tape before any cloth is cut, and write what you find beside what was planned.",
  });
  const drawing = measuringFigure(shade.size.openingWidthMm, shade.size.openingHeightMm);
  figureBeside(book, drawing, { figureColumns: 4, maxHeight: 225 }, (right) => again(context, right));
  toMeasure(context);
  result(context);
  const sums = shade.workings.filter(({ id }) => id.startsWith("measure.finished-"));
  if (sums.length > 0) {
    section(book, "How the size came about", 80);
    notedList(book, workingEntries(context.plan, sums, false));
  }
}

interface Asked {
  name: string;
  plannedMm?: number;
}

/** Everything to measure, in the order of the numbers in the figure. */
function asked(opening: Opening | undefined): Asked[] {
  const at = (names: readonly string[], values: readonly number[] = []): Asked[] =>
    names.map((name, i) => ({ name, plannedMm: values[i] }));
  return [
    ...at(["Width, top", "Width, middle", "Width, bottom"], opening?.widthsMm),
    ...at(["Height, left", "Height, centre", "Height, right"], opening?.heightsMm),
    ...at(["Diagonal from top left", "Diagonal from top right"], opening?.diagonalsMm),
    { name: "Depth of the recess", plannedMm: opening?.recessDepthMm },
    { name: "Sill above the floor", plannedMm: opening?.sillAboveFloorMm },
  ];
}

function again({ book, shade, length }: ShadeContext, { x, width }: Span): void {
  const blank = {
    text: "",
    sign: {
      widthPt: 0,
      draw: (left: number, middleY: number) =>
        book.pen.box(left, middleY - BLANK.height / 2 + 0.5, BLANK.width, BLANK.height),
    },
  };
  const rows = asked(shade.opening).map(({ name, plannedMm }, i): CellLike[] => [
    { text: String(i + 1), quiet: true },
    name,
    plannedMm === undefined ? { text: "not measured", quiet: true } : length(plannedMm),
    blank,
  ]);
  table(book, {
    title: "Measurements planned from, with blanks to measure again",
    x,
    width,
    columns: [
      { title: "", share: 0.4 },
      { title: "Seen from the room", share: 2.6 },
      { title: "Planned from", share: 1.9, align: "measure" },
      { title: "Measured again", share: 2.4 },
    ],
    rows,
    rowHeightPt: WRITE_ROW_PT,
  });
}

function toMeasure({ book, shade }: ShadeContext): void {
  const { toMeasure: missing } = shade.size;
  if (missing.length === 0) return;
  paragraph(book, `Still to measure: ${missing.join("; ")}.`, { style: TYPE.strong, after: 10 });
}

function result({ book, shade, length }: ShadeContext): void {
  const { size } = shade;
  const line = (label: string, lengthMm: number | undefined): FactLine[] =>
    lengthMm === undefined ? [] : [{ label, text: length(lengthMm) }];
  const finished = [
    ...line("Width", size.finishedWidthMm),
    ...line("Length", size.finishedLengthMm),
    ...line("Board", size.boardLengthMm),
    ...line("Top line above the floor", size.topAboveFloorMm),
    ...line("Hem above the floor", size.hemAboveFloorMm),
  ];
  const square = [
    ...line("Widths differ by", size.widthSpreadMm),
    ...line("Heights differ by", size.heightSpreadMm),
    ...(size.outOfSquareMm === undefined
      ? [{ label: "Diagonals differ by", text: "not measured", strong: false }]
      : line("Diagonals differ by", size.outOfSquareMm)),
  ];
  tablesBeside(
    book,
    [{ ...factTable("The finished shade", finished), heading: "The finished shade" }],
    [{ ...factTable("How square the opening is", square), heading: "How square it is" }],
  );
}
