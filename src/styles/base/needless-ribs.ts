import type { Finding } from "../../figures/index.ts";
import { settingPatch, stylePatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { atShade } from "./at-shade.ts";
import type { ShadeWith } from "./style-shade.ts";

/** Ribs that were asked for and have no place in the style. */
export function needlessRibs(shade: ShadeWith<"ribs">, why: string): Finding[] {
  if (shade.making.ribs.kind === "none") return [];
  return [
    {
      id: "shape.ribs-left-out",
      severity: "fix",
      ...atShade(shade, "making/ribs/kind"),
      text: `${why}. Ribs were asked for and are left out.`,
      cite: cite("our-choice"),
      remedies: [
        { label: "No ribs", patch: settingPatch(shade, "ribs", "kind", "none") },
        {
          label: "Make it a ribbed shade",
          patch: stylePatch(shade, "ribbed"),
        },
      ],
    },
  ];
}
