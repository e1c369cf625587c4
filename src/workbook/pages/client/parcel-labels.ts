import { STYLE_NAMES } from "../../../job/index.ts";
import type { Plan, ShadePlan } from "../../../plan/index.ts";
import { lengthText } from "../../../units/index.ts";
import type { Book } from "../../typeset/book.ts";
import { openPage } from "../../typeset/heading.ts";
import { columns } from "../../typeset/paper.ts";
import { firstBaseline, TYPE } from "../../typeset/type-scale.ts";
import { capital, MOUNT_WORDS, workedFrom } from "../sentence.ts";

const ACROSS = 2;
const HEIGHT_PT = 128;
const PAD_PT = 12;

/** A label for each shade as it leaves the workroom: whose it is, where it hangs, which way. */
export function parcelLabels(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  openPage(book, {
    title: "Labels",
    lead: "Cut out and tie one to each shade as it is packed. The child-safety tag is another, and stays on.",
  });
  for (let i = 0; i < shades.length; i += ACROSS) {
    book.need(HEIGHT_PT);
    const top = book.y;
    shades.slice(i, i + ACROSS).forEach((shade, k) => {
      const { x, width } = columns(book.paper, (12 / ACROSS) * k, 12 / ACROSS);
      setLabel(book, plan, shade, { x, y: top, width });
    });
    book.y = top + HEIGHT_PT + 10;
  }
}

function setLabel(
  book: Book,
  plan: Plan,
  shade: ShadePlan,
  { x, y, width }: { x: number; y: number; width: number },
): void {
  const { size, lift } = shade;
  const length = (mm: number) => lengthText(mm, plan.units);
  const rows = [
    { text: [plan.client ?? "", plan.jobName].filter(Boolean).join(" · "), style: TYPE.small },
    { text: shade.windowName, style: TYPE.tableFigure },
    { text: shade.roomName, style: TYPE.tableBody },
    { text: `${length(size.finishedWidthMm)} × ${length(size.finishedLengthMm)}`, style: TYPE.tableStrong },
    { text: `${capital(STYLE_NAMES[shade.style])}, ${MOUNT_WORDS[shade.mount]}`, style: TYPE.body },
    { text: capital(workedFrom(lift)), style: TYPE.body },
  ];
  book.tags.artifact(() =>
    book.pen.box(x, y, width, HEIGHT_PT, { paint: "pencil", widthPt: 0.5, dashPt: [3, 2] }),
  );
  book.tags.mark("P", () => {
    let at = y + PAD_PT;
    for (const { text, style } of rows) {
      const [first = "", ...more] = book.lines(text, width - 2 * PAD_PT, style);
      book.pen.text(more.length > 0 ? `${first} …` : first, x + PAD_PT, at + firstBaseline(style), style);
      at += style.leadingPt;
    }
  });
}
