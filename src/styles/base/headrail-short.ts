import type { Finding } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "./at-shade.ts";
import type { ShadeWith } from "./style-shade.ts";

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
