import type { Finding, WorkingBook } from "../../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../../job/index.ts";
import type { Column, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { FIT_SLACK, lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";

/** More columns than any lock takes: the plan stays readable and the findings say the rest. */
const MOST_COLUMNS = 60;

/** Fewest columns with no bay wider than `largestMm`: n = ceil((W − 2e)/m) + 1, at least two. */
export function columnCount(widthMm: number, edgeInsetMm: number, largestMm: number): number {
  return Math.max(2, Math.ceil((widthMm - 2 * edgeInsetMm) / largestMm - FIT_SLACK) + 1);
}

/**
 * Ring columns by the largest spacing and the edge inset.
 *
 * The published FAQ divides by one bay too few (12 in at W = 62 in, where it means 10); this is the
 * corrected count.
 */
export function layColumns(
  resolved: ResolvedShade,
  size: Size,
  book: WorkingBook,
): { columns: Column[]; findings: Finding[] } {
  const { columns: asked } = resolved.making;
  const width = size.finishedWidthMm;
  const findings: Finding[] = [];
  const insetMm = Math.min(asked.edgeInsetMm, width / 4);
  if (insetMm < asked.edgeInsetMm) findings.push(insetTooWide(resolved, insetMm));

  const needed = columnCount(width, insetMm, asked.largestSpacingMm);
  const count = Math.min(
    MOST_COLUMNS,
    asked.count ??
      book.figure("shape.columns", {
        label: "Ring columns",
        symbol: "n",
        unit: "count",
        formula: "max(2, ceil((W − 2·e) / m) + 1)",
        given: {
          W: [width, "mm", "finished width"],
          e: [insetMm, "mm", "edge inset"],
          m: [asked.largestSpacingMm, "mm", "largest spacing of columns"],
        },
        cite: cite("ring-spacing-faq", "count corrected"),
        compute: ({ W, e, m }) => columnCount(W, e, m),
      }),
  );
  const spacingMm = book.figure("shape.column-spacing", {
    label: "Spacing of columns",
    symbol: "b",
    unit: "mm",
    formula: "(W − 2·e) / (n − 1)",
    given: {
      W: [width, "mm", "finished width"],
      e: [insetMm, "mm", "edge inset"],
      n: [count, "count", "ring columns"],
    },
    cite: cite("geometry"),
    compute: ({ W, e, n }) => (W - 2 * e) / (n - 1),
  });
  if (spacingMm > asked.largestSpacingMm + 1e-6) {
    findings.push(tooFewColumns(resolved, count, needed, spacingMm, asked.largestSpacingMm));
  }
  const columns = Array.from({ length: count }, (_, i) => ({
    number: i + 1,
    xMm: i === count - 1 ? width - insetMm : insetMm + i * spacingMm,
  }));
  return { columns, findings };
}

function insetTooWide(resolved: ResolvedShade, insetMm: number): Finding {
  return {
    id: "shape.inset-too-wide",
    severity: "fix",
    ...atShade(resolved, "making/columns/edgeInsetMm"),
    text: `An edge inset of ${lengthText(resolved.making.columns.edgeInsetMm, resolved.units)} leaves no room between the edge columns; ${lengthText(insetMm, resolved.units)} is used.`,
    cite: cite("geometry"),
    remedies: [
      {
        label: `Set the edge inset to ${lengthText(insetMm, resolved.units)}`,
        patch: settingPatch(resolved, "columns", "edgeInsetMm", insetMm),
      },
    ],
  };
}

function tooFewColumns(
  resolved: ResolvedShade,
  count: number,
  needed: number,
  spacingMm: number,
  largestMm: number,
): Finding {
  return {
    id: "shape.columns-too-few",
    severity: "fix",
    ...atShade(resolved, "making/columns/count"),
    text: `${count} columns stand ${lengthText(spacingMm, resolved.units)} apart, more than the ${lengthText(largestMm, resolved.units)} asked for: the hem and the folds may bow between them. ${needed} columns keep to it.`,
    cite: cite("ring-spacing-faq", "spacing too wide for limp cloth"),
    figures: ["shape.column-spacing"],
    remedies:
      needed > MOST_COLUMNS
        ? []
        : [{ label: `Use ${needed} columns`, patch: settingPatch(resolved, "columns", "count", needed) }],
  };
}
