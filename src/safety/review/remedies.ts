import type { Remedy } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { RULE_OUTCOME_NAMES, type RuleOutcome } from "../../shade-plan/index.ts";
import type { Check } from "../rules/rule.ts";
import { CloserRows } from "./closer-rows.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { type Evaluation, evaluateCheck } from "./evaluate.ts";
import type { ShadeFacts } from "./lift-geometry.ts";
import type { TagHeights } from "./quantities/quantity.ts";
import {
  both,
  cleatVariant,
  guideVariants,
  kindVariants,
  rowVariant,
  tailVariant,
  type Variant,
  variantPatch,
} from "./variants.ts";

/** More remedies than this are a list that nobody reads. */
const MOST_REMEDIES = 6;

/** Finds remedies for failed rules: each is tried on the shade as it would be, and kept only if the outcome changes. */
export class RemedyFinder {
  readonly #shade: ShadeFacts;
  readonly #geometry: CordGeometry;
  readonly #tag: TagHeights;
  readonly #closer: CloserRows;
  readonly #rowVariants = new Map<CordGeometry, Variant[]>();
  #kindVariants: Variant[] | undefined;
  #guideVariants: Variant[] | undefined;
  #pairs: Variant[] | undefined;

  constructor(shade: ShadeFacts, geometry: CordGeometry, tag: TagHeights) {
    this.#shade = shade;
    this.#geometry = geometry;
    this.#tag = tag;
    this.#closer = new CloserRows(shade.resolved, shade.size, shade.grid);
  }

  /** Remedies for one failed rule; two changes together only where no single one helps. */
  of(check: Check, failed: Evaluation): Remedy[] {
    const { resolved } = this.#shade;
    const singles = [
      ...this.#own(check, failed),
      ...this.#kinds(),
      ...this.#guides(),
      ...this.#firstRows(check, this.#geometry),
    ];
    const found = this.#helping(check, singles);
    const kept = found.length > 0 ? found : this.#helping(check, this.#paired(check));
    return kept.slice(0, MOST_REMEDIES).map(({ variant, outcome }) => remedyOf(resolved, variant, outcome));
  }

  /** Closed rear cords where they leave fewer of these checks open. */
  ofOpen(checks: readonly Check[]): Remedy[] {
    const open = (geometry: CordGeometry) =>
      checks.filter((check) => {
        const { outcome } = evaluateCheck(check, { geometry, tag: this.#tag });
        return outcome === "not-proven" || outcome === "failed";
      }).length;
    return this.#guides().flatMap((variant) => {
      const left = open(variant.geometry);
      if (left >= checks.length) return [];
      return [offer(this.#shade.resolved, variant, `Of these, ${left} would stay open.`)];
    });
  }

  #kinds(): Variant[] {
    this.#kindVariants ??= kindVariants(this.#shade, this.#geometry);
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
    const { resolved } = this.#shade;
    return [
      ...tailVariant(resolved, this.#geometry, check, missedByMm),
      ...cleatVariant(resolved, this.#geometry, check, limit),
    ];
  }

  /** The fewest more rows that help; whether any do is asked first, since closer rows never make it worse. */
  #firstRows(check: Check, geometry: CordGeometry): Variant[] {
    const { most } = this.#closer;
    let rows = this.#shade.grid.rows.length + 1;
    if (!OF_ROWS.has(check.quantity) || rows > most) return [];
    if (this.#outcome(check, this.#rows(most, geometry)) === "failed") return [];
    while (rows < most && this.#outcome(check, this.#rows(rows, geometry)) === "failed") rows++;
    return [this.#rows(rows, geometry)];
  }

  #rows(rows: number, geometry: CordGeometry): Variant {
    let known = this.#rowVariants.get(geometry);
    if (known === undefined) {
      known = [];
      this.#rowVariants.set(geometry, known);
    }
    known[rows] ??= rowVariant(this.#shade, this.#closer, rows, geometry);
    return known[rows];
  }

  /** A lift without cords at the front, and closed or closer guides at the back. */
  #paired(check: Check): Variant[] {
    this.#pairs ??= this.#kinds()
      .filter(({ geometry }) => geometry.loop === undefined)
      .flatMap((first) => guideVariants(first.geometry).map((second) => both(first, second)));
    const first = this.#kinds()[0];
    const rows = first === undefined ? [] : this.#firstRows(check, first.geometry);
    return [...this.#pairs, ...rows.map((second) => (first === undefined ? second : both(first, second)))];
  }

  #helping(check: Check, variants: readonly Variant[]): { variant: Variant; outcome: RuleOutcome }[] {
    return variants
      .map((variant) => ({ variant, outcome: this.#outcome(check, variant) }))
      .filter(({ outcome }) => outcome !== "failed");
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

function remedyOf(resolved: ResolvedShade, variant: Variant, outcome: RuleOutcome): Remedy {
  return offer(resolved, variant, `This rule: ${RULE_OUTCOME_NAMES[outcome]}.`);
}

function offer(resolved: ResolvedShade, { says, settings }: Variant, then: string): Remedy {
  const { label, changes } = says();
  return {
    label,
    changes: changes === undefined ? then : `${changes} ${then}`,
    patch: variantPatch(resolved, settings),
  };
}
