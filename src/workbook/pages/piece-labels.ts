import type { CuttingPlan, Plan } from "../../plan/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Book } from "../typeset/book.ts";
import { openPage } from "../typeset/heading.ts";
import { columns } from "../typeset/paper.ts";
import { firstBaseline, TYPE } from "../typeset/type-scale.ts";

/** Labels side by side, and the height of one, pt. */
const ACROSS = 3;
const HEIGHT_PT = 90;
const PAD_PT = 9;
const ARROW_PT = 20;

interface Label {
  /** Job and room. */
  whose: string;
  shade: string;
  part: string;
  cloth: string;
  size: string;
}

/** A label for every piece of cloth, to cut out and pin on: job, room, shade, part, size, and an arrow to its top. */
export function pieceLabels(book: Book, cutting: CuttingPlan, plan: Plan): void {
  openPage(book, {
    title: "Labels for the pieces",
    lead: "Cut them out and pin one to each piece as it comes off the bolt, the arrow to the top of the piece.",
  });
  const labels = labelsOf(cutting, plan);
  for (let i = 0; i < labels.length; i += ACROSS) {
    book.need(HEIGHT_PT);
    const top = book.y;
    labels.slice(i, i + ACROSS).forEach((label, k) => {
      const { x, width } = columns(book.paper, (12 / ACROSS) * k, 12 / ACROSS);
      setLabel(book, label, x, top, width);
    });
    book.y = top + HEIGHT_PT + 8;
  }
}

function labelsOf({ cloths, units }: CuttingPlan, plan: Plan): Label[] {
  const rooms = new Map(plan.shades.map(({ shadeId, roomName }) => [shadeId, roomName]));
  return cloths.flatMap(({ clothName, problem }) =>
    problem.pieces.map(({ id, shade, part, widthMm, lengthMm }) => ({
      whose: [rooms.get(id.split("/")[0] ?? ""), plan.jobName].filter((word) => word).join(", "),
      shade,
      part,
      cloth: clothName,
      size: `${lengthText(widthMm, units)} × ${lengthText(lengthMm, units)}`,
    })),
  );
}

function setLabel(
  book: Book,
  { whose, shade, part, cloth, size }: Label,
  x: number,
  y: number,
  width: number,
): void {
  const { pen, tags } = book;
  tags.artifact(() => {
    pen.box(x, y, width, HEIGHT_PT, { paint: "pencil", widthPt: 0.5, dashPt: [3, 2] });
    drawArrow(book, x + width - PAD_PT - ARROW_PT / 2, y + PAD_PT);
  });
  const room = width - 2 * PAD_PT;
  const rows = [
    { text: whose, style: TYPE.small, room: room - ARROW_PT - 4 },
    { text: shade, style: TYPE.strong, room: room - ARROW_PT - 4 },
    { text: part, style: TYPE.cellStrong, room: room - ARROW_PT - 4 },
    { text: size, style: TYPE.cell, room },
    { text: cloth, style: TYPE.small, room },
  ];
  tags.mark("P", () => {
    let at = y + PAD_PT;
    for (const { text, style, room: widthPt } of rows) {
      const [first = "", ...more] = book.lines(text, widthPt, style);
      pen.text(more.length > 0 ? `${first} …` : first, x + PAD_PT, at + firstBaseline(style), style);
      at += style.leadingPt + 1;
    }
  });
}

/** Up: to the top of the piece. */
function drawArrow({ pen }: Book, x: number, y: number): void {
  const half = ARROW_PT / 2;
  pen.polygon(
    [
      [x, y],
      [x + half, y + 12],
      [x + 3.5, y + 12],
      [x + 3.5, y + 26],
      [x - 3.5, y + 26],
      [x - 3.5, y + 12],
      [x - half, y + 12],
    ],
    "ink",
  );
}
