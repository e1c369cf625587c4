import { SEVERITY_WORDS } from "../../figures/index.ts";
import { onOneLine } from "../../letters/index.ts";
import { breakLines } from "./break-lines.ts";
import type { Pen } from "./pen.ts";
import { drawSeverityMark, MARK_WIDTH } from "./severity-mark.ts";
import { firstBaseline, painted, TYPE } from "./type-scale.ts";

const PAD = 6;
const TEXT = TYPE.cellStrong;
const WORD = painted(TYPE.cellStrong, "stop");
const WORD_GAP = 8;

/** A stop that every page says at its head: framed, with a mark and a word, so that black ink is enough. */
interface LaidStamp {
  lines: string[];
  indentPt: number;
  heightPt: number;
}

function layStamp(pen: Pen, text: string, width: number): LaidStamp {
  const indentPt = PAD + MARK_WIDTH + pen.widthOf(SEVERITY_WORDS.stop, WORD) + WORD_GAP;
  const lines = breakLines(onOneLine(text, pen.faces[TEXT.face]), width - indentPt - PAD, TEXT, pen.faces);
  return { lines, indentPt, heightPt: lines.length * TEXT.leadingPt + 2 * PAD };
}

/** Height of the stamp with its frame at this width, pt. */
export function stampHeight(pen: Pen, text: string, width: number): number {
  return layStamp(pen, text, width).heightPt;
}

/** The frame and the mark: seen, but not read out. */
export function drawStampFrame(pen: Pen, text: string, x: number, top: number, width: number): void {
  const { heightPt } = layStamp(pen, text, width);
  pen.box(x, top, width, heightPt, { paint: "stop", widthPt: 1.4 });
  drawSeverityMark(pen, "stop", x + PAD, top + PAD + TEXT.leadingPt / 2);
}

/** The words. */
export function drawStampWords(pen: Pen, text: string, x: number, top: number, width: number): void {
  const { lines, indentPt } = layStamp(pen, text, width);
  const baseline = top + PAD + firstBaseline(TEXT);
  pen.text(SEVERITY_WORDS.stop, x + PAD + MARK_WIDTH, baseline, WORD);
  lines.forEach((line, i) => {
    pen.text(line, x + indentPt, baseline + i * TEXT.leadingPt, TEXT);
  });
}
