import type { Finding } from "../../figures/index.ts";
import { type Cord, cordStiffnessN, settingPatch } from "../../job/index.ts";
import type { LiftCourse } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import type { LiftShade } from "../lift-input.ts";

/** What the eye sees of a hem that should hang level. */
const SEEN = sourced(3, "mm", cite("our-choice", "1/8 in: about what shows beside a sill"));
const MOST_REMEDIES = 2;

/** A hem that is level by its knots and hangs out of level all the same, since its cords stretch unequally. */
export function judgeLevel(
  shade: LiftShade,
  { levelMm }: LiftCourse,
  /** Would another cord go where this one goes? */
  takes: (cord: Cord) => boolean,
): Finding[] {
  if (levelMm === undefined || levelMm <= SEEN.value) return [];
  const neededN = (levelMm / SEEN.value) * (cordStiffnessN(shade.cord) ?? Number.POSITIVE_INFINITY);
  const stiffer = shade.parts.cords
    .filter((cord) => (cordStiffnessN(cord) ?? 0) >= neededN && takes(cord))
    .slice(0, MOST_REMEDIES);
  return [
    {
      stage: "lift",
      shadeId: shade.shadeId,
      id: "lift.stretch-out-of-level",
      severity: "note",
      path: `${shade.path}/shade/making/lift/cord`,
      text: `By the stretch of its cords the hem hangs up to ${lengthText(levelMm, shade.units)} out of level on the way up. Level it with its own weight on the cords and half raised, where it is seen most, or take a cord that stretches less.`,
      cite: SEEN.cite,
      figures: ["lift.level"],
      remedies: stiffer.map((cord) => ({
        label: `Use “${cord.name}”`,
        patch: settingPatch(shade, "lift", "cord", cord.id),
      })),
    },
  ];
}
