/** Papers that home printers take. */
export const PAPER_KINDS = ["letter", "a4"] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

/** Points of the page: 1 pt = 1/72 in exactly (ISO 32000-1:2008, 8.3.2.3), so 72 / 25.4 for each mm. */
export const PT_PER_MM = 72 / 25.4;

export interface Paper {
  kind: PaperKind;
  name: string;
  widthPt: number;
  heightPt: number;
}

/** US Letter is 8 1/2 × 11 in (ANSI/ASME Y14.1, size A); A4 is 210 × 297 mm (ISO 216). */
export const PAPERS: Record<PaperKind, Paper> = {
  letter: { kind: "letter", name: "US Letter", widthPt: 612, heightPt: 792 },
  a4: { kind: "a4", name: "A4", widthPt: 210 * PT_PER_MM, heightPt: 297 * PT_PER_MM },
};

/** Millimetres of paper to points. */
export function pt(lengthMm: number): number {
  return lengthMm * PT_PER_MM;
}

/** Points to millimetres of paper. */
export function mm(lengthPt: number): number {
  return lengthPt / PT_PER_MM;
}

/** White border of every page: wide enough for a ring binder, and for printers that cannot reach the edge. */
export const MARGIN_PT = 54;
/** Baseline of the running head, from the top, and of the foot, from the bottom. */
export const HEAD_PT = 36;
export const FOOT_PT = 34;
/** Where the text ends, from the bottom. */
export const BOTTOM_PT = 62;

/** Twelve columns with a gutter between them: everything stands on one of their edges. */
const COLUMNS = 12;
const GUTTER_PT = 12;

export interface Span {
  x: number;
  width: number;
}

/** The place of `count` columns from column `first` (0 is the leftmost). */
export function columns(paper: Paper, first: number, count: number): Span {
  const whole = paper.widthPt - 2 * MARGIN_PT;
  const one = (whole - GUTTER_PT * (COLUMNS - 1)) / COLUMNS;
  return {
    x: MARGIN_PT + first * (one + GUTTER_PT),
    width: count * one + (count - 1) * GUTTER_PT,
  };
}
