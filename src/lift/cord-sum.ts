import type { FigureUnit, WorkingBook } from "../figures/index.ts";
import { type Cite, cite } from "../sources/index.ts";

interface SumSpec {
  label: string;
  symbol: string;
  unit: FigureUnit;
  each: [number: number, value: number][];
  name: string;
  cite: Cite;
}

/** A sum over all cords, each with its own symbol, so that the working can be read and checked. */
export function sumFigure(book: WorkingBook, id: string, { each, name, ...spec }: SumSpec): number {
  const prefix = spec.unit === "N" ? "p" : "c";
  const given: Record<string, readonly [number, FigureUnit, string]> = {};
  for (const [number, value] of each) given[`${prefix}${number}`] = [value, spec.unit, `${name} ${number}`];
  return book.figure(id, {
    ...spec,
    formula: Object.keys(given).join(" + "),
    given,
    compute: (values) => Object.values(values).reduce((sum, value) => sum + value, 0),
  });
}

/** All cords as they are cut, mm. */
export function cordTotal(book: WorkingBook, cords: readonly { number: number; cutMm: number }[]): number {
  return sumFigure(book, "rig.cord-total", {
    label: "Cord to cut in all",
    symbol: "C",
    unit: "mm",
    each: cords.map(({ number, cutMm }) => [number, cutMm]),
    name: "cord",
    cite: cite("arithmetic", "each length raised to the ruler first"),
  });
}
