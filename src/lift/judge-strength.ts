import type { Finding, Remedy, WorkingBook } from "../figures/index.ts";
import { type Cord, type ResolvedShade, settingPatch } from "../job/index.ts";
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
  resolved: ResolvedShade,
  lift: CordLockLift | TubeLift,
  /** Would another cord go where this one goes? */
  takes: (cord: Cord) => boolean,
  book: WorkingBook,
): Finding[] {
  const loadN = largest(lift, "loadN");
  const runningN = largest(lift, "pullN");
  const { breakingN } = resolved.cord;
  if (breakingN === undefined) return [unknownStrength(resolved, runningN)];
  if (loadN <= 0) return [];
  const running = book.figure("lift.strength-running", {
    label: "Strength over the largest pull in one cord",
    symbol: "n",
    unit: "ratio",
    formula: "B / P",
    given: { B: [breakingN, "N", "breaking strength"], P: [runningN, "N", "largest pull in one cord"] },
    cite: STRENGTH_FACTOR.cite,
    compute: ({ B, P }) => B / P,
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
    compute: ({ k, B, T }) => (k * B) / T,
  });
  const factor = Math.min(running, knotted);
  return factor >= STRENGTH_FACTOR.value
    ? []
    : [tooWeak(resolved, takes, factor, Math.max(runningN, loadN / KNOT.value))];
}

function largest({ cords }: CordLockLift | TubeLift, key: "loadN" | "pullN"): number {
  return cords.reduce((most, cord) => Math.max(most, cord[key]), 0);
}

function base(resolved: ResolvedShade) {
  return {
    stage: "lift",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/shade/making/lift/cord`,
    cite: STRENGTH_FACTOR.cite,
  } as const;
}

function unknownStrength(resolved: ResolvedShade, runningN: number): Finding {
  return {
    ...base(resolved),
    id: "lift.strength-unknown",
    severity: "unproven",
    text: `The breaking strength of “${resolved.cord.name}” is not given. One cord sees up to ${forceText(runningN, resolved.units)}; ask its maker whether it breaks above ${forceText(STRENGTH_FACTOR.value * runningN, resolved.units)}.`,
    remedies: [],
  };
}

function tooWeak(
  resolved: ResolvedShade,
  takes: (cord: Cord) => boolean,
  factor: number,
  neededBaseN: number,
): Finding {
  const neededN = STRENGTH_FACTOR.value * neededBaseN;
  const stronger: Remedy[] = (resolved.parts?.cords ?? [])
    .filter(({ breakingN }) => breakingN !== undefined && breakingN >= neededN)
    .filter(takes)
    .slice(0, 2)
    .map((cord) => ({ label: `Use “${cord.name}”`, patch: settingPatch(resolved, "lift", "cord", cord.id) }));
  return {
    ...base(resolved),
    id: "lift.cord-too-weak",
    severity: "stop",
    text: `“${resolved.cord.name}” breaks at only ${trimmed(factor, 1)} times what it carries; ${STRENGTH_FACTOR.value} times is asked for: ${forceText(neededN, resolved.units)}.`,
    figures: ["lift.strength-running", "lift.strength-knot"],
    remedies: stronger,
  };
}
