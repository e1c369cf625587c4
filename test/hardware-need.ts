import type { HardwareNeed } from "../src/lift/index.ts";

/** What a middling shade asks of its hardware: 1.1 m wide, five columns, 1.5 kg. */
export const HARDWARE_NEED: HardwareNeed = {
  units: { system: "metric", ruler: "1 mm" },
  controlSide: "right",
  columnsMm: [50, 300, 550, 800, 1050],
  widthMm: 1100,
  boardLengthMm: 1094,
  boardDepthMm: 38,
  heldLoweredN: 4,
  heldRaisedN: 12,
  massKg: 1.5,
  riseMm: 1400,
  travelMm: 1200,
  spareMm: 900,
  straightRunMm: 12,
  handMostN: 44,
};
