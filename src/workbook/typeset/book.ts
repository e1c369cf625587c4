import type { Faces } from "../../letters/index.ts";
import { printable } from "../../letters/index.ts";
import { asWritten, type Spell } from "../../words/index.ts";
import { breakLines } from "./break-lines.ts";
import { writePages } from "./let-go.ts";
import { DESK, type PageLook } from "./look.ts";
import { BOTTOM_PT, MARGIN_PT, type Paper } from "./paper.ts";
import type { OutlineItem, PdfDocument } from "./pdf-kit.ts";
import { Pen } from "./pen.ts";
import { drawFoot, drawHead, headHeight, type Running, stampTop } from "./running-heads.ts";
import { drawStampFrame, drawStampWords } from "./stamp.ts";
import { Tags } from "./tags.ts";
import type { TextStyle } from "./type-scale.ts";

/** The workbook while it is being set: pages, the place on the page, the outline, the tags. */
export class Book {
  readonly pen: Pen;
  readonly tags: Tags;
  readonly paper: Paper;
  readonly faces: Faces;
  /** Puts words that are set without being broken into lines into the English of the reader. */
  readonly spell: Spell;
  /** How things of the pages from here on are set. */
  look: PageLook = DESK;
  /** Where the next thing goes, pt from the top of the page. */
  y = 0;
  readonly #doc: PdfDocument;
  /** Pages of the sheaf that is open. */
  #sheaf: Running[] = [];
  /** Pages of it with a letter that the typeface has no shape for. */
  readonly #lacking = new Set<number>();
  /** Pages of the sheaves that are done and written out. */
  #before = 0;
  #running: Running = { job: "", shade: "", set: "", reader: "" };
  #top = 0;
  readonly #outline: OutlineItem[];
  /** Entries of the outline that what follows stands under, once there is a page. */
  readonly #waiting: string[] = [];

  /** @param spell what every text goes through before it is measured; lines that were broken have been through it */
  constructor(doc: PdfDocument, faces: Faces, paper: Paper, spell: Spell = asWritten) {
    this.spell = spell;
    this.#doc = doc;
    this.pen = new Pen(doc, faces, () => this.#lacking.add(this.#sheaf.length - 1));
    this.tags = new Tags(doc, spell);
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

  /** Measures or sets with another look; what comes after has the one before. */
  withLook<Made>(look: PageLook, work: () => Made): Made {
    const { look: before } = this;
    this.look = look;
    try {
      return work();
    } finally {
      this.look = before;
    }
  }

  /** Where the text begins on this page, under its head. */
  get top(): number {
    return this.#top;
  }

  get bottom(): number {
    return this.paper.heightPt - BOTTOM_PT;
  }

  get pageCount(): number {
    return this.#before + this.#sheaf.length;
  }

  /** Height left on this page. */
  get room(): number {
    return this.bottom - this.y;
  }

  /** What the pages from here on carry at head and foot. */
  run(running: Partial<Running>): void {
    const told = Object.entries(running).map(([name, text]) => [name, text && this.spell(text)]);
    this.#running = { ...this.#running, ...Object.fromEntries(told) };
  }

  turnPage(): void {
    this.#doc.addPage();
    this.#sheaf.push(this.#running);
    for (const title of this.#waiting.splice(0)) this.#nest(title);
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

  /** An entry of the outline at the page that is open. */
  bookmark(title: string): void {
    this.#outline.at(-1)?.addItem(this.spell(title));
  }

  /** An entry at the next page, under which those that follow stand. */
  openBookmark(title: string): void {
    this.#waiting.push(this.spell(title));
  }

  #nest(title: string): void {
    const item = this.#outline.at(-1)?.addItem(title, { expanded: false });
    if (item) this.#outline.push(item);
  }

  closeBookmark(): void {
    if (this.#waiting.pop() === undefined && this.#outline.length > 1) this.#outline.pop();
  }

  lines(text: string, widthPt: number, style: TextStyle): string[] {
    return breakLines(printable(this.spell(text), this.faces[style.face]), widthPt, style, this.faces);
  }

  /**
   * Ends a sheaf of pages that are handed over together: only now is it known how many they are. They are numbered and
   * written out, so that a job of any size needs the memory of one sheaf.
   */
  endSheaf(): void {
    const total = this.#sheaf.length;
    this.#sheaf.forEach((running, index) => {
      this.#doc.switchToPage(this.#before + index);
      const page = { number: index + 1, total, lacksLetters: this.#lacking.has(index) };
      this.tags.artifact(() => drawFoot(this.pen, running, page, this.paper), "Pagination");
    });
    writePages(this.#doc);
    this.#before += total;
    this.#sheaf = [];
    this.#lacking.clear();
  }
}
