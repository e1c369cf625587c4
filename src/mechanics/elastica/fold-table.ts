import type { FoldLevel } from "./fold-level.ts";

/**
 * Folds of every weight, so that planning a shade solves none: row k is for λ = 2^k. Written by `npm run fold-table` from
 * `pressDrops` and `solveOpening`; a test solves each row again.
 */
export const FOLD_TABLE: readonly FoldLevel[] = [
  {
    freeRad: 0.68905,
    moments: [0.34313, 0.96823, 1.9635, 3.6932, 6.6982, 12.378, 22.459, 44.158],
    startShare: 1.7322,
    outShare: 0.38674,
  },
  {
    freeRad: 0.66944,
    moments: [0.34784, 0.99309, 2.04, 3.8723, 7.0546, 13.063, 23.826, 46.52],
    startShare: 1.0953,
    outShare: 0.37831,
  },
  {
    freeRad: 0.63346,
    moments: [0.35874, 1.0519, 2.2041, 4.2456, 7.8106, 14.546, 26.467, 51.975],
    startShare: 0.75745,
    outShare: 0.35304,
  },
  {
    freeRad: 0.5723,
    moments: [0.38722, 1.2004, 2.6064, 5.1181, 9.5084, 17.771, 32.504, 63.508],
    startShare: 0.5569,
    outShare: 0.31603,
  },
  {
    freeRad: 0.48094,
    moments: [0.50142, 1.6629, 3.6835, 7.2892, 13.544, 25.263, 45.853, 89.69],
    startShare: 0.41841,
    outShare: 0.27292,
  },
  {
    freeRad: 0.37197,
    moments: [1.0178, 3.1305, 6.6393, 12.809, 23.329, 42.859, 76.763, 147.06],
    startShare: 0.3161,
    outShare: 0.22968,
  },
  {
    freeRad: 0.28154,
    moments: [2.1312, 6.1193, 12.471, 23.206, 41.644, 74.961, 133.59, 251],
    startShare: 0.23998,
    outShare: 0.19116,
  },
  {
    freeRad: 0.21509,
    moments: [4.065, 11.216, 22.473, 40.756, 71.696, 128.73, 224.7, 405.09],
    startShare: 0.18301,
    outShare: 0.15771,
  },
  {
    freeRad: 0.16608,
    moments: [7.2773, 19.449, 38.262, 69.599, 121.06, 212.34, 344.12, 639.41],
    startShare: 0.14007,
    outShare: 0.13,
  },
  {
    freeRad: 0.12936,
    moments: [12.373, 33.218, 64.53, 115.46, 195.89, 319.25, 581.28, 843.66],
    startShare: 0.1075,
    outShare: 0.10475,
  },
  {
    freeRad: 0.10115,
    moments: [19.886, 54.617, 106.11, 186.03, 300.38, 551.2, 789.78, 1536.7],
    startShare: 0.082707,
    outShare: 0.086129,
  },
];
