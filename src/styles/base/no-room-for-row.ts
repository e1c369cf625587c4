import type { Finding } from "../../figures/index.ts";
import { stylePatch } from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "./at-shade.ts";
import type { ShadeWith } from "./style-shade.ts";

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
