import { create, type Font } from "fontkit";
import { MOST_WORDS, rememberedByText } from "./remember.ts";

/** Bytes of the typeface, brought by the edge: this room opens no files and asks no network. */
export interface WorkbookFonts {
  regular: Uint8Array;
  semibold: Uint8Array;
  italic?: Uint8Array;
}

export const FACE_NAMES = ["regular", "semibold", "italic"] as const;
export type FaceName = (typeof FACE_NAMES)[number];

/** One face, ready to measure and to embed. */
export interface Face {
  name: FaceName;
  font: Font;
  /** Width of one line, pt. */
  widthOf: (text: string, sizePt: number) => number;
  /** Glyphs and their places for one word with the space behind it, in units of the font; not to be written to. */
  shaped: (word: string) => ShapedWord;
  has: (codePoint: number) => boolean;
}

export type Faces = Record<FaceName, Face>;

type Run = ReturnType<Font["layout"]>;

export type ShapedWord = Readonly<Pick<Run, "glyphs" | "positions">>;

/**
 * The font with a memory for shaped words. Shaping is the slowest part of a workbook, and the same words
 * come back on every page and in every workbook. Positions are copied out, since the PDF library scales
 * them in place.
 */
function remembering(font: Font, shape: (text: string) => Run): Font {
  const layout = (text: string, features?: string[]) => {
    if (features !== undefined) return font.layout(text, features);
    const { glyphs, positions } = shape(text);
    const copies = positions.map((position) => ({ ...position }));
    return {
      glyphs,
      positions: copies,
      get advanceWidth() {
        return copies.reduce((sum, position) => sum + position.xAdvance, 0);
      },
    };
  };
  return Object.create(font, { layout: { value: layout } }) as Font;
}

/** Measures as the PDF library sets: word by word, each with the space that follows it. */
function measuring(shape: (text: string) => Run, unitsPerEm: number): Face["widthOf"] {
  const wordWidth = rememberedByText(MOST_WORDS, (word) => shape(word).advanceWidth / unitsPerEm);
  return (text, sizePt) => {
    let em = 0;
    let from = 0;
    while (from < text.length) {
      const space = text.indexOf(" ", from);
      const to = space < 0 ? text.length : space + 1;
      em += wordWidth(text.slice(from, to));
      from = to;
    }
    return em * sizePt;
  };
}

/** Latin ligatures among the alphabetic presentation forms (Unicode, block U+FB00). */
const FIRST_LIGATURE = 0xfb00;
const LAST_LIGATURE = 0xfb06;

/**
 * Makes every glyph that stands for a character under that character. The library makes a glyph once, and one that it
 * first meets as a part of another, the point of a colon, it would make for no character: the page would show it, but
 * whoever copies or listens would get another.
 */
function nameGlyphs(font: Font): void {
  for (const codePoint of font.characterSet) {
    // A ligature stands for its letters: a reader looks for “off”, not for U+FB00.
    if (codePoint < FIRST_LIGATURE || codePoint > LAST_LIGATURE) font.glyphForCodePoint(codePoint);
  }
}

function readFace(name: FaceName, bytes: Uint8Array): Face {
  // The types ask for a Node buffer; the library reads any bytes, and only these exist in a browser.
  const opened = create(bytes as Parameters<typeof create>[0]);
  if (opened.type !== "TTF") throw new Error(`invalid font ${name}: ${opened.type}`);
  nameGlyphs(opened);
  const shape = rememberedByText(MOST_WORDS, (text): Run => opened.layout(text));
  return {
    name,
    font: remembering(opened, shape),
    widthOf: measuring(shape, opened.unitsPerEm),
    shaped: shape,
    has: (codePoint) => opened.hasGlyphForCodePoint(codePoint),
  };
}

/** Faces already read, by their bytes: a second workbook of the same edge starts warm. */
const read = new WeakMap<Uint8Array, Face>();

function face(name: FaceName, bytes: Uint8Array): Face {
  const known = read.get(bytes);
  if (known?.name === name) return known;
  const made = readFace(name, bytes);
  read.set(bytes, made);
  return made;
}

/** Reads the faces. Without an italic the regular stands in. */
export function openFaces(fonts: WorkbookFonts): Faces {
  const regular = face("regular", fonts.regular);
  return {
    regular,
    semibold: face("semibold", fonts.semibold),
    italic: fonts.italic === undefined ? { ...regular, name: "italic" } : face("italic", fonts.italic),
  };
}
