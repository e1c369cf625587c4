import type { WoodKind } from "./lateral.ts";

/** Clear straight-grained wood at 12 % moisture, in the units of the table: means of tests, not design values. */
export interface WoodSpecies {
  name: string;
  wood: WoodKind;
  /** G, ovendry mass over volume at 12 % moisture. */
  gravity: number;
  /** Modulus of elasticity in bending, MPa; shear of the test beams is in it, so the true E is about a tenth higher. */
  elasticityMPa: number;
  /** Modulus of rupture, kPa; undefined where it was not read. */
  ruptureKPa?: number;
  /** Place in the Wood Handbook, FPL-GTR-282 (2021) or its edition before. */
  table: "5-3a" | "5-5a";
  /** Whether all figures were read there, or some recalled. */
  known: "read" | "from memory";
}

export const WOOD_SPECIES = {
  "eastern-white-pine": {
    name: "Eastern white pine",
    wood: "softwood",
    gravity: 0.35,
    elasticityMPa: 8500,
    ruptureKPa: 59000,
    table: "5-3a",
    known: "from memory",
  },
  "ponderosa-pine": {
    name: "Ponderosa pine",
    wood: "softwood",
    gravity: 0.4,
    elasticityMPa: 8900,
    ruptureKPa: 65000,
    table: "5-3a",
    known: "read",
  },
  "loblolly-pine": {
    name: "Loblolly pine",
    wood: "softwood",
    gravity: 0.51,
    elasticityMPa: 12300,
    ruptureKPa: 88000,
    table: "5-3a",
    known: "read",
  },
  "radiata-pine": {
    name: "Radiata pine",
    wood: "softwood",
    gravity: 0.42,
    elasticityMPa: 10200,
    ruptureKPa: 80700,
    table: "5-5a",
    known: "from memory",
  },
  "engelmann-spruce": {
    name: "Engelmann spruce",
    wood: "softwood",
    gravity: 0.35,
    elasticityMPa: 8900,
    ruptureKPa: 64000,
    table: "5-3a",
    known: "read",
  },
  "sitka-spruce": {
    name: "Sitka spruce",
    wood: "softwood",
    gravity: 0.4,
    elasticityMPa: 10800,
    table: "5-3a",
    known: "read",
  },
  "douglas-fir-coast": {
    name: "Douglas-fir, coast",
    wood: "softwood",
    gravity: 0.48,
    elasticityMPa: 13400,
    ruptureKPa: 85000,
    table: "5-3a",
    known: "read",
  },
  basswood: {
    name: "Basswood",
    wood: "hardwood",
    gravity: 0.37,
    elasticityMPa: 10100,
    table: "5-3a",
    known: "read",
  },
  "yellow-poplar": {
    name: "Yellow-poplar",
    wood: "hardwood",
    gravity: 0.42,
    elasticityMPa: 10900,
    ruptureKPa: 70000,
    table: "5-3a",
    known: "read",
  },
  "northern-red-oak": {
    name: "Northern red oak",
    wood: "hardwood",
    gravity: 0.63,
    elasticityMPa: 12500,
    ruptureKPa: 99000,
    table: "5-3a",
    known: "read",
  },
} as const satisfies Record<string, WoodSpecies>;

export type WoodSpeciesId = keyof typeof WOOD_SPECIES;

/** Density at 12 % moisture, 1120 G, kg/m³ (Wood Handbook, equation 4-12). */
export function densityKgPerM3(gravity: number): number {
  return 1120 * gravity;
}
