import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";

/** Flat width of the pleated cloth, and the pieces where the pleats are cut apart. */
export function writePieces(resolved: ResolvedShade, size: Size, { pleats }: Form, book: WorkingBook): void {
  const [pleat] = pleats;
  if (pleat === undefined) return;
  const F = [pleats.reduce((sum, { foldedMm }) => sum + foldedMm, 0), "mm", "cloth in all pleats"] as const;
  book.figure("shape.flat-width", {
    label: "Width of the flat, hemmed cloth",
    symbol: "W_f",
    unit: "mm",
    formula: "W + F",
    given: { W: [size.finishedWidthMm, "mm", "finished width"], F },
    cite: cite("inset-pleats", "+12 in (30 cm) for each pleat"),
    compute: ({ W, F: folded }) => W + folded,
  });
  if (resolved.making.pleat.cut === "in-one") return;
  const s = [resolved.making.hems.seamMm, "mm", "seam on each piece"] as const;
  const piece = (id: string, label: string, widthMm: number, what: string) =>
    book.figure(id, {
      label,
      symbol: "C_p",
      unit: "mm",
      formula: "p + 2·s",
      given: { p: [widthMm, "mm", what], s },
      cite: cite("inset-pleats", "centre 80 cm cut 83, inserts 39 cm cut 42"),
      compute: (v) => v.p + 2 * v.s,
    });
  const widest = Math.max(...pleats.map(({ foldedMm }) => foldedMm));
  piece("shape.insert-cut", "Pleat insert: cut width", widest, "cloth in one pleat");
  if (pleat.foldedMm < widest)
    piece("shape.edge-insert-cut", "Pleat insert at the edge: cut width", pleat.foldedMm, "half a pleat");
  const second = pleats[1];
  if (second !== undefined)
    piece(
      "shape.centre-cut",
      "Piece between two pleats: cut width",
      second.xMm - pleat.xMm,
      "between two pleats",
    );
  book.figure("shape.side-cut", {
    label: "Side piece: cut width",
    symbol: "C_p",
    unit: "mm",
    formula: "p + s + h",
    given: {
      p: [pleat.xMm, "mm", "edge to the first pleat"],
      s,
      h: [resolved.making.hems.sideTurnMm * resolved.making.hems.sideTurns, "mm", "side hem"],
    },
    cite: cite("inset-pleats", "sides 35 cm cut 38"),
    compute: (v) => v.p + v.s + v.h,
  });
}
