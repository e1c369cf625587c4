import type { Span } from "./paper.ts";

/** Where things are set: a page, or the measure of one. */
export interface SheetSpace {
  y: number;
  readonly top: number;
  readonly bottom: number;
  turnPage(): void;
}

/** Pages in columns that are filled one after the other, each chapter of steps going on where the last one ended. */
export class StepColumns {
  readonly #sheet: SheetSpace;
  readonly #spans: readonly Span[];
  #column = 0;
  /** Where the columns of this page begin. */
  #top: number;
  pages = 1;

  /** From where the sheet has been filled to. */
  constructor(sheet: SheetSpace, spans: readonly Span[]) {
    this.#sheet = sheet;
    this.#spans = spans;
    this.#top = sheet.y;
  }

  get span(): Span {
    const span = this.#spans[this.#column];
    if (span === undefined) throw new Error(`invalid column: ${this.#column}`);
    return span;
  }

  get isInFirst(): boolean {
    return this.#column === 0;
  }

  get y(): number {
    return this.#sheet.y;
  }

  get room(): number {
    return this.#sheet.bottom - this.#sheet.y;
  }

  move(heightPt: number): void {
    this.#sheet.y += heightPt;
  }

  /** At the head of a column nothing is gained by another one. */
  get isFresh(): boolean {
    return this.#sheet.y <= this.#top + 0.01;
  }

  /** Height left in this column where what is set can go on in the next one of this page; none in the last. */
  get sharedRoom(): number {
    return this.#column === this.#spans.length - 1 ? 0 : this.room;
  }

  /** Goes on in the next column, or over the page, unless so much height is left. */
  need(heightPt: number): void {
    if (heightPt > this.room + 0.01 && !this.isFresh) this.next();
  }

  next(): void {
    this.#column += 1;
    if (this.#column === this.#spans.length) {
      this.#sheet.turnPage();
      this.#column = 0;
      this.#top = this.#sheet.y;
      this.pages += 1;
    }
    this.#sheet.y = this.#top;
  }
}
