import { type Figure, type Finding, type StageResult, type Working, WorkingBook } from "../figures/index.ts";

/** A stage that still writes its figures into a book, as one that returns them. */
export function booked<I extends object, V>(
  run: (input: I, book: WorkingBook) => { values: V; findings: readonly Finding[] },
): (input: I) => StageResult<V> {
  return (input) => {
    const book = new WorkingBook();
    return { ...run(input, book), workings: book.workings.map(written) };
  };
}

function written(working: Working): Figure {
  const rule = { id: () => working.id, restsOn: () => [], working: () => working };
  return { value: working.value, rule, given: {}, of: undefined };
}
