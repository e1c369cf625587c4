import { asWritten, type Spell } from "../../words/index.ts";
import type { PdfDocument, StructElement } from "./pdf-kit.ts";

/** Structure types of tagged PDF (ISO 32000-1:2008, 14.8.4) that a workbook uses. */
export type StructType =
  | "Document"
  | "Sect"
  | "H1"
  | "H2"
  | "H3"
  | "H4"
  | "P"
  | "L"
  | "LI"
  | "Lbl"
  | "LBody"
  | "Table"
  | "TR"
  | "TH"
  | "TD"
  | "Figure"
  | "Caption";

export interface TagOptions {
  title?: string;
  /** What a figure shows, for those who cannot see it. */
  alt?: string;
  actual?: string;
  scope?: "Column" | "Row";
  bbox?: [number, number, number, number];
}

type ArtifactType = "Pagination" | "Layout" | "Page";

/**
 * The tree of meaning beside the marks on paper. Everything printed is either content of an element
 * or an artifact; nothing crosses a page.
 */
export class Tags {
  readonly #doc: PdfDocument;
  readonly #spell: Spell;
  readonly #open: StructElement[] = [];
  /** Levels of the headings that what follows stands under, as they were asked for. */
  readonly #levels: number[] = [];
  /** Elements that anything may stand in, the innermost last. */
  readonly #parts: StructElement[] = [];

  constructor(doc: PdfDocument, spell: Spell = asWritten) {
    this.#doc = doc;
    this.#spell = spell;
  }

  open(type: StructType, options: TagOptions = {}): void {
    const element = this.#doc.struct(type, this.#spelt(options));
    const parent = this.#open.at(-1);
    if (parent) parent.add(element);
    else this.#doc.addStructure(element);
    this.#open.push(element);
    if (type === "Document" || type === "Sect") this.#parts.push(element);
  }

  #spelt({ title, alt, ...rest }: TagOptions): TagOptions {
    return {
      ...rest,
      ...(title === undefined ? {} : { title: this.#spell(title) }),
      ...(alt === undefined ? {} : { alt: this.#spell(alt) }),
    };
  }

  close(): void {
    this.#pop()?.end();
  }

  #pop(): StructElement | undefined {
    const element = this.#open.pop();
    if (element !== undefined && element === this.#parts.at(-1)) this.#parts.pop();
    return element;
  }

  within(type: StructType, body: () => void, options?: TagOptions): void {
    this.open(type, options);
    body();
    this.close();
  }

  /** Content of the element that is open; an element can have some on several pages. */
  content(type: StructType, body: () => void): void {
    const content = this.#doc.markStructureContent(type);
    body();
    this.#doc.endMarkedContent();
    this.#open.at(-1)?.add(content);
  }

  /** An element with one piece of content. */
  mark(type: StructType, body: () => void, options?: TagOptions): void {
    const named = this.#inOrder(type);
    this.within(named, () => this.content(named, body), options);
  }

  /** A heading as one level under the one that it stands under: the first is of the first level, and none is left out. */
  #inOrder(type: StructType): StructType {
    const asked = Number(/^H(\d)$/.exec(type)?.[1] ?? 0);
    if (asked === 0) return type;
    while ((this.#levels.at(-1) ?? 0) >= asked) this.#levels.pop();
    this.#levels.push(asked);
    return `H${this.#levels.length}` as StructType;
  }

  /** An element of the part that is open, whatever is open inside it: a page can turn in the middle of a table. */
  aside(type: StructType, body: () => void): void {
    const element = this.#doc.struct(type);
    this.#parts.at(-1)?.add(element);
    const content = this.#doc.markStructureContent(type);
    body();
    this.#doc.endMarkedContent();
    element.add(content);
    element.end();
  }

  /** Rules, boxes, running heads: seen, but not read out. */
  artifact(body: () => void, type: ArtifactType = "Layout"): void {
    this.#doc.markContent("Artifact", { type });
    body();
    this.#doc.endMarkedContent();
  }
}
