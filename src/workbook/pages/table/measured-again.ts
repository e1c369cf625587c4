import type { ShadePlan } from "../../../plan/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import type { Book } from "../../typeset/book.ts";
import { section } from "../../typeset/heading.ts";
import { columns } from "../../typeset/paper.ts";
import { firstBaseline, TYPE } from "../../typeset/type-scale.ts";

const ROWS = 5;
const ROW_PT = 24;
/** A box to write a measurement into by hand, pt: narrower where the names beside it are long. */
const BLANK = { width: 72, leastWidth: 44, height: 18 };
const GAP_PT = 6;

interface Asked {
  name: string;
  plannedMm?: number;
}

/** Everything to measure again, down one half of the page and then the other. */
function asked(shade: ShadePlan): Asked[] {
  if (shade.existing !== undefined) return askedOfHung(shade);
  const { opening } = shade;
  const at = (names: readonly string[], values: readonly number[] = []): Asked[] =>
    names.map((name, i) => ({ name, plannedMm: values[i] }));
  return [
    ...at(["Width, top", "Width, middle", "Width, bottom"], opening?.widthsMm),
    ...at(["Diagonal from top left", "Diagonal from top right"], opening?.diagonalsMm),
    ...at(["Height, left", "Height, middle", "Height, right"], opening?.heightsMm),
    { name: "Depth of the recess", plannedMm: opening?.recessDepthMm },
    { name: "Sill above the floor", plannedMm: opening?.sillAboveFloorMm },
  ];
}

/** Of a shade that hangs already its own size, and as many of its rows as there is room for, at the left edge. */
function askedOfHung({ size, grid, opening, existing }: ShadePlan): Asked[] {
  const own = [
    { name: "Shade, width", plannedMm: size.finishedWidthMm },
    { name: "Shade, top to hem", plannedMm: size.finishedLengthMm },
    { name: "Sill above the floor", plannedMm: opening?.sillAboveFloorMm },
  ];
  const rows = grid.rows
    .filter(({ number }) => existing?.newRows.includes(number) !== true)
    .slice(0, 2 * ROWS - own.length)
    .map(({ number, fromHemMm, ends }) => ({
      name: ends === undefined ? `Row ${number} above the hem` : `Row ${number}, left, above the hem`,
      plannedMm: ends?.leftFromHemMm ?? fromHemMm,
    }));
  return [...own, ...rows];
}

/** Height of the list with its heading, pt. */
export function measuredAgainHeight(book: Book): number {
  return book.look.section.leadingPt + ROWS * ROW_PT + 24;
}

/** What was planned from, with a box beside each for what the tape says now. */
export function measuredAgain(context: ShadeContext): void {
  const { book, shade } = context;
  const what =
    shade.existing === undefined
      ? "the opening again before you cut"
      : "the shade again before a cord is cut";
  section(book, `Measure ${what}`, ROWS * ROW_PT);
  const top = book.y;
  book.tags.open("L");
  const list = asked(shade).map(({ name, plannedMm }) => ({
    name,
    planned: plannedText(context, plannedMm),
  }));
  const blankWidth = Math.max(BLANK.leastWidth, Math.min(BLANK.width, leftFor(context, list)));
  list.forEach(({ name, planned }, i) => {
    const { x, width } = columns(book.paper, i < ROWS ? 0 : 6, 6);
    const y = top + (i % ROWS) * ROW_PT;
    const style = TYPE.tableBody;
    const baseline = y + firstBaseline({ ...style, leadingPt: ROW_PT });
    const blankX = x + width - blankWidth;
    book.tags.artifact(() =>
      book.pen.box(blankX, y + (ROW_PT - BLANK.height) / 2, blankWidth, BLANK.height, {
        paint: "ink",
        widthPt: 0.6,
      }),
    );
    book.tags.open("LI");
    book.tags.mark("LBody", () => {
      book.pen.text(name, x, baseline, style);
      book.pen.text(planned, blankX - GAP_PT, baseline, TYPE.tableStrong, "end");
    });
    book.tags.close();
  });
  book.tags.close();
  book.y = top + ROWS * ROW_PT + 10;
}

function plannedText({ length }: ShadeContext, plannedMm: number | undefined): string {
  return plannedMm === undefined ? "?" : length(plannedMm);
}

/** Width that the longest name and its figure leave on a half of the page. */
function leftFor({ book }: ShadeContext, list: readonly { name: string; planned: string }[]): number {
  const taken = list.map(
    ({ name, planned }) =>
      book.pen.widthOf(name, TYPE.tableBody) + book.pen.widthOf(planned, TYPE.tableStrong),
  );
  return columns(book.paper, 0, 6).width - Math.max(...taken) - 2 * GAP_PT;
}
