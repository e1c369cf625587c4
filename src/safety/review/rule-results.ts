import { type Figure, figureId } from "../../figures/index.ts";
import type { RuleOutcome, RuleResult, RuleSource } from "../../shade-plan/index.ts";
import type { Check, Rule } from "../rules/rule.ts";
import type { ActiveRule } from "../rules/rules-for.ts";
import type { SafetyShade } from "../safety-reads.ts";
import type { Evaluation } from "./evaluate.ts";
import { type Measurement, pulledMm } from "./measures.ts";
import type { NamedCord, Situation } from "./quantities/quantity.ts";
import { mmText, raiseText, ruleWords, upperFirst, valueAndLimit } from "./texts.ts";

/** The row as it is shown, where it is only listed. */
export function sourceOfRule(rule: Rule): RuleSource {
  const { id, words, cite, asOf, confidence, kind, status, note } = rule;
  return { ruleId: id, words, cite, asOf, confidence, kind, status, note };
}

/** Turns evaluations into results that people read; keeps the figures of their numbers, once each. */
export class ResultWriter {
  readonly #shade: Pick<SafetyShade, "units">;
  readonly #situation: Situation;
  readonly #hemAboveFloorMm: number | undefined;
  readonly workings: Figure[] = [];
  readonly #used = new Set<string>();

  constructor(shade: Pick<SafetyShade, "units">, situation: Situation, hemAboveFloorMm: number | undefined) {
    this.#shade = shade;
    this.#situation = situation;
    this.#hemAboveFloorMm = hemAboveFloorMm;
  }

  /** One literal with every field, set or not: this runs for every rule of every shade of a job. */
  result(rule: ActiveRule, { measurement, outcome, limit, why, geometry }: Evaluation): RuleResult {
    const { check } = rule;
    // A figure tells of heights above the floor: what was read from elsewhere has none.
    const figures =
      measurement === undefined || geometry !== undefined ? undefined : this.#figuresOf(check, measurement);
    const value = measurement?.value;
    const { valueText, limitText } = valueAndLimit(check, value, limit, this.#shade.units);
    const drawnTo =
      outcome === "not-proven" && measurement !== undefined && value !== undefined
        ? pulledMm(this.#situation, check, measurement)
        : undefined;
    const named = measurement && this.#what(check, measurement, value, geometry);
    const what = named?.text;
    const open = measurement && this.#openText(outcome, measurement, drawnTo);
    return {
      ruleId: rule.id,
      words: ruleWords(rule, this.#shade.units),
      cite: rule.cite,
      asOf: rule.asOf,
      confidence: rule.confidence,
      kind: rule.kind,
      status: rule.status,
      note: rule.note,
      outcome,
      why:
        measurement === undefined
          ? (why ?? "")
          : whyText(check, measurement, { what, valueText, limitText, open }),
      what,
      cords: named?.cords ?? measurement?.cords,
      open,
      value,
      limit,
      unit: check.unit,
      comparison: check.comparison,
      valueText,
      limitText,
      pulledMm: drawnTo,
      pullN: check.pullN,
      worst: measurement === undefined || value === undefined ? undefined : this.#worst(measurement.raise),
      test: outcome === "not-proven" ? (measurement?.test ?? check.test) : undefined,
      alsoTests: outcome === "not-proven" ? measurement?.alsoTests : undefined,
      figures,
    };
  }

  #worst(raise: number) {
    const { travelMm, hemBelowTopMm } = this.#situation.geometry;
    const risenMm = raise * travelMm;
    return {
      raise,
      hemBelowTopMm: hemBelowTopMm - risenMm,
      ...(this.#hemAboveFloorMm === undefined ? {} : { hemAboveFloorMm: this.#hemAboveFloorMm + risenMm }),
    };
  }

  #figuresOf(check: Check, measurement: Measurement): string[] | undefined {
    if (this.#used.has(check.quantity)) return undefined;
    const figure = measurement.sweep?.working?.(this.#situation.geometry, measurement.raise, check);
    if (figure === undefined) return undefined;
    measurement.value = figure.value;
    this.#used.add(check.quantity);
    this.workings.push(figure);
    return [figureId(figure)];
  }

  #what(
    check: Check,
    { sweep, raise }: Measurement,
    value: number | undefined,
    geometry = this.#situation.geometry,
  ): NamedCord | undefined {
    return sweep === undefined || value === undefined ? undefined : sweep.what(geometry, raise, check);
  }

  /** Why the number as it stands proves nothing. */
  #openText(
    outcome: RuleOutcome,
    { sweep, why, feeds, value }: Measurement,
    drawnTo: number | undefined,
  ): string | undefined {
    if (outcome !== "not-proven" || sweep === undefined || value === undefined) return undefined;
    const longerMm = (drawnTo ?? value) - value;
    if (feeds === true) {
      const more =
        longerMm > 0 ? ` By calculation up to ${mmText(longerMm, this.#shade.units)} more comes out.` : "";
      return `But the cord slides: a child’s pull makes the shade rise and feeds the loop, and the lock stops it from one side only.${more} Only the test decides.`;
    }
    if (why !== "") return why;
    if (longerMm > 0) {
      return `Under the pull a cord stretches and gives sideways, by calculation to ${mmText(value + longerMm, this.#shade.units)}. Only the test decides.`;
    }
    return "Only the test decides.";
  }
}

interface WhyParts {
  what: string | undefined;
  valueText: string | undefined;
  limitText: string | undefined;
  open: string | undefined;
}

function whyText(
  check: Check,
  { why, raise }: Measurement,
  { what, valueText, limitText, open }: WhyParts,
): string {
  if (valueText === undefined) return why;
  const limit = limitText === undefined || check.unit === "yes-no" ? "" : ` The limit is ${limitText}.`;
  if (what === undefined) {
    if (check.unit === "yes-no" || check.unit === "count") return why;
    return why.endsWith(".") ? `${upperFirst(valueText)}. ${why}${limit}` : `${why}: ${valueText}.${limit}`;
  }
  const said = `${upperFirst(what)}: ${valueText}, at its worst with the shade ${raiseText(raise)}.${limit}`;
  return open === undefined ? said : `${said} ${open}`;
}
