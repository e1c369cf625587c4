import type { Paint } from "../../drawing/index.ts";
import type { FaceName } from "../../letters/index.ts";

/** How a line of text looks: face, size and leading in points, and colour by name. */
export interface TextStyle {
  face: FaceName;
  sizePt: number;
  leadingPt: number;
  paint: Paint;
}

function style(face: FaceName, sizePt: number, leadingPt: number, paint: Paint = "ink"): TextStyle {
  return { face, sizePt, leadingPt, paint };
}

/** The type scale. Nothing on a page is set in any other size, drawings apart. */
export const TYPE = {
  title: style("semibold", 28, 32),
  chapter: style("semibold", 21, 25),
  section: style("semibold", 12, 16),
  step: style("semibold", 10.5, 14),
  lead: style("regular", 12, 17, "pencil"),
  body: style("regular", 10, 14),
  strong: style("semibold", 10, 14),
  cell: style("regular", 9.5, 13),
  cellStrong: style("semibold", 9.5, 13),
  label: style("semibold", 8.5, 11.5, "pencil"),
  note: style("regular", 8.8, 11.8),
  small: style("regular", 8.5, 11.5, "pencil"),
  caption: style("italic", 8.5, 11.5, "pencil"),
  tableSection: style("semibold", 14, 18),
  tableBody: style("regular", 12, 16),
  tableStrong: style("semibold", 12, 16),
  tableCell: style("regular", 12, 19),
  tableLabel: style("semibold", 12, 15, "pencil"),
  /** Figures that are cut, marked and threaded by. */
  tableFigure: style("semibold", 15, 19),
  key: style("semibold", 20, 25),
  running: style("regular", 9, 11.5, "pencil"),
  runningStrong: style("semibold", 9, 11.5, "pencil"),
} as const satisfies Record<string, TextStyle>;

export function painted(base: TextStyle, paint: Paint): TextStyle {
  return { ...base, paint };
}

/** Baseline of the first line below the top of its leading, pt: letters sit centred in their line. */
export function firstBaseline(style: TextStyle): number {
  return style.leadingPt / 2 + style.sizePt * 0.33;
}
