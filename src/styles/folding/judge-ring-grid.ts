import type { Finding } from "../../figures/index.ts";
import { settingPatch, stylePatch } from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import type { ShadeWith } from "../style-shade.ts";

/** No fold fits between hem and headrail allowance. */
export function noRoomForRow(shade: ShadeWith<never>, size: Size, firstMm: number): Finding {
  const text = (mm: number) => lengthText(mm, shade.units);
  return {
    id: "shape.too-short",
    severity: "stop",
    ...atShade(shade, "style"),
    text: `A shade ${text(size.finishedLengthMm)} long has no room for a row of rings ${text(firstMm)} above the hem and for the headrail allowance above it.`,
    cite: cite("geometry"),
    remedies: [
      {
        label: "Make it a flat shade",
        patch: stylePatch(shade, "flat"),
      },
    ],
  };
}

/** Less flat cloth at the head than board and lift take. */
export function headrailShort(shade: ShadeWith<never>, headrailMm: number, neededMm: number): Finding[] {
  if (headrailMm >= neededMm - 1e-6) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  return [
    {
      id: "shape.headrail-short",
      severity: "fix",
      ...atShade(shade, "making/fold/headrailMm"),
      text: `The headrail allowance is ${text(headrailMm)}; board and lift need ${text(neededMm)}. With less, the rings jam at the head while the shade still hangs low.`,
      cite: cite("headrail-allowance"),
      figures: ["shape.headrail-needed"],
      remedies: [
        {
          label: `Set the headrail allowance to ${text(neededMm)}`,
          patch: settingPatch(shade, "fold", "headrailMm", neededMm),
        },
      ],
    },
  ];
}

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
