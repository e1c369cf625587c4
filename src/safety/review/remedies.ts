import type { Remedy } from "../../figures/index.ts";
import type { RuleOutcome } from "../../shade-plan/index.ts";
import type { Check } from "../rules/rule.ts";
import type { SafetyShade } from "../safety-reads.ts";
import { CloserRows } from "./closer-rows.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { type Evaluation, evaluateCheck } from "./evaluate.ts";
import type { TagHeights } from "./quantities/quantity.ts";
import type { ReviewInput } from "./review-input.ts";
import {
  boardVariant,
  bothVariants,
  cleatVariant,
  guideVariants,
  kindVariants,
  leadVariant,
  releaseVariant,
  rowVariant,
  tailVariant,
  type Variant,
  variantPatch,
} from "./variants.ts";

/** More remedies than this are a list that nobody reads. */
const MOST_REMEDIES = 6;

/**
 * Finds remedies for failed rules: each is tried on the cords as they would be. Whether it cures the shade planned anew,
 * and what it comes to, is for who offers it to try, as with every remedy.
 */
export class RemedyFinder {
  readonly #facts: ReviewInput;
  readonly #geometry: CordGeometry;
  readonly #tag: TagHeights;
  readonly #closer: CloserRows;
  readonly #rowVariants = new Map<CordGeometry, Map<number, Variant>>();
  #kindVariants: Variant[] | undefined;
  #guideVariants: Variant[] | undefined;
  #pairs: Variant[] | undefined;

  constructor(facts: ReviewInput, geometry: CordGeometry, tag: TagHeights) {
    this.#facts = facts;
    this.#geometry = geometry;
    this.#tag = tag;
    this.#closer = new CloserRows(facts.shade, facts.size, facts.grid);
  }

  /** Remedies for one failed rule; two changes together only where no single one helps. */
  of(check: Check, failed: Evaluation): Remedy[] {
    const { shade } = this.#facts;
    const singles = [
      ...this.#own(check, failed),
      ...leadVariant(this.#geometry),
      ...releaseVariant(this.#geometry, check),
      ...boardVariant(this.#facts),
      ...this.#kinds(),
      ...this.#guides(),
      ...this.#firstRows(check, this.#geometry),
    ];
    const found = this.#helping(check, singles);
    const kept = found.length > 0 ? found : this.#helping(check, this.#paired(check));
    return kept.slice(0, MOST_REMEDIES).map((variant) => remedyOf(shade, variant));
  }

  /** Closed rear cords where they leave fewer of these checks open. */
  ofOpen(checks: readonly Check[]): Remedy[] {
    const open = (geometry: CordGeometry) =>
      checks.filter((check) => {
        const { outcome } = evaluateCheck(check, { geometry, tag: this.#tag });
        return outcome === "not-proven" || outcome === "failed";
      }).length;
    return this.#guides().flatMap((variant) => {
      return open(variant.geometry) < checks.length ? [remedyOf(this.#facts.shade, variant)] : [];
    });
  }

  #kinds(): Variant[] {
    this.#kindVariants ??= kindVariants(this.#facts, this.#geometry);
    return this.#kindVariants;
  }

  #guides(): Variant[] {
    this.#guideVariants ??= guideVariants(this.#geometry);
    return this.#guideVariants;
  }

  /** Tail and cleat, as far as they are missed by. */
  #own(check: Check, { measurement, limit }: Evaluation): Variant[] {
    if (limit === undefined || measurement?.value === undefined) return [];
    const missedByMm = Math.abs(measurement.value - limit);
    const { shade } = this.#facts;
    return [
      ...tailVariant(shade, this.#geometry, check, missedByMm),
      ...cleatVariant(shade, this.#geometry, check, limit),
    ];
  }

  /** The fewest more rows that help; whether any do is asked first, since closer rows never make it worse. */
  #firstRows(check: Check, geometry: CordGeometry): Variant[] {
    const { most } = this.#closer;
    let rows = this.#facts.grid.rows.length + 1;
    if (!OF_ROWS.has(check.quantity) || rows > most) return [];
    if (this.#outcome(check, this.#rows(most, geometry)) === "failed") return [];
    while (rows < most && this.#outcome(check, this.#rows(rows, geometry)) === "failed") rows++;
    return [this.#rows(rows, geometry)];
  }

  #rows(rows: number, geometry: CordGeometry): Variant {
    const known = this.#rowVariants.get(geometry) ?? new Map<number, Variant>();
    const variant = known.get(rows) ?? rowVariant(this.#facts, this.#closer, rows, geometry);
    this.#rowVariants.set(geometry, known.set(rows, variant));
    return variant;
  }

  /** A lift without cords at the front, and closed or closer guides at the back. */
  #paired(check: Check): Variant[] {
    const [board] = boardVariant(this.#facts);
    this.#pairs ??= [
      ...(board === undefined
        ? []
        : [...kindVariants(this.#facts, board.geometry), ...guideVariants(board.geometry)].map((second) =>
            bothVariants(board, second),
          )),
      ...this.#kinds()
        .filter(({ geometry }) => geometry.loop === undefined)
        .flatMap((first) => guideVariants(first.geometry).map((second) => bothVariants(first, second))),
    ];
    const first = this.#kinds()[0];
    const rows = first === undefined ? [] : this.#firstRows(check, first.geometry);
    return [
      ...this.#pairs,
      ...rows.map((second) => (first === undefined ? second : bothVariants(first, second))),
    ];
  }

  #helping(check: Check, variants: readonly Variant[]): Variant[] {
    return variants.filter((variant) => this.#outcome(check, variant) !== "failed");
  }

  #outcome(check: Check, { geometry }: Variant): RuleOutcome {
    return evaluateCheck(check, { geometry, tag: this.#tag }).outcome;
  }
}

/** Quantities that the spacing of rows changes. */
const OF_ROWS: ReadonlySet<Check["quantity"]> = new Set([
  "cord-between-contacts",
  "loop-perimeter",
  "rear-guide-spacing",
  "guided-loop-length",
  "any-loop-length",
]);

function remedyOf(shade: SafetyShade, { says, settings }: Variant): Remedy {
  return { ...says(), patch: variantPatch(shade, settings) };
}
