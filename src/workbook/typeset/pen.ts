import { type Paint, paintHex } from "../../drawing/index.ts";
import type { Faces } from "../../letters/index.ts";
import { NO_SHAPE, printable } from "../../letters/index.ts";
import { Halos } from "./halo.ts";
import type { PdfDocument } from "./pdf-kit.ts";
import { num, onPage, pathThrough, TextSetter } from "./set-text.ts";
import type { TextStyle } from "./type-scale.ts";

export type Anchor = "start" | "middle" | "end";

export interface LineLook {
  paint: Paint;
  widthPt: number;
  dashPt?: readonly number[];
}

export const HAIRLINE: LineLook = { paint: "chalk", widthPt: 0.4 };
export const RULE: LineLook = { paint: "ink", widthPt: 0.8 };

/** White paper is left white: a printed tint would eat ink and grey the page. */
function pageHex(paint: Paint): string {
  return paint === "paper" ? "#FFFFFF" : paintHex(paint, "light");
}

const colours = new Map<Paint, string>();

/** Red, green and blue of a paint as the operators take them. */
export function rgb(paint: Paint): string {
  const known = colours.get(paint);
  if (known !== undefined) return known;
  const text = rgbOfHex(pageHex(paint));
  colours.set(paint, text);
  return text;
}

/** The same of a colour written `#rrggbb`. */
export function rgbOfHex(hex: string): string {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((part) => num(part / 255)).join(" ");
}

/** Draws on the page that is open, in points from its top left corner. Knows nothing of layout or meaning. */
export class Pen {
  readonly doc: PdfDocument;
  readonly faces: Faces;
  readonly halos: Halos;
  readonly #setter: TextSetter;
  /** Told of every line with a letter that the typeface has no shape for. */
  readonly #onLack: () => void;

  constructor(doc: PdfDocument, faces: Faces, onLack: () => void = () => {}) {
    this.doc = doc;
    this.faces = faces;
    this.#onLack = onLack;
    this.halos = new Halos(doc);
    this.#setter = new TextSetter(doc, faces);
  }

  widthOf(text: string, style: TextStyle): number {
    const face = this.faces[style.face];
    return face.widthOf(printable(text, face), style.sizePt);
  }

  /** One line of text on its baseline, turned clockwise about (x, baselineY) by `angleDeg`. */
  text(
    text: string,
    x: number,
    baselineY: number,
    style: TextStyle,
    anchor: Anchor = "start",
    angleDeg = 0,
  ): void {
    const face = this.faces[style.face];
    // One space for every kind: a reader gets the same letter back wherever it finds the glyph.
    const line = printable(text, face).replace(/[\n\u00a0\u202f]/g, " ");
    if (line === "") return;
    if (line.includes(NO_SHAPE)) this.#onLack();
    const width = anchor === "start" ? 0 : face.widthOf(line, style.sizePt);
    const back = anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width;
    const turn = (angleDeg * Math.PI) / 180;
    const left = x - back * Math.cos(turn);
    const baseline = baselineY - back * Math.sin(turn);
    const done = this.#setter.set(face.name, style.sizePt, rgb(style.paint), line, left, baseline, angleDeg);
    if (!done) this.#leaveToLibrary(line, left, baseline, style, angleDeg);
  }

  #leaveToLibrary(line: string, x: number, y: number, style: TextStyle, angleDeg: number): void {
    this.doc.save().rotate(angleDeg, { origin: [x, y] });
    this.doc
      .font(style.face)
      .fontSize(style.sizePt)
      .fillColor(pageHex(style.paint))
      .text(line, x, y, { lineBreak: false, baseline: "alphabetic" });
    this.doc.restore();
  }

  line(x1: number, y1: number, x2: number, y2: number, look: LineLook = HAIRLINE): void {
    this.#stroke(`${onPage(x1)} ${onPage(y1)} m ${onPage(x2)} ${onPage(y2)} l S`, look);
  }

  box(x: number, y: number, width: number, height: number, look: LineLook = HAIRLINE): void {
    this.#stroke(`${onPage(x)} ${onPage(y)} ${onPage(width)} ${onPage(height)} re S`, look);
  }

  fillBox(x: number, y: number, width: number, height: number, paint: Paint): void {
    this.doc.addContent(
      `q ${rgb(paint)} rg ${onPage(x)} ${onPage(y)} ${onPage(width)} ${onPage(height)} re f Q`,
    );
  }

  polygon(points: readonly (readonly [number, number])[], fill: Paint): void {
    this.doc.addContent(`q ${rgb(fill)} rg ${pathThrough(points)} h f Q`);
  }

  polyline(points: readonly (readonly [number, number])[], look: LineLook): void {
    this.#stroke(`${pathThrough(points)} S`, look);
  }

  #stroke(path: string, look: LineLook): void {
    const dash = look.dashPt === undefined ? "" : `[${look.dashPt.map(num).join(" ")}] 0 d `;
    this.doc.addContent(`q ${rgb(look.paint)} RG ${num(look.widthPt)} w ${dash}${path} Q`);
  }
}
