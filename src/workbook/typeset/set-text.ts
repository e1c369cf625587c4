import { FACE_NAMES, type FaceName, MOST_WORDS, rememberedByText } from "../../letters/index.ts";
import { type EmbeddedFace, embeddedFace, type PdfDocument } from "./pdf-kit.ts";

/** Points with three decimals: far finer than any printer, and short files. */
export function num(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/**
 * A word as the operand of TJ (ISO 32000-1:2008, 9.4.3): glyph codes, with kerning in thousandths between them.
 * Undefined where a mark hangs over its letter, which TJ alone cannot place.
 */
function wordOperand(face: EmbeddedFace, word: string): string | undefined {
  const [codes, positions] = face.encode(word);
  let operand = "<";
  for (const [i, position] of positions.entries()) {
    if (position.xOffset !== 0 || position.yOffset !== 0) return undefined;
    operand += codes[i];
    const kern = position.xAdvance - position.advanceWidth;
    if (kern !== 0) operand += `> ${num(-kern)} <`;
  }
  return `${operand}>`;
}

interface FaceRecord {
  embedded: EmbeddedFace;
  operandOf: (word: string) => string | undefined;
}

/** Sets lines of text into the page that is open. A word that comes back is encoded once. */
export class TextSetter {
  readonly #doc: PdfDocument;
  readonly #faces: Record<FaceName, FaceRecord>;

  constructor(doc: PdfDocument) {
    this.#doc = doc;
    const record = (name: FaceName): FaceRecord => {
      const embedded = embeddedFace(doc, name);
      return { embedded, operandOf: rememberedByText(MOST_WORDS, (word) => wordOperand(embedded, word)) };
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
    const turn = (angleDeg * Math.PI) / 180;
    const [cos, sin] = angleDeg === 0 ? [1, 0] : [Math.cos(turn), Math.sin(turn)];
    // The page runs down, letters stand up: the second row of the matrix is turned over.
    const matrix = [cos, sin, sin, -cos, x, y].map(num).join(" ");
    this.#doc.addContent(
      `BT ${rgb} rg /${embedded.id} ${num(sizePt)} Tf ${matrix} Tm [${operands.join("")}] TJ ET`,
    );
    return true;
  }
}
