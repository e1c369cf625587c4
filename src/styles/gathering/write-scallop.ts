import type { WorkingBook } from "../../figures/index.ts";
import { cite } from "../../sources/index.ts";
import type { Scallop } from "./scallop.ts";

/** Writes down how far a scallop hangs, by the catenary of its cloth. */
export function writeSag(scallop: Scallop, label: string, book: WorkingBook): number {
  const { spanMm, arcMm, sagMm, parameterMm } = scallop;
  const w = [spanMm, "mm", "between two columns"] as const;
  if (parameterMm === undefined) {
    return book.figure("shape.sag", {
      label,
      symbol: "D",
      unit: "mm",
      formula: "(a − w) / 2",
      given: { a: [arcMm, "mm", "cloth across a scallop"], w: [arcMm, "mm", "between two columns"] },
      cite: cite("catenary"),
      note: "as much cloth as width: nothing hangs",
      compute: (v) => (v.a - v.w) / 2,
    });
  }
  book.figure("shape.sag", {
    label,
    symbol: "D",
    unit: "mm",
    formula: "2·k·sinh(w / (4·k))^2",
    given: { k: [parameterMm, "mm", "parameter of the catenary: its cloth is 2·k·sinh(w / (2·k))"], w },
    cite: cite("catenary"),
    compute: (v) => 2 * v.k * Math.sinh(v.w / (4 * v.k)) ** 2,
  });
  return sagMm;
}

/** Writes down the cloth that a scallop of this sag takes. */
export function writeArc(scallop: Scallop, book: WorkingBook): number {
  const { spanMm, arcMm, parameterMm } = scallop;
  if (parameterMm === undefined) return arcMm;
  return book.figure("shape.scallop-cloth", {
    label: "Cloth across a scallop",
    symbol: "a",
    unit: "mm",
    formula: "2·k·sinh(w / (2·k))",
    given: {
      k: [parameterMm, "mm", "parameter of the catenary that hangs by the sag"],
      w: [spanMm, "mm", "between two columns"],
    },
    cite: cite("catenary"),
    compute: (v) => 2 * v.k * Math.sinh(v.w / (2 * v.k)),
  });
}
