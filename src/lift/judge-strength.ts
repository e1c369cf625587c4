import type { Finding, Remedy, WorkingBook } from "../figures/index.ts";
import { type Brief, type Cord, settingPatch } from "../job/index.ts";
import type { CordLockLift, TubeLift } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { forceText, trimmed } from "../units/index.ts";

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

/** Is the cord strong enough, running and at its knot? */
export function judgeStrength(
  brief: Brief,
  lift: CordLockLift | TubeLift,
  /** Would another cord go where this one goes? */
  takes: (cord: Cord) => boolean,
  book: WorkingBook,
): Finding[] {
  const loadN = largest(lift, "loadN");
  const runningN = largest(lift, "pullN");
  const { breakingN } = brief.cord;
  if (breakingN === undefined) return [unknownStrength(brief, runningN)];
  if (loadN <= 0) return [];
  const running = book.figure("lift.strength-running", {
    label: "Strength over the largest pull in one cord",
    symbol: "n",
    unit: "ratio",
    formula: "B / P",
    given: { B: [breakingN, "N", "breaking strength"], P: [runningN, "N", "largest pull in one cord"] },
    cite: STRENGTH_FACTOR.cite,
    reckon: ({ B, P }) => B / P,
  });
  const knotted = book.figure("lift.strength-knot", {
    label: "Strength of the knot over the largest load of one cord",
    symbol: "n",
    unit: "ratio",
    formula: "k·B / T",
    given: {
      k: [KNOT.value, "ratio", "what a knot leaves"],
      B: [breakingN, "N", "breaking strength"],
      T: [loadN, "N", "largest load of one cord"],
    },
    cite: KNOT.cite,
    reckon: ({ k, B, T }) => (k * B) / T,
  });
  const factor = Math.min(running, knotted);
  return factor >= STRENGTH_FACTOR.value
    ? []
    : [tooWeak(brief, takes, factor, Math.max(runningN, loadN / KNOT.value))];
}

function largest({ cords }: CordLockLift | TubeLift, key: "loadN" | "pullN"): number {
  return cords.reduce((most, cord) => Math.max(most, cord[key]), 0);
}

function base(brief: Brief) {
  return {
    stage: "lift",
    shadeId: brief.shadeId,
    path: `${brief.path}/shade/making/lift/cord`,
    cite: STRENGTH_FACTOR.cite,
  } as const;
}

function unknownStrength(brief: Brief, runningN: number): Finding {
  return {
    ...base(brief),
    id: "lift.strength-unknown",
    weight: "unproven",
    text: `The breaking strength of “${brief.cord.name}” is not given. One cord sees up to ${forceText(runningN, brief.units)}; ask its maker whether it breaks above ${forceText(STRENGTH_FACTOR.value * runningN, brief.units)}.`,
    remedies: [],
  };
}

function tooWeak(brief: Brief, takes: (cord: Cord) => boolean, factor: number, neededBaseN: number): Finding {
  const neededN = STRENGTH_FACTOR.value * neededBaseN;
  const stronger: Remedy[] = (brief.parts?.cords ?? [])
    .filter(({ breakingN }) => breakingN !== undefined && breakingN >= neededN)
    .filter(takes)
    .slice(0, 2)
    .map((cord) => ({ label: `Use “${cord.name}”`, patch: settingPatch(brief, "lift", "cord", cord.id) }));
  return {
    ...base(brief),
    id: "lift.cord-too-weak",
    weight: "stop",
    text: `“${brief.cord.name}” breaks at only ${trimmed(factor, 1)} times what it carries; ${STRENGTH_FACTOR.value} times is asked for: ${forceText(neededN, brief.units)}.`,
    figures: ["lift.strength-running", "lift.strength-knot"],
    remedies: stronger,
  };
}
