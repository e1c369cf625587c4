import { type Figure, figureRule, figureRuleOf, type Worked } from "../../figures/index.ts";
import { type Form, type Grid, type Mass, massByCarrier } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { GRAVITY, MM_PER_M } from "../../units/index.ts";
import { carriedAt, gatherings } from "../course/gatherings.ts";
import type { LiftInput } from "../lift-input.ts";
import type { Wound } from "./winding.ts";

export interface Torques {
  heldLoweredN: number;
  loweredNm: number;
  raisedNm: number;
}

const HELD_LOWERED = figureRule({
  id: "lift.held-lowered",
  label: "Weight on the cords, shade lowered",
  symbol: "G",
  unit: "N",
  formula: "g·(b + e·r / p + C·min(1, d / L))",
  inputs: {
    g: ["ratio", "standard gravity, m/s²"],
    b: ["kg", "bar and turned hem", "board/bar", "figure:cloth.*-mass"],
    e: ["kg", "ribs and rings of all rows", "ribs/rib", "lift/ring", "figure:cloth.*-mass", "figure:shape.*"],
    r: ["count", "rows that hang on the cords already", "figure:shape.*"],
    p: ["count", "rows", "figure:shape.*"],
    C: ["kg", "cloth of all layers without hem and board allowance", "figure:cloth.*-mass"],
    d: ["mm", "cloth from the hem to the bottom row, and half of what is slack above it", "figure:shape.*"],
    L: ["mm", "cloth from hem to top line", "figure:measure.finished-length", "figure:shape.*"],
  },
  cite: cite("geometry", "cloth that hangs straight is carried by the ring above it"),
  compute: ({ g, b, e, r, p, C, d, L }) => g * (b + (e * r) / p + C * Math.min(1, d / L)),
});

const TORQUE = figureRuleOf<{ state: "lowered" | "raised" }>()({
  id: ({ state }) => `lift.torque-${state}`,
  label: ({ state }) => `Torque on the tube, ${state}`,
  symbol: "M",
  unit: "Nm",
  formula: "G·ρ / 1000",
  inputs: ({ state }) => ({
    G: [
      "N",
      `weight on the cords, ${state}`,
      state === "lowered" ? "figure:lift.held-lowered" : "figure:lift.held",
    ],
    ρ: ["mm", "axis to the cord on its spool", `figure:lift.wound-${state}`],
  }),
  cite: cite("nist-sp-811", "torque, N·m"),
  compute: ({ G, ρ }) => (G * ρ) / MM_PER_M,
});

/** Torque on the tube at both ends of the travel: the weight on the cords times their distance from the axis. */
export function torques(
  { grid, form, mass }: Pick<LiftInput, "grid" | "form" | "mass">,
  heldN: number,
  wound: Wound,
): Worked<Torques> {
  const held = heldLowered(grid, form, mass);
  const lowered = TORQUE.figure({ G: held.value, ρ: wound.loweredMm }, { state: "lowered" });
  const raised = TORQUE.figure({ G: heldN, ρ: wound.raisedMm }, { state: "raised" });
  return {
    values: { heldLoweredN: held.value, loweredNm: lowered.value, raisedNm: raised.value },
    workings: [held, lowered, raised],
  };
}

/** Weight on the cords as the first fold begins: the ring above still carries what hangs straight below it. */
function heldLowered(grid: Grid, form: Form, mass: Mass): Figure {
  const { clothKg, hemKg, barKg, rowsKg } = massByCarrier(mass);
  const list = gatherings(grid, form);
  const { rows, hangsMm, lengthMm } = carriedAt(list, form, 0);
  return HELD_LOWERED.figure({
    g: GRAVITY,
    b: barKg + hemKg,
    e: rowsKg,
    r: rows,
    p: Math.max(1, list.length),
    C: clothKg,
    d: hangsMm,
    L: lengthMm,
  });
}
