import type { Finding, Remedy, WorkingBook } from "../figures/index.ts";
import { type Bar, barSectionMm2, type ResolvedShade, settingPatch } from "../job/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { forceText, N_PER_POUND_FORCE } from "../units/index.ts";
import type { CordLoads } from "./cord-loads.ts";
import type { LiftInput } from "./lift-input.ts";

/** An easy pull, and what nearly everyone can pull at all. */
export const EASY_PULL = sourced(5 * N_PER_POUND_FORCE, "N", cite("ada-309", "309.4"));
export const HARD_PULL = sourced(44, "N", cite("en-1005-3", "table 1, arm down, domestic use"));
/** Stiff bar and limp hem share the weight differently enough to say so. */
const SHARES_DIFFER = 0.1;

/** Can a hand raise it, and how sure is the share of the heaviest cord? */
export function judgePull(
  input: LiftInput,
  lift: CordLockLift,
  loads: CordLoads,
  book: WorkingBook,
): Finding[] {
  return [...hardPull(input, lift), ...unsureShares(input.resolved, loads, book)];
}

function hardPull({ resolved }: LiftInput, { pullN, heldN, course }: CordLockLift): Finding[] {
  if (pullN <= EASY_PULL.value) return [];
  const hard = pullN > HARD_PULL.value;
  const mark = hard ? HARD_PULL : EASY_PULL;
  const text = (forceN: number) => forceText(forceN, resolved.units);
  return [
    {
      stage: "lift",
      shadeId: resolved.shadeId,
      id: "lift.hard-pull",
      severity: hard || resolved.purpose === "public-building" ? "fix" : "note",
      path: `${resolved.path}/shade/making/lift`,
      text: `Raising it takes a pull of about ${text(pullN)} for a weight of ${text(heldN)}: the eyes and the lock add the rest. ${hard ? `Nearly everyone can pull ${text(mark.value)} with one arm, not everyone more.` : `A pull up to ${text(mark.value)} is easy for one hand.`} Pulleys in place of the eyes, a lighter bar or cloth, or two shades side by side make it lighter.`,
      cite: mark.cite,
      figures: ["lift.pull", "lift.held"],
      remedies: [...pulleys(resolved, course, pullN), ...lighterBars(resolved)],
    },
  ];
}

/** Pulleys in place of the eyes, where that eases the pull. */
function pulleys(resolved: ResolvedShade, { withPulleysN }: CordLockLift["course"], pullN: number): Remedy[] {
  if (withPulleysN === undefined || withPulleysN >= pullN) return [];
  return (resolved.parts?.eyes ?? [])
    .filter(({ id, pulleyShare }) => pulleyShare !== undefined && id !== resolved.eye.id)
    .slice(0, 1)
    .map((pulley) => ({
      label: `Use “${pulley.name}” in place of the eyes`,
      changes: `The pull then comes to about ${forceText(withPulleysN, resolved.units)}.`,
      patch: settingPatch(resolved, "lift", "eye", pulley.id),
    }));
}

/** From light to heavy, by density. */
const MATERIALS: readonly Bar["material"][] = ["wood", "plastic", "aluminium", "steel"];
/** A lighter material in a section at most so much larger still makes a lighter bar. */
const SECTION_GROWS = 1.4;

export function lighterBars(resolved: ResolvedShade): Remedy[] {
  const now = MATERIALS.indexOf(resolved.bar.material);
  return (resolved.parts?.bars ?? [])
    .filter((bar) => MATERIALS.indexOf(bar.material) < now)
    .filter((bar) => barSectionMm2(bar) <= SECTION_GROWS * barSectionMm2(resolved.bar))
    .slice(0, 2)
    .map((bar) => ({
      label: `Use the lighter “${bar.name}”`,
      patch: settingPatch(resolved, "board", "bar", bar.id),
    }));
}

export function unsureShares(
  resolved: ResolvedShade,
  { stiffN, limpN, designN }: CordLoads,
  book: WorkingBook,
): Finding[] {
  const heaviest = designN.indexOf(Math.max(...designN));
  const stiff = stiffN[heaviest] ?? 0;
  const limp = limpN[heaviest] ?? 0;
  const worse = book.figure("lift.heaviest-cord", {
    label: `Cord ${heaviest + 1}: load, the heaviest`,
    symbol: "T",
    unit: "N",
    formula: "max(A, B)",
    given: {
      A: [stiff, "N", "share of a stiff bar: three-moment equation"],
      B: [limp, "N", "share of a limp hem: half way to each neighbour"],
    },
    cite: cite("beam-theory"),
    compute: ({ A, B }) => Math.max(A, B),
  });
  const lighter = Math.min(stiff, limp);
  if (worse - lighter <= SHARES_DIFFER * worse) return [];
  const text = (forceN: number) => forceText(forceN, resolved.units);
  return [
    {
      stage: "lift",
      shadeId: resolved.shadeId,
      id: "lift.shares-differ",
      severity: "note",
      path: `${resolved.path}/shade/making/columns`,
      text: `Cord ${heaviest + 1} carries ${text(stiff)} if the bar is stiff and ${text(limp)} if the hem is limp. The plan goes by the larger, for every cord.`,
      cite: cite("beam-theory"),
      figures: ["lift.heaviest-cord"],
      remedies: [],
    },
  ];
}
