import {
  FACE_NAMES,
  type FaceName,
  type Faces,
  MOST_WORDS,
  rememberedByText,
  type ShapedWord,
} from "../../letters/index.ts";
import { type EmbeddedFace, embeddedFace, glyphCode, type PdfDocument } from "./pdf-kit.ts";

/** A place or a length on a page, pt, to a hundredth: 7,200 to the inch, finer than any printer, and short files. */
export function onPage(valuePt: number): string {
  return inThousandths(10 * Math.round(valuePt * 100));
}

/** The operators of a line through points, pt. */
export function pathThrough(points: readonly (readonly [x: number, y: number])[]): string {
  return points.map(([x, y], i) => `${onPage(x)} ${onPage(y)} ${i === 0 ? "m" : "l"}`).join(" ");
}

/** A ratio, a part of a colour or a size of type, with three decimals at the most. */
export function num(value: number): string {
  return inThousandths(Math.round(value * 1000));
}

/** Whole numbers are written several times as quickly as broken ones, and a page has thousands. */
function inThousandths(thousandths: number): string {
  const size = Math.abs(thousandths);
  const decimals = DECIMALS[size % 1000];
  if (decimals === undefined) return String(thousandths / 1000);
  return `${thousandths < 0 ? "-" : ""}${Math.trunc(size / 1000)}${decimals}`;
}

/** Thousandths from 0 to 999 as they stand behind a whole number: nothing, `.05`, `.125`. */
const DECIMALS = Array.from({ length: 1000 }, (_, n) => String(n / 1000).slice(1));

/**
 * A word as the operand of TJ (ISO 32000-1:2008, 9.4.3): glyph codes, with kerning in thousandths between them.
 * Undefined where a mark hangs over its letter, which TJ alone cannot place.
 */
function wordOperand(face: EmbeddedFace, { glyphs, positions }: ShapedWord): string | undefined {
  if (positions.some(({ xOffset, yOffset }) => xOffset !== 0 || yOffset !== 0)) return undefined;
  let operand = "(";
  for (const [i, glyph] of glyphs.entries()) {
    operand += glyphCode(face, glyph);
    const kern = (positions[i]?.xAdvance ?? 0) - glyph.advanceWidth;
    if (kern !== 0) operand += `)${kerning(kern * face.scale)}(`;
  }
  return `${operand})`;
}

/** By how much the next letter moves back, thousandths of the size of type, to a tenth: a long line ends where it was measured. */
function kerning(thousandths: number): string {
  return inThousandths(-100 * Math.round(thousandths * 10));
}

/** The first four numbers of a text matrix: the page runs down, letters stand up, so its second row is turned over. */
function turnedBy(angleDeg: number): string {
  if (angleDeg === 0) return "1 0 0 -1";
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [cos, sin, sin, -cos].map(num).join(" ");
}

interface FaceRecord {
  embedded: EmbeddedFace;
  operandOf: (word: string) => string | undefined;
}

/** Sets lines of text into the page that is open. A word that comes back is encoded once. */
export class TextSetter {
  readonly #doc: PdfDocument;
  readonly #faces: Record<FaceName, FaceRecord>;

  constructor(doc: PdfDocument, faces: Faces) {
    this.#doc = doc;
    const record = (name: FaceName): FaceRecord => {
      const embedded = embeddedFace(doc, name);
      return {
        embedded,
        operandOf: rememberedByText(MOST_WORDS, (word) => wordOperand(embedded, faces[name].shaped(word))),
      };
    };
    this.#faces = Object.fromEntries(FACE_NAMES.map((name) => [name, record(name)])) as Record<
      FaceName,
      FaceRecord
    >;
  }

  /**
   * One line with its baseline from (x, y), turned clockwise by `angleDeg`. Says whether it could:
   * a line with marks over its letters is left to the library.
   */
  set(
    face: FaceName,
    sizePt: number,
    rgb: string,
    text: string,
    x: number,
    y: number,
    angleDeg: number,
  ): boolean {
    const { embedded, operandOf } = this.#faces[face];
    const operands: string[] = [];
    for (const word of text.match(/[^ ]* ?/g) ?? []) {
      if (word === "") continue;
      const operand = operandOf(word);
      if (operand === undefined) return false;
      operands.push(operand);
    }
    const { fonts } = this.#doc.page;
    fonts[embedded.id] ??= embedded.ref();
    this.#doc.addContent(
      `BT ${rgb} rg /${embedded.id} ${num(sizePt)} Tf ${turnedBy(angleDeg)} ${onPage(x)} ${onPage(y)} Tm [${operands.join("")}] TJ ET`,
    );
    return true;
  }
}
