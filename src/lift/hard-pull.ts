import type { Finding } from "../figures/index.ts";
import { cite, type Sourced, sourced } from "../sources/index.ts";
import { forceText, N_PER_POUND_FORCE } from "../units/index.ts";
import type { LiftShade } from "./lift-input.ts";

/** An easy pull, one that is to be avoided, and what nearly everyone can pull at all. */
const EASY_PULL = sourced(5 * N_PER_POUND_FORCE, "N", cite("ada-309", "309.4"));
export const HARD_PULL = sourced(44, "N", cite("en-1005-3", "table 1, arm down, domestic use"));
const AVOIDED_PULL = sourced(
  0.7 * HARD_PULL.value,
  "N",
  cite("en-1005-3", "over 70 % of what the table allows is to be avoided"),
);

/** From the hardest down: beyond each, what there is to say. */
const LIMITS: readonly { limit: Sourced; says: (limit: string) => string }[] = [
  { limit: HARD_PULL, says: (limit) => `Nearly everyone can pull ${limit} with one arm, not everyone more.` },
  {
    limit: AVOIDED_PULL,
    says: (limit) =>
      `More than ${limit} is to be avoided, 70 % of what nearly everyone can pull with one arm.`,
  },
  { limit: EASY_PULL, says: (limit) => `A pull up to ${limit} is easy for one hand.` },
];

/** The same in rising order, N. */
export const PULL_LIMITS_N: readonly number[] = LIMITS.map(({ limit }) => limit.value).reverse();

interface PullWords extends Pick<Finding, "path" | "figures" | "remedies"> {
  takes: string;
  eases: string;
  /** What is pulled, where that is not the lift. */
  of?: Pick<Finding, "stage" | "id">;
}

/** A pull that is more than easy, in words between what takes it and what would ease it. */
export function hardPull(
  { units, shadeId, purpose }: Pick<LiftShade, "units" | "shadeId" | "purpose">,
  pullN: number,
  { takes, eases, of = { stage: "lift", id: "lift.hard-pull" }, ...rest }: PullWords,
): Finding[] {
  const passed = LIMITS.find(({ limit }) => pullN > limit.value);
  if (passed === undefined) return [];
  const isTooHard = passed.limit === HARD_PULL || purpose === "public-building";
  return [
    {
      ...of,
      shadeId,
      severity: isTooHard ? "fix" : "note",
      text: `${takes} ${passed.says(forceText(passed.limit.value, units))} ${eases}`,
      cite: passed.limit.cite,
      ...rest,
    },
  ];
}
