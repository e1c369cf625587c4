import { inches } from "../units/index.ts";
import type { Cloth } from "./cloth.ts";
import type { Bar, Board, Cord, CordLock, Eye, Ring } from "./hardware.ts";

/**
 * Parts and cloths that stand in until the maker enters his or her own.
 * All are invented for demonstration; capacities and cord diameters of the locks follow
 * “Hardware instruction and gallery pages” (see `lock-instructions` in the sources).
 */
export interface Catalogue {
  cloths: Cloth[];
  locks: CordLock[];
  cords: Cord[];
  bars: Bar[];
  ribs: Bar[];
  boards: Board[];
  rings: Ring[];
  eyes: Eye[];
}

const demo = true as const;

export const CATALOGUE: Catalogue = {
  cloths: [
    {
      id: "plain-cotton",
      name: "Plain cotton, 54 in",
      usableWidthMm: inches(54),
      massGsm: 230,
      thicknessMm: 0.5,
      shrinkLength: 0,
      shrinkWidth: 0,
      pricePerM: 24,
      demo,
    },
    {
      id: "cotton-lining",
      name: "Cotton sateen lining, 54 in",
      usableWidthMm: inches(54),
      massGsm: 140,
      thicknessMm: 0.3,
      shrinkLength: 0,
      shrinkWidth: 0,
      pricePerM: 9,
      demo,
    },
    {
      id: "domett",
      name: "Domett interlining, 54 in",
      usableWidthMm: inches(54),
      massGsm: 200,
      thicknessMm: 1.8,
      pricePerM: 11,
      demo,
    },
    {
      id: "blackout-lining",
      name: "Three-pass blackout, 54 in",
      usableWidthMm: inches(54),
      massGsm: 280,
      thicknessMm: 0.6,
      pricePerM: 13,
      demo,
    },
  ],
  locks: [
    {
      id: "lock-3-slot",
      name: "Three-slot lock",
      housingLengthMm: 30,
      housingWidthMm: 22,
      housingHeightMm: 24,
      dividerWires: 2,
      cordsMax: 6,
      cordMinMm: 1.4,
      cordMaxMm: 1.8,
      rollerDiameterMm: 9,
      screws: 2,
      massG: 28,
      price: 5,
      demo,
    },
    {
      id: "lock-5-slot",
      name: "Five-slot lock",
      housingLengthMm: 30,
      housingWidthMm: 32,
      housingHeightMm: 24,
      dividerWires: 4,
      cordsMax: 10,
      cordMinMm: 0.9,
      cordMaxMm: 1.4,
      thinCordMm: 0.9,
      thinCordsMax: 9,
      rollerDiameterMm: 9,
      screws: 2,
      massG: 38,
      price: 7,
      demo,
    },
  ],
  cords: [
    {
      id: "cord-1-4",
      name: "Lift cord 1.4 mm",
      diameterMm: 1.4,
      massGPerM: 1.4,
      breakingN: 450,
      pricePerM: 0.3,
      spoolMm: 91_440,
      demo,
    },
    {
      id: "cord-0-9",
      name: "Lift cord 0.9 mm",
      diameterMm: 0.9,
      massGPerM: 0.6,
      breakingN: 220,
      pricePerM: 0.25,
      spoolMm: 91_440,
      demo,
    },
    {
      id: "cord-1-8",
      name: "Lift cord 1.8 mm",
      diameterMm: 1.8,
      massGPerM: 2.2,
      breakingN: 650,
      pricePerM: 0.4,
      spoolMm: 91_440,
      demo,
    },
  ],
  bars: [
    {
      id: "bar-steel-19x3",
      name: "Flat steel bar 19 × 3 mm",
      material: "steel",
      widthMm: 19,
      thicknessMm: 3,
      stockMm: 2000,
      price: 9,
      demo,
    },
    {
      id: "bar-aluminium-19x3",
      name: "Flat aluminium bar 19 × 3 mm",
      material: "aluminium",
      widthMm: 19,
      thicknessMm: 3,
      stockMm: 2000,
      price: 8,
      demo,
    },
    {
      id: "bar-wood-25x3",
      name: "Flat wood lath 25 × 3 mm",
      material: "wood",
      widthMm: 25,
      thicknessMm: 3,
      stockMm: 2400,
      price: 2,
      demo,
    },
  ],
  ribs: [
    {
      id: "rib-rod-4",
      name: "Glass-fibre rod 4 mm",
      material: "plastic",
      widthMm: 4,
      thicknessMm: 4,
      round: true,
      massGPerM: 24,
      stockMm: 2000,
      price: 2.5,
      demo,
    },
    {
      id: "rib-dowel-8",
      name: "Wood dowel 8 mm",
      material: "wood",
      widthMm: 8,
      thicknessMm: 8,
      round: true,
      stockMm: 2400,
      price: 2,
      demo,
    },
  ],
  boards: [
    {
      id: "board-1x2",
      name: "1 × 2 board (19 × 38 mm)",
      depthMm: inches(1.5),
      thicknessMm: inches(0.75),
      densityKgM3: 450,
      stockMm: 2438.4,
      price: 6,
      demo,
    },
    {
      id: "board-1x3",
      name: "1 × 3 board (19 × 64 mm)",
      depthMm: inches(2.5),
      thicknessMm: inches(0.75),
      densityKgM3: 450,
      stockMm: 2438.4,
      price: 8,
      demo,
    },
    {
      id: "board-1x4",
      name: "1 × 4 board (19 × 89 mm)",
      depthMm: inches(3.5),
      thicknessMm: inches(0.75),
      densityKgM3: 450,
      stockMm: 2438.4,
      price: 10,
      demo,
    },
  ],
  rings: [{ id: "ring-12", name: "Ring 12 mm", diameterMm: 12, massG: 0.5, packOf: 100, price: 8, demo }],
  eyes: [
    {
      id: "eye-12",
      name: "Screw eye 12 mm",
      outsideDiameterMm: 12,
      friction: 0.25,
      packOf: 25,
      price: 4,
      demo,
    },
  ],
};
