import type { WorkingBook } from "../../figures/index.ts";
import { type Form, type Grid, type Mass, massByCarrier } from "../../shade-plan/index.ts";
import { type Cite, cite, sourced } from "../../sources/index.ts";
import { GRAVITY, MM_PER_M } from "../../units/index.ts";
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

/** Torque on the tube at both ends of the travel: the weight on the cords times their distance from the axis. */
export function torques(
  { grid, form, mass }: { grid: Grid; form: Form; mass: Mass },
  heldN: number,
  wound: Wound,
  book: WorkingBook,
): Torques {
  const heldLoweredN = heldLowered(grid, form, mass, book);
  return {
    heldLoweredN,
    loweredNm: torque("lift.torque-lowered", "lowered", heldLoweredN, wound.loweredMm, book),
    raisedNm: torque("lift.torque-raised", "raised", heldN, wound.raisedMm, book),
  };
}

/**
 * Weight on the cords as the first fold begins: bar, the rings and rib of the bottom row, the bottom section and
 * half of the first fold. The other half hangs from the ring above.
 */
function heldLowered(grid: Grid, form: Form, mass: Mass, book: WorkingBook): number {
  const [bottom, first] = form.stretches;
  const slackMm = first === undefined ? 0 : Math.max(0, first.clothMm - first.cordMm);
  const cordMm = grid.spacingsMm[0] ?? Math.max(0, grid.topSectionMm - grid.headrailMm);
  const { clothKg, barKg, rowsKg } = massByCarrier(mass);
  return book.figure("lift.held-lowered", {
    label: "Weight on the cords, shade lowered",
    symbol: "G",
    unit: "N",
    formula: "g·(b + e / p + C·min(1, (d + F / 2) / L))",
    given: {
      g: [GRAVITY, "ratio", "standard gravity, m/s²"],
      b: [barKg, "kg", "bar"],
      e: [rowsKg, "kg", "ribs and rings of all rows"],
      p: [Math.max(1, grid.rows.length), "count", "rows"],
      C: [clothKg, "kg", "cloth, all layers"],
      d: [bottom?.clothMm ?? grid.bottomSectionMm, "mm", "cloth from the hem to the bottom row"],
      F: [cordMm + slackMm, "mm", "cloth of the first fold"],
      L: [form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0), "mm", "cloth from hem to top line"],
    },
    cite: cite("geometry", "the ring above carries the other half of the first fold"),
    compute: ({ g, b, e, p, C, d, F, L }) => g * (b + e / p + C * Math.min(1, (d + F / 2) / L)),
  });
}

function torque(id: string, state: string, heldN: number, radiusMm: number, book: WorkingBook): number {
  return book.figure(id, {
    label: `Torque on the tube, ${state}`,
    symbol: "M",
    unit: "Nm",
    formula: "G·ρ / 1000",
    given: {
      G: [heldN, "N", `weight on the cords, ${state}`],
      ρ: [radiusMm, "mm", "axis to the cord on its spool"],
    },
    cite: cite("nist-sp-811", "torque, N·m"),
    compute: ({ G, ρ }) => (G * ρ) / MM_PER_M,
  });
}

/** Pull of the hand on a wheel or crank of this radius, N: torque over efficiency, ratio and radius. */
export function handPull(
  { loweredNm, raisedNm }: Torques,
  hand: { radiusMm: number; radiusLabel: string; ratio: number; efficiency?: number; label: string },
  book: WorkingBook,
): number {
  const efficiency: { value: number; cite: Cite } =
    hand.efficiency === undefined
      ? DRIVE_EFFICIENCY
      : { value: hand.efficiency, cite: cite("maker", "of the drive") };
  return book.figure("lift.pull", {
    label: hand.label,
    symbol: "F",
    unit: "N",
    formula: "1000·max(m, M) / (η·i·r)",
    given: {
      m: [loweredNm, "Nm", "torque on the tube, lowered"],
      M: [raisedNm, "Nm", "torque on the tube, raised"],
      η: [efficiency.value, "ratio", "share of the work that is passed on"],
      i: [hand.ratio, "ratio", "turns of the hand for one of the tube"],
      r: [hand.radiusMm, "mm", hand.radiusLabel],
    },
    cite: efficiency.cite,
    compute: ({ m, M, η, i, r }) => (MM_PER_M * Math.max(m, M)) / (η * i * r),
  });
}
