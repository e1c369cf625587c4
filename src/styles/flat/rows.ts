import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Row, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { LiftPartsHeight } from "../style.ts";
import { layEvenFolds } from "./even-folds.ts";
import { type FoldAsk, type Folds, foldLimitMm, layFolds } from "./folds.ts";
import { BESIDE_MECHANISM_MM, BESIDE_RIB_MM, HEADRAIL_FLOOR_MM } from "./headrail.ts";

/** Rows of a shade that folds along them. */
export interface Rows {
  folds: Folds;
  /** What was asked of the folds, for findings. */
  ask: FoldAsk;
  headrailNeededMm: number;
}

/** Styles that hang straight between their rows can carry ribs. */
function takesRibs({ style, making }: ResolvedShade): boolean {
  return making.ribs.kind !== "none" && (style === "flat" || style === "ribbed");
}

/** Headrail allowance and folds by the published rule that the maker chose. */
export function layRows(
  resolved: ResolvedShade,
  size: Size,
  liftParts: LiftPartsHeight,
  book: WorkingBook,
): Rows {
  const { fold } = resolved.making;
  const headrailNeededMm = headrailNeeded(resolved, liftParts, book);
  const headrailMm = fold.rule === "no-headrail" ? 0 : (fold.headrailMm ?? headrailNeededMm);
  const cascade = cascadeAsk(resolved, book);
  const ask: FoldAsk = {
    lengthMm: size.finishedLengthMm,
    headrailMm,
    skirtMm: fold.rule === "even-fold" ? 0 : cascade.skirtMm,
    gradeStepMm: fold.rule === "even-fold" ? 0 : cascade.gradeStepMm,
    largestFoldMm: fold.largestSpacingMm,
    smallestFoldMm: Math.min(fold.smallestSpacingMm, fold.largestSpacingMm),
    stackMm: fold.stackMm,
    rows: fold.rows,
    spacingMm: fold.rule === "even-fold" ? undefined : fold.spacingMm,
  };
  const folds =
    fold.rule === "even-fold"
      ? layEvenFolds({ ...ask, hemBarMm: fold.hemBarMm, ringStackMm: fold.ringStackMm })
      : layFolds(ask);
  writeDown(resolved, size, ask, folds, book);
  return { folds, ask, headrailNeededMm };
}

/** A row at the lower end of every fold. */
export function rowsFromHem({ bottomSectionMm, foldsMm }: Folds, lengthMm: number): Row[] {
  let fromHemMm = bottomSectionMm;
  return foldsMm.map((foldMm, i) => {
    const row = { number: i + 1, fromHemMm, yMm: lengthMm - fromHemMm };
    fromHemMm += foldMm;
    return row;
  });
}

/**
 * A cascade shows each fold c below the one in front. The top fold is in front and the hem flap behind, so the half
 * folds grow by c downwards: the folds step by 2·c, and the hem hangs c below the lowest of them.
 */
function cascadeAsk(
  { making: { fold } }: ResolvedShade,
  book: WorkingBook,
): { gradeStepMm: number; skirtMm: number } {
  if (fold.cascadeMm === 0 || !canCascade(fold))
    return { gradeStepMm: fold.gradeStepMm, skirtMm: fold.skirtMm };
  const step = [fold.cascadeMm, "mm", "each fold shows below the one in front"] as const;
  return {
    gradeStepMm: book.figure("shape.cascade-step", {
      label: "Each fold smaller than the one below",
      symbol: "c_F",
      unit: "mm",
      formula: "2·c",
      given: { c: step },
      cite: cite("cascade-folds"),
      compute: ({ c }) => 2 * c,
    }),
    skirtMm: book.figure("shape.cascade-hem", {
      label: "Hem below the lowest fold",
      symbol: "k",
      unit: "mm",
      formula: "b + c",
      given: { b: [fold.skirtMm, "mm", "skirt"], c: step },
      cite: cite("cascade-folds"),
      compute: ({ b, c }) => b + c,
    }),
  };
}

/** Fixed spacings and even folds leave a cascade nothing to step by. */
export function canCascade(fold: ResolvedShade["making"]["fold"]): boolean {
  return fold.rule !== "even-fold" && fold.spacingMm === undefined;
}

