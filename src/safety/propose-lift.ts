import type { Finding } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import type { CarefulLift } from "./review/careful-lift.ts";
import type { SafetyShade } from "./safety-reads.ts";

type ProposedShade = Pick<SafetyShade, "shadeId" | "path" | "making" | "existing">;

/** Says why the lift is what it is where the maker chose none, with the cord lock ready to press. */
export function proposedLift({
  shade,
  careful: { kind, why, cite },
}: {
  shade: ProposedShade;
  careful: CarefulLift;
}): Finding[] {
  // A shade that hangs already keeps its lift, unless it is to be made safer.
  const { existing } = shade;
  const isKept = existing !== undefined && !existing.tasks.includes("make-safer");
  if (shade.making.lift.kind !== undefined || isKept) return [];
  return [
    {
      id: "lift.proposed",
      severity: "note",
      stage: "lift",
      shadeId: shade.shadeId,
      path: `${shade.path}/shade/making/lift/kind`,
      text: why,
      cite,
      remedies:
        kind === "cord-lock"
          ? []
          : [{ label: "Use a cord lock", patch: settingPatch(shade, "lift", "kind", "cord-lock") }],
    },
  ];
}
