import type { Step } from "../shade-plan/index.ts";
import { IRON } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** Bottom corners folded on the slant before side hem and bottom hem are turned for good. */
export function mitreSteps({ cloth, len, bottomHemMm }: Bench): Step[] {
  const { corner } = cloth;
  const mitre = corner.lines.find(({ kind }) => kind === "mitre");
  const trim = corner.lines.find(({ kind }) => kind === "trim");
  if (corner.kind !== "mitred" || mitre === undefined) return [];
  return [
    {
      id: "make-mitre",
      chapter: "make",
      action: { kind: "mitre-corner", aboveMm: -mitre.from[1], inMm: -mitre.to[0] },
      title: "Fold the bottom corners",
      text: sentences(
        `Press the bottom hem up as well, ${len(bottomHemMm)} in all, and open side hem and bottom hem out again. At each corner draw the slant on the wrong side: from the cut side edge, ${len(-mitre.from[1])} above the hem line, through the place where the creases of side edge and hem line cross, to the cut lower edge, ${len(-mitre.to[0])} in from the side edge.`,
        trim !== undefined && "Cut the tip off a finger’s breadth outside the slant.",
        "Fold the corner in along the slant and press. Fold the hems in again: their edges meet on a slant from the corner inwards.",
      ),
      check: "The two folded edges meet without a gap and without lying over each other.",
      caution: IRON,
      sheet: "marking",
    },
  ];
}
