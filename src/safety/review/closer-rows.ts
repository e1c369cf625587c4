import { STYLE_TRAITS } from "../../job/index.ts";
import type { Grid, Row, Size } from "../../shade-plan/index.ts";
import { upToMark } from "../../units/index.ts";
import type { SafetyShade } from "../safety-reads.ts";

/** More rows than this only make a thick stack: the search for a count that does ends here. */
const MOST_MORE_ROWS = 40;

/**
 * The same shade with more rows, by the rule that the maker chose. None where the folds follow a fixed spacing
 * or grow step by step, since then it is that setting which the maker would have to give up.
 */
export class CloserRows {
  readonly #shade: SafetyShade;
  readonly #size: Size;
  readonly #grid: Grid;

  constructor(shade: SafetyShade, size: Size, grid: Grid) {
    this.#shade = shade;
    this.#size = size;
    this.#grid = grid;
  }

  /** The most rows that keep the smallest useful spacing; as many as now where none more do. */
  get most(): number {
    const { fold } = this.#shade.making;
    const now = this.#grid.rows.length;
    if (!STYLE_TRAITS[this.#shade.style].followsFoldRules) return now;
    if (
      fold.spacingMm !== undefined ||
      (fold.rule !== "even-fold" && (fold.gradeStepMm > 0 || fold.cascadeMm > 0))
    )
      return now;
    let most = now;
    while (most < now + MOST_MORE_ROWS && this.foldMm(most + 1) >= fold.smallestSpacingMm) most++;
    return most;
  }

  /** Half folds F = (L − T − k) / (p + 1/2) or whole folds F = (L − T − h) / p, as the published rules have them. */
  foldMm(rows: number): number {
    const { headrailMm, bottomSectionMm, skirtMm } = this.#grid;
    const clear = this.#size.finishedLengthMm - headrailMm;
    return this.#even ? (clear - bottomSectionMm) / rows : (clear - skirtMm) / (rows + 1 / 2);
  }

  grid(rows: number): Grid {
    const foldMm = this.foldMm(rows);
    const lengthMm = this.#size.finishedLengthMm;
    const { headrailMm, skirtMm } = this.#grid;
    const bottomSectionMm = this.#even ? this.#grid.bottomSectionMm : skirtMm + foldMm / 2;
    const laid: Row[] = Array.from({ length: rows }, (_, i) => {
      const fromHemMm = bottomSectionMm + i * foldMm;
      return { number: i + 1, fromHemMm, yMm: lengthMm - fromHemMm };
    });
    const travelMm = this.#even ? this.#grid.travelMm : lengthMm - bottomSectionMm - headrailMm;
    return { ...this.#grid, rows: laid, bottomSectionMm, travelMm };
  }

  /** The setting that gives just these rows: the largest spacing, on a mark of the ruler where one will do. */
  setting(rows: number): [key: "largestSpacingMm" | "rows", value: number] {
    if (this.#shade.making.fold.rows !== undefined) return ["rows", rows];
    const foldMm = this.foldMm(rows);
    const fewer = this.foldMm(rows - 1);
    // To a thousandth, so that a mark in inches does not trail its rounding into the job.
    const marked = Math.round(upToMark(foldMm, this.#shade.units.ruler) * 1000) / 1000;
    return ["largestSpacingMm", marked >= foldMm && marked < fewer ? marked : (foldMm + fewer) / 2];
  }

  get #even(): boolean {
    return this.#shade.making.fold.rule === "even-fold";
  }
}
