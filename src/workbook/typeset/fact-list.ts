import type { Book } from "./book.ts";
import type { Span } from "./paper.ts";
import { table } from "./table.ts";
import type { CellLike, TableSpec } from "./table-spec.ts";

export interface FactLine {
  label: string;
  text: string;
  strong?: boolean;
}

/** Label and value under each other, ruled quietly: the sizes of a thing. */
export function factTable(
  title: string,
  facts: readonly FactLine[],
  shares: [number, number] = [1, 1.1],
): TableSpec {
  return {
    title,
    columns: [
      { title: "", share: shares[0] },
      { title: "", share: shares[1] },
    ],
    rows: facts.map(({ label, text, strong }): CellLike[] => [
      { text: label, quiet: true },
      { text, strong: strong ?? true },
    ]),
  };
}

export interface FactListLayout extends Partial<Span> {
  shares?: [number, number];
  heading?: string;
  after?: number;
}

export function factList(
  book: Book,
  title: string,
  facts: readonly FactLine[],
  place: FactListLayout = {},
): void {
  const { shares, ...rest } = place;
  table(book, { ...factTable(title, facts, shares), ...rest });
}
