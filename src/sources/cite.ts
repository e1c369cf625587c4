import { SOURCES, type Source, type SourceId } from "./sources.ts";

/** Where a number comes from, down to clause, table or page. */
export interface Cite {
  source: SourceId;
  at?: string;
}

/** A number that cannot be written without its unit and where it comes from. */
export interface Sourced<V = number> {
  value: V;
  unit: string;
  cite: Cite;
}

export function cite(source: SourceId, at?: string): Cite {
  return at === undefined ? { source } : { source, at };
}

export function sourced<V>(value: V, unit: string, from: Cite): Sourced<V> {
  return { value, unit, cite: from };
}

export function sourceOf(from: Cite): Source {
  return SOURCES[from.source];
}

/** Title, and the place in it. */
export function citeInShort(from: Cite): string {
  const { title } = sourceOf(from);
  return from.at === undefined ? title : `${title}, ${from.at}`;
}

/** One line for a reader: title, place in it, and what to beware of. */
export function citeText(from: Cite): string {
  const { note } = sourceOf(from);
  return note === undefined ? citeInShort(from) : `${citeInShort(from)} (${note})`;
}