export function headrailNeeded(
  resolved: ResolvedShade,
  liftParts: LiftPartsHeight,
  book: WorkingBook,
): number {
  const ribbed = takesRibs(resolved);
  const fallMm = Math.min(resolved.opening.head?.fallMm ?? 0, ...resolved.opening.heightsMm);
  const most = ribbed ? "max(u, t + h + m, r + q)" : "max(u, t + h + m)";
  return book.figure("shape.headrail-needed", {
    label: "Headrail allowance needed",
    symbol: "T_min",
    unit: "mm",
    formula: fallMm > 0 ? `${most} + j` : most,
    given: {
      u: [HEADRAIL_FLOOR_MM, "mm", "least allowance"],
      t: [resolved.board.thicknessMm, "mm", "board thickness"],
      h: [liftParts.heightMm, "mm", liftParts.label],
      m: [BESIDE_MECHANISM_MM, "mm", "beside the mechanism"],
      ...(ribbed
        ? {
            r: [resolved.rib.widthMm, "mm", "rib face"] as const,
            q: [BESIDE_RIB_MM, "mm", "beside the rib"] as const,
          }
        : {}),
      ...(fallMm > 0 ? { j: [fallMm, "mm", "fall of the head: nothing rises into it"] as const } : {}),
    } as Record<"u" | "t" | "h" | "m" | "r" | "q" | "j", readonly [number, "mm", string]>,
    cite: cite("headrail-allowance"),
    note: "board and what hangs below it are the mechanism, since the cloth hangs from the board’s upper edge",
    compute: (v) => Math.max(v.u, v.t + v.h + v.m, ribbed ? v.r + v.q : 0) + (fallMm > 0 ? v.j : 0),
  });
}

/** The figures of the rule that was followed, so that each can be shown and checked. */
function writeDown(resolved: ResolvedShade, size: Size, ask: FoldAsk, folds: Folds, book: WorkingBook): void {
  const length = [size.finishedLengthMm, "mm", "finished length"] as const;
  const headrail = [folds.headrailMm, "mm", "headrail allowance"] as const;
  const rows = [folds.foldsMm.length, "count", "ring rows"] as const;
  const skirt = [folds.skirtMm, "mm", "skirt below the stack"] as const;
  if (folds.unmet.includes("length")) return;

  if (resolved.making.fold.rule === "even-fold") {
    book.figure("shape.fold", {
      label: "Fold",
      symbol: "F",
      unit: "mm",
      formula: "(L − T − h) / p",
      given: { L: length, T: headrail, h: [folds.bottomSectionMm, "mm", "hem bar section"], p: rows },
      cite: cite("even-fold-slides", "number of folds rounded up, not to nearest"),
      compute: ({ L, T, h, p }) => (L - T - h) / p,
    });
    return;
  }
  const source =
    resolved.making.fold.rule === "no-headrail" ? cite("ring-spacing-faq") : cite("pocket-spacing");
  if (ask.spacingMm !== undefined && folds.foldsMm[0] === ask.spacingMm) {
    book.figure("shape.headrail", {
      label: "Headrail allowance left over by the fixed spacing",
      symbol: "T",
      unit: "mm",
      formula: "L − k − s / 2 − p·s",
      given: { L: length, k: skirt, s: [ask.spacingMm, "mm", "spacing of rows"], p: rows },
      cite: cite("geometry"),
      compute: ({ L, k, s, p }) => L - k - s / 2 - p * s,
    });
    return;
  }
  const step = (folds.foldsMm[0] ?? 0) - (folds.foldsMm[1] ?? folds.foldsMm[0] ?? 0);
  if (ask.rows === undefined && step === 0) {
    book.figure("shape.half-folds", {
      label: "Number of half folds, odd",
      symbol: "N",
      unit: "count",
      formula: "2·p + 1",
      given: { p: rows },
      cite: source,
      note: `the fewest rows whose spacing is at most ${Math.round(foldLimitMm(ask) * 10) / 10} mm`,
      compute: ({ p }) => 2 * p + 1,
    });
  }
  if (step > 0) {
    book.figure("shape.half-fold", {
      label: "Lowest half fold",
      symbol: "f",
      unit: "mm",
      formula: "(L − T − k + c·p·(p − 1) / 2) / (2·p + 1)",
      given: { L: length, T: headrail, k: skirt, c: [step, "mm", "step from fold to fold"], p: rows },
      cite: cite("geometry", "half-fold rule with folds that grow smaller upwards"),
      compute: ({ L, T, k, c, p }) => (L - T - k + (c * p * (p - 1)) / 2) / (2 * p + 1),
    });
    return;
  }
  book.figure("shape.half-fold", {
    label: "Half fold",
    symbol: "f",
    unit: "mm",
    formula: "(L − T − k) / (2·p + 1)",
    given: { L: length, T: headrail, k: skirt, p: rows },
    cite: source,
    compute: ({ L, T, k, p }) => (L - T - k) / (2 * p + 1),
  });
}
