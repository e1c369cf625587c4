import { type Paint, paintHex } from "../drawing/index.ts";
import type { PdfDocument } from "./pdf-kit.ts";
import { printable } from "./printable.ts";
import type { TextStyle } from "./type-scale.ts";
import type { Faces } from "./typeface.ts";

export type Anchor = "start" | "middle" | "end";

export interface LineLook {
  paint: Paint;
  widthPt: number;
  dashPt?: readonly number[];
}

export const HAIRLINE: LineLook = { paint: "chalk", widthPt: 0.4 };
export const RULE: LineLook = { paint: "ink", widthPt: 0.8 };

/** Points with two decimals: a 1/14000 in, and short files. */
export function num(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** White paper is left white: a printed tint would eat ink and grey the page. */
export function pageHex(paint: Paint): string {
  return paint === "paper" ? "#FFFFFF" : paintHex(paint, "light");
}

const colours = new Map<Paint, string>();

/** Red, green and blue of a paint as the operators take them. */
export function rgb(paint: Paint): string {
  const known = colours.get(paint);
  if (known !== undefined) return known;
  const hex = Number.parseInt(pageHex(paint).slice(1), 16);
  const text = [hex >> 16, (hex >> 8) & 255, hex & 255].map((part) => num(part / 255)).join(" ");
  colours.set(paint, text);
  return text;
}

/** Draws on the page that is open, in points from its top left corner. Knows nothing of layout or meaning. */
export class Pen {
  readonly doc: PdfDocument;
  readonly faces: Faces;

  constructor(doc: PdfDocument, faces: Faces) {
    this.doc = doc;
    this.faces = faces;
  }

  widthOf(text: string, style: TextStyle): number {
    const face = this.faces[style.face];
    return face.widthOf(printable(text, face), style.sizePt);
  }

  /** One line of text on its baseline. */
  text(text: string, x: number, baselineY: number, style: TextStyle, anchor: Anchor = "start"): void {
    const face = this.faces[style.face];
    const line = printable(text, face).replaceAll("\n", " ");
    if (line === "") return;
    const width = face.widthOf(line, style.sizePt);
    const left = x - (anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width);
    this.doc
      .font(face.name)
      .fontSize(style.sizePt)
      .fillColor(pageHex(style.paint))
      .text(line, left, baselineY, { lineBreak: false, baseline: "alphabetic" });
  }

  line(x1: number, y1: number, x2: number, y2: number, look: LineLook = HAIRLINE): void {
    this.#stroke(`${num(x1)} ${num(y1)} m ${num(x2)} ${num(y2)} l S`, look);
  }

  box(x: number, y: number, width: number, height: number, look: LineLook = HAIRLINE): void {
    this.#stroke(`${num(x)} ${num(y)} ${num(width)} ${num(height)} re S`, look);
  }

  fillBox(x: number, y: number, width: number, height: number, paint: Paint): void {
    this.doc.addContent(`q ${rgb(paint)} rg ${num(x)} ${num(y)} ${num(width)} ${num(height)} re f Q`);
  }

  polygon(points: readonly (readonly [number, number])[], fill: Paint): void {
    const path = points.map(([x, y], i) => `${num(x)} ${num(y)} ${i === 0 ? "m" : "l"}`).join(" ");
    this.doc.addContent(`q ${rgb(fill)} rg ${path} h f Q`);
  }

  polyline(points: readonly (readonly [number, number])[], look: LineLook): void {
    const path = points.map(([x, y], i) => `${num(x)} ${num(y)} ${i === 0 ? "m" : "l"}`).join(" ");
    this.#stroke(`${path} S`, look);
  }

  #stroke(path: string, look: LineLook): void {
    const dash = look.dashPt === undefined ? "" : `[${look.dashPt.map(num).join(" ")}] 0 d `;
    this.doc.addContent(`q ${rgb(look.paint)} RG ${num(look.widthPt)} w ${dash}${path} Q`);
  }
}
