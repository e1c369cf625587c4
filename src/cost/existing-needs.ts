import { clothTaken, type ExistingPlan, ringCount } from "../shade-plan/index.ts";
import type { NeedsInput } from "./cost-input.ts";
import type { CountedNeed, Need } from "./need.ts";

type Takes = ExistingPlan["takes"];

/** What of a shade that hangs already is bought: by the beginning of a need’s id, and whether it is taken. */
const BOUGHT: readonly (readonly [prefix: string, taken: (takes: Takes) => boolean])[] = [
  ["cord-", ({ cords }) => cords],
  ["rear-release", ({ cords }) => cords],
  ["ring-", ({ rings }) => rings > 0],
  ["woven-sleeve", ({ sleeves }) => sleeves],
  ["sleeve-grip", ({ sleeves }) => sleeves],
  ["eye-", ({ eyes, lastEye }) => eyes > 0 || lastEye],
  ["lock-", ({ lock }) => lock],
  ["connector", ({ cords, lock }) => cords || lock],
  ["cleat", ({ cleat }) => cleat],
  ["tube", ({ tube }) => tube],
  ["spool-", ({ tube }) => tube],
  ["support-", ({ tube }) => tube],
  ["drive-", ({ tube }) => tube],
  ["lift-screws", ({ tube }) => tube],
  ["wand-", ({ tube }) => tube],
  ["loop-", ({ tube }) => tube],
  ["motor-", ({ tube }) => tube],
];

/** Needs of one shade, those left out that hang already. */
export function onlyTaken(
  needs: readonly Need[],
  { existing, shade }: Pick<NeedsInput, "existing" | "shade">,
): readonly Need[] {
  if (existing === undefined) return needs;
  const { takes } = existing;
  return needs
    .filter(({ id }) => BOUGHT.some(([prefix, taken]) => id.startsWith(prefix) && taken(takes)))
    .map((need) => (need.sort === "counted" ? countTaken(need, takes, shade) : need))
    .filter((need) => need.sort !== "counted" || need.pieces > 0);
}

function countTaken(
  need: CountedNeed,
  takes: Takes,
  { eye, turnEye }: Pick<NeedsInput["shade"], "eye" | "turnEye">,
): CountedNeed {
  if (need.id.startsWith("ring-")) return { ...need, pieces: takes.rings };
  if (!need.id.startsWith("eye-")) return need;
  const above = need.id === `eye-${eye.id}` ? takes.eyes : 0;
  const last = takes.lastEye && need.id === `eye-${turnEye.id}` ? 1 : 0;
  return { ...need, pieces: above + last };
}

/** Rings that are sewn on. */
export function ringsSewn({ grid, form, existing }: Pick<NeedsInput, "grid" | "form" | "existing">): number {
  return existing?.takes.rings ?? ringCount(grid, form);
}

/** What follows from the pieces that are cut sees no others. */
export function withClothTaken<I extends NeedsInput>(input: I): I {
  const { existing, cloth } = input;
  if (existing === undefined) return input;
  const taken = clothTaken(cloth, existing);
  return { ...input, cloth: { ...cloth, ...taken, ribLines: [], trimBolts: [] } };
}
