import { type Figure, type Finding, figureRule, type Remedy } from "../figures/index.ts";
import { type Cord, partChoice } from "../job/index.ts";
import type { Lift } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { forceText, trimmed } from "../units/index.ts";
import type { LiftShade } from "./lift-input.ts";

/** Breaking strength over the largest load of a cord that runs over small radii again and again. */
export const STRENGTH_FACTOR = sourced(
  5,
  "ratio",
  cite("from-memory", "factor of 5 for cord that runs over small radii"),
);
/** What a knot leaves of a cord's strength. */
export const KNOT = sourced(
  0.5,
  "ratio",
  cite("from-memory", "a knot keeps about half of a cord’s strength"),
);

const RUNNING = figureRule({
  id: "lift.strength-running",
  label: "Strength over the largest pull in one cord",
  symbol: "n",
  unit: "ratio",
  formula: "B / P",
  inputs: {
    B: ["N", "breaking strength", "lift/cord"],
    P: [
      "N",
      "largest pull in one cord",
      "figure:lift.cord-*-pull",
      "figure:lift.held",
      "figure:shape.columns",
    ],
  },
  cite: STRENGTH_FACTOR.cite,
  compute: ({ B, P }) => B / P,
});

const KNOTTED = figureRule({
  id: "lift.strength-knot",
  label: "Strength of the knot over the largest load of one cord",
  symbol: "n",
  unit: "ratio",
  formula: "k·B / T",
  inputs: {
    k: ["ratio", "what a knot leaves"],
    B: ["N", "breaking strength", "lift/cord"],
    T: ["N", "largest load of one cord", "figure:lift.held", "figure:shape.columns"],
  },
  cite: KNOT.cite,
  compute: ({ k, B, T }) => (k * B) / T,
});

/** Is the cord strong enough, running and at its knot? */
export function judgeCordStrength(
  shade: LiftShade,
  cords: Lift["cords"],
  /** Would another cord go where this one goes? */
  takes: (cord: Cord) => boolean,
): { findings: Finding[]; workings: Figure[] } {
  const loadN = largest(cords, "loadN");
  const runningN = largest(cords, "pullN");
  const { breakingN } = shade.cord;
  if (breakingN === undefined)
    return { findings: [unknownStrength(shade, { loadN, runningN })], workings: [] };
  if (loadN <= 0) return { findings: [], workings: [] };
  const running = RUNNING.figure({ B: breakingN, P: runningN });
  const knotted = KNOTTED.figure({ k: KNOT.value, B: breakingN, T: loadN });
  const factor = Math.min(running.value, knotted.value);
  return {
    findings:
      factor >= STRENGTH_FACTOR.value
        ? []
        : [tooWeak(shade, takes, factor, neededStrengthN({ loadN, runningN }))],
    workings: [running, knotted],
  };
}

/** Breaking strength that is asked of a cord that carries this at its knot and this where it runs, N. */
export function neededStrengthN({ loadN, runningN }: { loadN: number; runningN: number }): number {
  return STRENGTH_FACTOR.value * Math.max(runningN, loadN / KNOT.value);
}

/** How many times: down to a tenth, so that what falls short is never told as enough. */
export function timesText(factor: number): string {
  return trimmed(Math.floor(factor * 10) / 10, 1);
}

function largest(cords: Lift["cords"], key: "loadN" | "pullN"): number {
  return Math.max(0, ...cords.map((cord) => cord[key]));
}

function base(shade: LiftShade) {
  return {
    stage: "lift",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/cord`,
    cite: STRENGTH_FACTOR.cite,
  } as const;
}

function unknownStrength(shade: LiftShade, loads: { loadN: number; runningN: number }): Finding {
  const text = (forceN: number) => forceText(forceN, shade.units);
  return {
    ...base(shade),
    id: "lift.strength-unknown",
    severity: "unproven",
    text: `The breaking strength of “${shade.cord.name}” is not given. One cord sees up to ${text(loads.runningN)} where it runs and ${text(loads.loadN)} at its knot, which leaves about half of its strength; ask its maker whether it breaks above ${text(neededStrengthN(loads))}.`,
    remedies: [],
  };
}

function tooWeak(shade: LiftShade, takes: (cord: Cord) => boolean, factor: number, neededN: number): Finding {
  const stronger: Remedy[] = shade.parts.cords
    .filter(({ breakingN }) => breakingN !== undefined && breakingN >= neededN)
    .filter(takes)
    .slice(0, 2)
    .map(partChoice(shade, "lift", "cord"));
  return {
    ...base(shade),
    id: "lift.cord-too-weak",
    severity: "stop",
    text: `“${shade.cord.name}” breaks at only ${timesText(factor)} times what it carries; ${STRENGTH_FACTOR.value} times is asked for: ${forceText(neededN, shade.units)}.`,
    figures: ["lift.strength-running", "lift.strength-knot"],
    remedies: stronger,
  };
}
