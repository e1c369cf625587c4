import { type Figure, type Finding, figureRuleOf, type Remedy } from "../figures/index.ts";
import { type Bar, barSectionMm2, settingPatch } from "../job/index.ts";
import type { Lift, LiftCourse } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { forceText } from "../units/index.ts";
import type { CordLoads } from "./cord-loads.ts";
import { hardPull } from "./hard-pull.ts";
import type { LiftShade } from "./lift-input.ts";

/** Stiff bar and limp hem share the weight differently enough to say so. */
const SHARES_DIFFER = 0.1;

/** Can a hand raise it? */
export function judgePull(
  shade: LiftShade,
  { pullN, heldN, course, takeUp }: Pick<Lift, "pullN" | "heldN" | "course" | "takeUp">,
): Finding[] {
  const text = (forceN: number) => forceText(forceN, shade.units);
  return hardPull(shade, pullN, {
    path: `${shade.path}/shade/making/lift`,
    takes: `Raising it takes a pull of about ${text(pullN)} for a weight of ${text(heldN)}: ${takeUp === "lock" ? "the eyes and the lock" : "the eyes"} add the rest.`,
    eases:
      "Pulleys in place of the eyes, a lighter bar or cloth, or two shades side by side make it lighter.",
    figures: ["lift.pull", "lift.held"],
    remedies: [...pulleys(shade, course, pullN), ...lighterBars(shade)],
  });
}

/** Pulleys in place of the eyes, where that eases the pull. */
function pulleys(shade: LiftShade, { withPulleysN }: LiftCourse, pullN: number): Remedy[] {
  if (withPulleysN === undefined || withPulleysN >= pullN) return [];
  return shade.parts.eyes
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
  return shade.parts.bars
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
