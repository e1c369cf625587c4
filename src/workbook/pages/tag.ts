import { drawTag, knownOfTag } from "../../drawing/index.ts";
import type { ChildSafetyTag } from "../../shade-plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { trimmed } from "../../units/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { columnBlocks, layBlocks, setBlocks, type TitledText } from "../typeset/column-blocks.ts";
import { type LaidFigure, layFullSize, setFigure } from "../typeset/figure.ts";
import { openPage } from "../typeset/heading.ts";
import { columns } from "../typeset/paper.ts";

const AFTER = 18;
/** A tag that leaves so many columns free has its words beside it. */
const ASIDE_COLUMNS = 5;

/** The tag to cut out, as large as it must be, with what to know of it outside its line. */
export function tagPage({ book, plan, shade, createdOn }: ShadeContext): void {
  openPage(book, {
    title: "Child-safety tag, full size",
    lead: "A warning that stays on the shade. Print it at its true size, measure its letters, then cut it out.",
  });
  const drawings = drawTag(shade, knownOfTag(plan, shade, createdOn));
  const { note } = shade.tag;
  const aside = columns(book.paper, 12 - ASIDE_COLUMNS, ASIDE_COLUMNS);
  const [first] = drawings;
  // Whose words they are stands beside a tag of one side: under it, it would push a long one off the page.
  const only =
    first === undefined || drawings.length > 1
      ? undefined
      : layFullSize(book, { ...first, caption: first.caption.replace(note, "").trim() });
  if (only !== undefined && book.left + only.widthPt < aside.x) {
    book.need(only.heightPt);
    const top = book.y;
    setFigure(book, only, book.left, top);
    const end = setBlocks(book, layBlocks(book, aboutTag(shade.tag, 1, note), aside.width), aside, top);
    book.y = Math.max(top + only.heightPt, end) + AFTER;
    return;
  }
  const sides = drawings.map((drawing) => layFullSize(book, drawing));
  columnBlocks(book, aboutTag(shade.tag, sides.length));
  book.y += AFTER;
  for (const side of sides) setSide(side);

  function setSide(side: LaidFigure): void {
    book.need(side.heightPt);
    setFigure(book, side, book.left, book.y);
    book.y += side.heightPt + AFTER;
  }
}

/** @param whose whose its words are, where that does not stand under each side */
function aboutTag({ lines, heights }: ChildSafetyTag, sides: number, whose?: string): TitledText[] {
  const least = (capitals: boolean) =>
    trimmed(
      Math.min(...lines.filter((line) => line.capitals === capitals).map((line) => line.minHeightMm)),
      1,
    );
  const isMarked = lines.some(({ official }) => official);
  return [
    {
      title: "Print and measure",
      text: `Print at 100 %, “actual size”, never “fit to page”. Capitals of the signal word are then at least ${least(true)} mm high, small letters such as x at least ${least(false)} mm. Measure both with a steel rule.`,
      small: `Heights: ${citeText(heights)}.`,
    },
    {
      title: "Cut and fix",
      text: `Cut along the line and punch the hole.${sides > 1 ? " Glue front and back together, hole on hole." : ""} Use paper, card or label cloth and an ink that last as long as the shade, and fix the tag where it can be read with the shade lowered.`,
    },
    {
      title: "Fill in",
      text: "Write what is still blank on the lines with ink that does not rub off, and correct the date if it is made later.",
    },
    {
      title: "Whose words",
      text: isMarked
        ? `The bracket beside the tag marks words of the official text. It stands outside the line and does not go on the shade. ${whose ?? "All other words are our own."}`
        : (whose ??
          "The words are our own, and none of them is official text. What the place asks for comes first."),
    },
  ];
}
