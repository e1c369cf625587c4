import type { Finding } from "../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../job/index.ts";
import type { CarefulLift } from "./review/careful-lift.ts";

/** Says why the lift is what it is where the maker chose none, with the cord lock ready to press. */
export function proposedLift(resolved: ResolvedShade, { kind, why, cite }: CarefulLift): Finding[] {
  if (resolved.making.lift.kind !== undefined) return [];
  return [
    {
      id: "lift.proposed",
      severity: "note",
      stage: "lift",
      shadeId: resolved.shadeId,
      path: `${resolved.path}/shade/making/lift/kind`,
      text: why,
      cite,
      remedies:
        kind === "cord-lock"
          ? []
          : [{ label: "Use a cord lock", patch: settingPatch(resolved, "lift", "kind", "cord-lock") }],
    },
  ];
}
