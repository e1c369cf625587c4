import { MM_PER_INCH } from "../../units/index.ts";
import { mm, pt } from "../typeset/paper.ts";
import type { Pen } from "../typeset/pen.ts";
import { type TextStyle, TYPE } from "../typeset/type-scale.ts";
import { TEST_LINE_IN, TEST_SQUARE_MM } from "./strip-page.ts";

export const CHECK_BAR_ALT = "Check bar: 100 mm long on one side, 4 in on the other";

const LINE = { paint: "ink", widthPt: 0.8 } as const;
const TICK = { paint: "ink", widthPt: 0.5 } as const;
const WORDS: TextStyle = { ...TYPE.label, sizePt: 7, leadingPt: 9 };
/** Between the bar in millimetres and that in inches, pt. */
const APART_PT = 12;
const TICK_PT = 5;

type Draw = (
  along: number,
  across: number,
  toAlong: number,
  toAcross: number,
  look: typeof LINE | typeof TICK,
) => void;

function bars(draw: Draw): void {
  const length = pt(TEST_SQUARE_MM);
  draw(0, 0, length, 0, LINE);
  for (let cm = 0; cm <= TEST_SQUARE_MM / 10; cm++)
    draw(pt(10 * cm), 0, pt(10 * cm), cm % 5 === 0 ? TICK_PT : 3, TICK);
  const inch = pt(MM_PER_INCH);
  draw(0, APART_PT, TEST_LINE_IN * inch, APART_PT, LINE);
  for (let n = 0; n <= TEST_LINE_IN; n++) draw(n * inch, APART_PT, n * inch, APART_PT - TICK_PT, TICK);
}

/** Upright, its foot at (x, bottom): along the strips, where paper and feed can be at fault. */
export function drawCheckBar(pen: Pen, x: number, bottom: number): void {
  const left = x + 8;
  bars((along, across, toAlong, toAcross, look) =>
    pen.line(left + across, bottom - along, left + toAcross, bottom - toAlong, look),
  );
  pen.text("100 mm", left - 3, bottom - pt(TEST_SQUARE_MM / 2), WORDS, "middle", -90);
  pen.text("4 in", left + APART_PT + WORDS.sizePt + 1, bottom - pt(TEST_SQUARE_MM / 2), WORDS, "middle", -90);
}

/** Level, its right end at `right`, its foot at `y`. */
export function drawLevelBar(pen: Pen, right: number, y: number): void {
  const left = right - pt(TEST_LINE_IN * MM_PER_INCH);
  bars((along, across, toAlong, toAcross, look) =>
    pen.line(left + along, y - across, left + toAlong, y - toAcross, look),
  );
  pen.text("100 mm, 4 in", left - 4, y - APART_PT / 2 + 2, WORDS, "end");
}

/** Room that a level bar takes over its foot, mm. */
export const LEVEL_BAR_MM = mm(APART_PT + 2);
