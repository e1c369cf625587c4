import type { Pen } from "./pen.ts";
import { num } from "./set-text.ts";
import type { TextStyle } from "./type-scale.ts";

interface Piece {
  text: string;
  /** Share of the size by which it stands above (or, negative, below) the line. */
  lift: number;
}

/** `C_w` and `10^9` with their index below and their power above the line. */
const INDEX = /([_^])([\p{L}\d]+)/gu;
const SMALL = 0.7;
const BELOW = -0.16;
const ABOVE = 0.36;

function formulaPieces(line: string): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  for (const match of line.matchAll(INDEX)) {
    const [whole, sign, text = ""] = match;
    if (match.index > from) pieces.push({ text: line.slice(from, match.index), lift: 0 });
    pieces.push({ text, lift: sign === "_" ? BELOW : ABOVE });
    from = match.index + whole.length;
  }
  if (from < line.length) pieces.push({ text: line.slice(from), lift: 0 });
  return pieces;
}

/** Sets a line of mathematics from its left end on the baseline. */
export function setFormula(pen: Pen, line: string, x: number, baselineY: number, style: TextStyle): void {
  let at = x;
  for (const { text, lift } of formulaPieces(line)) {
    const own = lift === 0 ? style : { ...style, sizePt: Number(num(style.sizePt * SMALL)) };
    pen.text(text, at, baselineY - lift * style.sizePt, own);
    at += pen.widthOf(text, own);
  }
}
