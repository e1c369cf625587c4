import { type Figure, type Finding, figureRuleOf, type Remedy } from "../figures/index.ts";
import { type Bar, barSectionMm2, settingPatch } from "../job/index.ts";
import type { Lift, LiftCourse } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { forceText, N_PER_POUND_FORCE } from "../units/index.ts";
import type { CordLoads } from "./cord-loads.ts";
import type { LiftShade } from "./lift-input.ts";

/** An easy pull, and what nearly everyone can pull at all. */
export const EASY_PULL = sourced(5 * N_PER_POUND_FORCE, "N", cite("ada-309", "309.4"));
export const HARD_PULL = sourced(44, "N", cite("en-1005-3", "table 1, arm down, domestic use"));
/** Stiff bar and limp hem share the weight differently enough to say so. */
const SHARES_DIFFER = 0.1;

/** Can a hand raise it? */
export function judgePull(
  shade: LiftShade,
  { pullN, heldN, course }: Pick<Lift, "pullN" | "heldN" | "course">,
): Finding[] {
  if (pullN <= EASY_PULL.value) return [];
  const hard = pullN > HARD_PULL.value;
  const mark = hard ? HARD_PULL : EASY_PULL;
  const text = (forceN: number) => forceText(forceN, shade.units);
  return [
    {
      stage: "lift",
      shadeId: shade.shadeId,
      id: "lift.hard-pull",
      severity: hard || shade.purpose === "public-building" ? "fix" : "note",
      path: `${shade.path}/shade/making/lift`,
      text: `Raising it takes a pull of about ${text(pullN)} for a weight of ${text(heldN)}: the eyes and the lock add the rest. ${hard ? `Nearly everyone can pull ${text(mark.value)} with one arm, not everyone more.` : `A pull up to ${text(mark.value)} is easy for one hand.`} Pulleys in place of the eyes, a lighter bar or cloth, or two shades side by side make it lighter.`,
      cite: mark.cite,
      figures: ["lift.pull", "lift.held"],
      remedies: [...pulleys(shade, course, pullN), ...lighterBars(shade)],
    },
  ];
}

/** Pulleys in place of the eyes, where that eases the pull. */
function pulleys(shade: LiftShade, { withPulleysN }: LiftCourse, pullN: number): Remedy[] {
  if (withPulleysN === undefined || withPulleysN >= pullN) return [];
  return (shade.parts?.eyes ?? [])
    .filter(({ id, pulleyShare }) => pulleyShare !== undefined && id !== shade.eye.id)
    .slice(0, 1)
    .map((pulley) => ({
      label: `Use “${pulley.name}” in place of the eyes`,
      changes: `The pull then comes to about ${forceText(withPulleysN, shade.units)}.`,
      patch: settingPatch(shade, "lift", "eye", pulley.id),
    }));
}

/** From light to heavy, by density. */
const MATERIALS: readonly Bar["material"][] = ["wood", "plastic", "aluminium", "steel"];
/** A lighter material in a section at most so much larger still makes a lighter bar. */
const SECTION_GROWS = 1.4;

export function lighterBars(shade: LiftShade): Remedy[] {
  const now = MATERIALS.indexOf(shade.bar.material);
  return (shade.parts?.bars ?? [])
    .filter((bar) => MATERIALS.indexOf(bar.material) < now)
    .filter((bar) => barSectionMm2(bar) <= SECTION_GROWS * barSectionMm2(shade.bar))
    .slice(0, 2)
    .map((bar) => ({
      label: `Use the lighter “${bar.name}”`,
      patch: settingPatch(shade, "board", "bar", bar.id),
    }));
}

const HEAVIEST = figureRuleOf<{ cord: number }>()({
  id: "lift.heaviest-cord",
  label: ({ cord }) => `Cord ${cord}: load, the heaviest`,
  symbol: "T",
  unit: "N",
  formula: "max(A, B)",
  inputs: {
    A: [
      "N",
      "share of a stiff bar: three-moment equation",
      "figure:lift.held",
      "columns/edgeInsetMm",
      "figure:shape.columns",
      "figure:measure.finished-width",
    ],
    B: ["N", "share of a limp hem: half way to each neighbour", "figure:lift.held"],
  },
  cite: cite("beam-theory"),
  compute: ({ A, B }) => Math.max(A, B),
});

/** Do a stiff bar and a limp hem agree on the share of the heaviest cord? */
export function unsureShares(
  shade: LiftShade,
  { stiffN, limpN, designN }: CordLoads,
): { findings: Finding[]; workings: Figure[] } {
  const heaviest = designN.indexOf(Math.max(...designN));
  const stiff = stiffN[heaviest] ?? 0;
  const limp = limpN[heaviest] ?? 0;
  const worse = HEAVIEST.figure({ A: stiff, B: limp }, { cord: heaviest + 1 });
  const lighter = Math.min(stiff, limp);
  if (worse.value - lighter <= SHARES_DIFFER * worse.value) return { findings: [], workings: [worse] };
  const text = (forceN: number) => forceText(forceN, shade.units);
  const finding: Finding = {
    stage: "lift",
    shadeId: shade.shadeId,
    id: "lift.shares-differ",
    severity: "note",
    path: `${shade.path}/shade/making/columns`,
    text: `Cord ${heaviest + 1} carries ${text(stiff)} if the bar is stiff and ${text(limp)} if the hem is limp. The plan goes by the larger, for every cord.`,
    cite: cite("beam-theory"),
    figures: ["lift.heaviest-cord"],
    remedies: [],
  };
  return { findings: [finding], workings: [worse] };
}
