import { breakLines } from "./break-lines.ts";
import { BOTTOM_PT, MARGIN_PT, type Paper } from "./paper.ts";
import type { OutlineItem, PdfDocument } from "./pdf-kit.ts";
import { Pen } from "./pen.ts";
import { printable } from "./printable.ts";
import { drawFoot, drawHead, headHeight, type Running, stampTop } from "./running-heads.ts";
import { drawStampFrame, drawStampWords } from "./stamp.ts";
import { Tags } from "./tags.ts";
import type { TextStyle } from "./type-scale.ts";
import type { Faces } from "./typeface.ts";

/** The workbook while it is being set: pages, the place on the page, the outline, the tags. */
export class Book {
  readonly pen: Pen;
  readonly tags: Tags;
  readonly paper: Paper;
  readonly faces: Faces;
  /** Where the next thing goes, pt from the top of the page. */
  y = 0;
  readonly #doc: PdfDocument;
  readonly #pages: Running[] = [];
  #running: Running = { job: "", shade: "", chapter: "" };
  #top = 0;
  readonly #anchors = new Map<string, number>();
  readonly #later: { page: number; draw: () => void }[] = [];
  readonly #outline: OutlineItem[];

  constructor(doc: PdfDocument, faces: Faces, paper: Paper) {
    this.#doc = doc;
    this.pen = new Pen(doc, faces);
    this.tags = new Tags(doc);
    this.paper = paper;
    this.faces = faces;
    this.#outline = [doc.outline];
  }

  get left(): number {
    return MARGIN_PT;
  }

  get width(): number {
    return this.paper.widthPt - 2 * MARGIN_PT;
  }

  /** Where the text begins on this page, under its head. */
  get top(): number {
    return this.#top;
  }

  get bottom(): number {
    return this.paper.heightPt - BOTTOM_PT;
  }

  get pageCount(): number {
    return this.#pages.length;
  }

  /** Height left on this page. */
  get room(): number {
    return this.bottom - this.y;
  }

  /** What the pages from here on carry at head and foot. */
  run(running: Partial<Running>): void {
    this.#running = { ...this.#running, ...running };
  }

  turnPage(): void {
    this.#doc.addPage();
    this.#pages.push(this.#running);
    this.tags.artifact(() => drawHead(this.pen, this.#running, this.left, this.width), "Pagination");
    this.#stamp();
    this.#top = headHeight(this.pen, this.#running, this.width);
    this.y = this.#top;
  }

  /** Why the shade is stopped is content of every page, not one of its artifacts. */
  #stamp(): void {
    const { stamp } = this.#running;
    if (stamp === undefined) return;
    const top = stampTop(this.pen, this.#running, this.width);
    this.tags.artifact(() => drawStampFrame(this.pen, stamp, this.left, top, this.width));
    this.tags.aside("P", () => drawStampWords(this.pen, stamp, this.left, top, this.width));
  }

  /** Turns the page unless so much height is left. */
  need(heightPt: number): void {
    if (this.y + heightPt > this.bottom + 0.01 && this.y > this.top) this.turnPage();
  }

  /** Names this place of this page, for links and for lists of contents. */
  anchor(name: string): void {
    this.#anchors.set(name, this.#pages.length);
    this.#doc.addNamedDestination(name, "XYZ", 0, Math.max(0, this.y - 40), null);
  }

  /** Number of the page that holds an anchor; 0 until it is set. */
  pageOf(name: string): number {
    return this.#anchors.get(name) ?? 0;
  }

  /** Draws on the page that is open now, once every page number is known. */
  later(draw: () => void): void {
    this.#later.push({ page: this.#pages.length - 1, draw });
  }

  /** An entry of the outline at the page that is open; `nested` makes what follows stand under it. */
  bookmark(title: string, nested: boolean): void {
    const parent = this.#outline.at(-1);
    const item = parent?.addItem(title, { expanded: nested });
    if (nested && item) this.#outline.push(item);
  }

  endBookmark(): void {
    if (this.#outline.length > 1) this.#outline.pop();
  }

  lines(text: string, widthPt: number, style: TextStyle): string[] {
    return breakLines(printable(text, this.faces[style.face]), widthPt, style, this.faces);
  }

  /** Page numbers are known only now: contents, and the foot of every page. */
  finish(): void {
    for (const { page, draw } of this.#later) {
      this.#doc.switchToPage(page);
      draw();
    }
    const total = this.#pages.length;
    this.#pages.forEach((running, index) => {
      this.#doc.switchToPage(index);
      const drawn = () => drawFoot(this.pen, running, { number: index + 1, total }, this.paper);
      this.tags.artifact(drawn, "Pagination");
    });
  }
}
