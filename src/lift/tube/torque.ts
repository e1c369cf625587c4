import { type Figure, figureRule, figureRuleOf, type Worked } from "../../figures/index.ts";
import type { Drive } from "../../job/index.ts";
import { type Form, type Grid, type Mass, massByCarrier } from "../../shade-plan/index.ts";
import { type Cite, cite, sourced } from "../../sources/index.ts";
import { GRAVITY, MM_PER_M } from "../../units/index.ts";
import type { LiftInput } from "../lift-input.ts";
import type { Wound } from "./winding.ts";

/** Share of the work at wheel or crank that reaches the cords, where the drive's maker states none. */
export const DRIVE_EFFICIENCY = sourced(
  0.8,
  "ratio",
  cite("from-memory", "drive and bearings of the tube together, 0.7 to 0.9"),
);

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
  formula: "g·(b + e / p + C·min(1, (d + F / 2) / L))",
  inputs: {
    g: ["ratio", "standard gravity, m/s²"],
    b: ["kg", "bar", "board/bar", "figure:cloth.bar-mass"],
    e: ["kg", "ribs and rings of all rows", "ribs/rib", "lift/ring", "figure:cloth.*-mass", "figure:shape.*"],
    p: ["count", "rows", "figure:shape.rows"],
    C: ["kg", "cloth, all layers", "figure:cloth.*-mass"],
    d: ["mm", "cloth from the hem to the bottom row", "figure:shape.*"],
    F: ["mm", "cloth of the first fold", "figure:shape.*"],
    L: ["mm", "cloth from hem to top line", "figure:measure.finished-length", "figure:shape.*"],
  },
  cite: cite("geometry", "the ring above carries the other half of the first fold"),
  compute: ({ g, b, e, p, C, d, F, L }) => g * (b + e / p + C * Math.min(1, (d + F / 2) / L)),
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

/** What the hand turns: a wheel or a crank. */
interface Hand {
  label: string;
  radiusLabel: string;
  /** As the maker of the drive states it; ours where that is not known. */
  efficiencyCite: Cite;
}

const HAND_PULL = figureRuleOf<Hand>()({
  id: "lift.pull",
  label: ({ label }) => label,
  symbol: "F",
  unit: "N",
  formula: "1000·max(m, M) / (η·i·r)",
  inputs: {
    m: ["Nm", "torque on the tube, lowered", "figure:lift.torque-lowered"],
    M: ["Nm", "torque on the tube, raised", "figure:lift.torque-raised"],
    η: ["ratio", "share of the work that is passed on", "lift/drive"],
    i: ["ratio", "turns of the hand for one of the tube", "lift/drive"],
    r: ["mm", ({ radiusLabel }) => radiusLabel, "lift/drive"],
  },
  cite: ({ efficiencyCite }) => efficiencyCite,
  compute: ({ m, M, η, i, r }) => (MM_PER_M * Math.max(m, M)) / (η * i * r),
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

/**
 * Weight on the cords as the first fold begins: bar, the rings and rib of the bottom row, the bottom section and
 * half of the first fold. The other half hangs from the ring above.
 */
function heldLowered(grid: Grid, form: Form, mass: Mass): Figure {
  const [bottom, first] = form.stretches;
  const slackMm = first === undefined ? 0 : Math.max(0, first.clothMm - first.cordMm);
  const cordMm = grid.spacingsMm[0] ?? Math.max(0, grid.topSectionMm - grid.headrailMm);
  const { clothKg, barKg, rowsKg } = massByCarrier(mass);
  return HELD_LOWERED.figure({
    g: GRAVITY,
    b: barKg,
    e: rowsKg,
    p: Math.max(1, grid.rows.length),
    C: clothKg,
    d: bottom?.clothMm ?? grid.bottomSectionMm,
    F: cordMm + slackMm,
    L: form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0),
  });
}

/** Pull of the hand on a wheel or crank of this radius, N: torque over efficiency, ratio and radius. */
export function handPull(
  { loweredNm, raisedNm }: Torques,
  { ratio, efficiency }: Pick<Drive, "ratio" | "efficiency">,
  { label, radiusMm, radiusLabel }: { label: string; radiusMm: number; radiusLabel: string },
): Figure {
  const passedOn: { value: number; cite: Cite } =
    efficiency === undefined ? DRIVE_EFFICIENCY : { value: efficiency, cite: cite("maker", "of the drive") };
  return HAND_PULL.figure(
    { m: loweredNm, M: raisedNm, η: passedOn.value, i: ratio, r: radiusMm },
    { label, radiusLabel, efficiencyCite: passedOn.cite },
  );
}
