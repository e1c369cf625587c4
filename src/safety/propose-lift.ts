import type { Finding } from "../figures/index.ts";
import { type Brief, settingPatch } from "../job/index.ts";
import type { CarefulLift } from "./review/careful-lift.ts";

/** Says why the lift is what it is where the maker chose none, with the cord lock ready to press. */
export function proposedLift(brief: Brief, { kind, why, cite }: CarefulLift): Finding[] {
  if (brief.making.lift.kind !== undefined) return [];
  return [
    {
      id: "lift.proposed",
      weight: "mind",
      stage: "lift",
      shadeId: brief.shadeId,
      path: `${brief.path}/shade/making/lift/kind`,
      text: why,
      cite,
      remedies:
        kind === "cord-lock"
          ? []
          : [{ label: "Use a cord lock", patch: settingPatch(brief, "lift", "kind", "cord-lock") }],
    },
  ];
}
