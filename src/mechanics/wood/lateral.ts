/** One row of Table 8-4, Wood Handbook FPL-GTR-282 (2021): K of the lateral formulas, N and mm. */
interface LateralRow {
  wood: WoodKind;
  gravity: readonly [number, number];
  nail: number;
  screw: number;
  lag: number;
}

export type WoodKind = "softwood" | "hardwood";

export const TABLE_8_4: readonly LateralRow[] = [
  { wood: "softwood", gravity: [0.29, 0.42], nail: 50.04, screw: 23.17, lag: 23.3 },
  { wood: "softwood", gravity: [0.43, 0.47], nail: 62.55, screw: 29.79, lag: 26.34 },
  { wood: "softwood", gravity: [0.48, 0.52], nail: 76.45, screw: 36.4, lag: 29.51 },
  { wood: "hardwood", gravity: [0.33, 0.47], nail: 50.04, screw: 23.17, lag: 26.34 },
  { wood: "hardwood", gravity: [0.48, 0.56], nail: 69.5, screw: 31.99, lag: 29.51 },
  { wood: "hardwood", gravity: [0.57, 0.74], nail: 94.52, screw: 44.13, lag: 34.13 },
];

/** Factor for this wood, or undefined where the table does not reach; G is read to two places, as it is printed. */
export function lateralFactor(
  wood: WoodKind,
  gravity: number,
  fastener: "nail" | "screw" | "lag",
): number | undefined {
  const printed = Math.round(gravity * 100) / 100;
  return TABLE_8_4.find(
    (row) => row.wood === wood && printed >= row.gravity[0] && printed <= row.gravity[1],
  )?.[fastener];
}

/**
 * Wood screw across side grain at the proportional limit, K D², N (equation 8-13): slip about 0.38 mm. Asks for seven
 * diameters in the piece that holds the point; undefined where the table does not reach.
 */
export function screwLateralN(wood: WoodKind, gravity: number, diameterMm: number): number | undefined {
  const factor = lateralFactor(wood, gravity, "screw");
  return factor === undefined ? undefined : factor * diameterMm ** 2;
}

/** Nail across side grain at the proportional limit, K D^3/2, N (equation 8-2). */
export function nailLateralN(wood: WoodKind, gravity: number, diameterMm: number): number | undefined {
  const factor = lateralFactor(wood, gravity, "nail");
  return factor === undefined ? undefined : factor * diameterMm ** 1.5;
}

/** Dowel bearing strength of wood, 114.5 G^1.84, N/mm² (equation 8-3). */
export function dowelBearingNPerMm2(gravity: number): number {
  return 114.5 * gravity ** 1.84;
}
