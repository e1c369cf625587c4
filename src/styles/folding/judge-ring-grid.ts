import type { Finding } from "../../figures/index.ts";
import { type ResolvedShade, settingPatch, stylePatch } from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";

/** No fold fits between hem and headrail allowance. */
export function noRoomForRow(resolved: ResolvedShade, size: Size, firstMm: number): Finding {
  const text = (mm: number) => lengthText(mm, resolved.units);
  return {
    id: "shape.too-short",
    severity: "stop",
    ...atShade(resolved, "style"),
    text: `A shade ${text(size.finishedLengthMm)} long has no room for a row of rings ${text(firstMm)} above the hem and for the headrail allowance above it.`,
    cite: cite("geometry"),
    remedies: [
      {
        label: "Make it a flat shade",
        patch: stylePatch(resolved, "flat"),
      },
    ],
  };
}

/** Less flat cloth at the head than board and lift take. */
export function headrailShort(resolved: ResolvedShade, headrailMm: number, neededMm: number): Finding[] {
  if (headrailMm >= neededMm - 1e-6) return [];
  const text = (mm: number) => lengthText(mm, resolved.units);
  return [
    {
      id: "shape.headrail-short",
      severity: "fix",
      ...atShade(resolved, "making/fold/headrailMm"),
      text: `The headrail allowance is ${text(headrailMm)}; board and lift need ${text(neededMm)}. With less, the rings jam at the head while the shade still hangs low.`,
      cite: cite("headrail-allowance"),
      figures: ["shape.headrail-needed"],
      remedies: [
        {
          label: `Set the headrail allowance to ${text(neededMm)}`,
          patch: settingPatch(resolved, "fold", "headrailMm", neededMm),
        },
      ],
    },
  ];
}

/** Ribs that were asked for and have no place in the style. */
export function needlessRibs(resolved: ResolvedShade, why: string): Finding[] {
  if (resolved.making.ribs.kind === "none") return [];
  return [
    {
      id: "shape.ribs-left-out",
      severity: "fix",
      ...atShade(resolved, "making/ribs/kind"),
      text: `${why}. Ribs were asked for and are left out.`,
      cite: cite("our-choice"),
      remedies: [
        { label: "No ribs", patch: settingPatch(resolved, "ribs", "kind", "none") },
        {
          label: "Make it a ribbed shade",
          patch: stylePatch(resolved, "ribbed"),
        },
      ],
    },
  ];
}
