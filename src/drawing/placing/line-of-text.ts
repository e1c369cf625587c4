import type { Point, Role } from "../model.ts";
import type { PlacedCommon, PlacedText } from "../placed.ts";
import { LOOKS } from "../style.ts";
import { ASCENT_EM, CAP_EM, DESCENT_EM, textWidthEm } from "./text-width.ts";

const HALO_EM = 0.16;
const BASELINE_EM = { top: ASCENT_EM, middle: CAP_EM / 2, bottom: -DESCENT_EM } as const;

/** The same direction, never upside down. */
export function uprightDeg(angleDeg: number): number {
  const turned = ((((angleDeg + 90) % 180) + 180) % 180) - 90;
  return turned;
}

export interface LineOfText {
  at: Point;
  text: string;
  sizeMm: number;
  anchor: "start" | "middle" | "end";
  baseline: "top" | "middle" | "bottom";
  angleDeg: number;
  strong?: boolean;
  ground?: Role;
}

/** A line of text with its baseline worked out. `at` is already on paper. */
export function lineOfText(line: LineOfText, common: PlacedCommon): PlacedText {
  const { at, text, sizeMm, anchor, baseline, angleDeg, strong = false, ground } = line;
  const angle = (angleDeg * Math.PI) / 180;
  const down = BASELINE_EM[baseline] * sizeMm;
  return {
    kind: "text",
    ...common,
    at: [at[0] - Math.sin(angle) * down, at[1] + Math.cos(angle) * down],
    text,
    sizeMm,
    anchor,
    angleDeg,
    strong,
    paint: LOOKS[common.role].text,
    widthMm: textWidthEm(text) * sizeMm,
    haloMm: HALO_EM * sizeMm,
    haloPaint: ground === undefined ? "paper" : (LOOKS[ground].fill ?? "paper"),
  };
}
