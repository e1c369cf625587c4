import { type Figure, figureRule } from "../figures/index.ts";
import { continuousBeam } from "../mechanics/index.ts";
import { type Form, type Grid, type Mass, massByCarrier } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";

const HELD = figureRule({
  id: "lift.held",
  label: "Weight on the cords, fully raised",
  symbol: "G",
  unit: "N",
  formula: "g·(B + C·max(0, 1 − (T + F / 2) / L))",
  inputs: {
    g: ["ratio", "standard gravity, m/s²"],
    B: ["kg", "bar, turned hem, ribs and rings", "figure:cloth.*-mass", "board/bar", "ribs/rib", "lift/ring"],
    C: ["kg", "cloth of all layers without hem and board allowance", "figure:cloth.*-mass"],
    T: ["mm", "headrail allowance", "figure:shape.headrail"],
    F: ["mm", "cloth of the fold below it", "figure:shape.*"],
    L: ["mm", "cloth from hem to top line", "figure:measure.finished-length", "figure:shape.*"],
  },
  cite: cite(
    "geometry",
    "the heading carries the headrail cloth and half of the top fold; a turned hem hangs whole",
  ),
  compute: ({ g, B, C, T, F, L }) => g * (B + C * Math.max(0, 1 - (T + F / 2) / L)),
});

/**
 * Weight on the cords with the shade fully raised, N: bar, ribs and rings, and the cloth but for what the
 * heading carries, which is the headrail allowance and half of the fold below it.
 */
export function heldWeight(grid: Grid, form: Form, mass: Mass): Figure {
  const top = form.stretches.at(-1);
  const slackMm = top === undefined ? 0 : Math.max(0, top.clothMm - top.cordMm);
  const { clothKg, hemKg, barKg, rowsKg } = massByCarrier(mass);
  return HELD.figure({
    g: GRAVITY,
    B: barKg + hemKg + rowsKg,
    C: clothKg,
    T: grid.headrailMm,
    F: Math.max(0, grid.topSectionMm - grid.headrailMm) + slackMm,
    L: form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0),
  });
}

/** Shares of one weight among cords, from the left. */
export interface CordLoads {
  /** Stiff bar or ribs: reactions of a continuous beam on the columns. */
  stiffN: number[];
  /** Limp cloth: each column carries the cloth up to half way to its neighbours. */
  limpN: number[];
  /** The worse of the two, cord by cord: what everything is designed on. */
  designN: number[];
}

export function cordLoads(columnsMm: readonly number[], widthMm: number, heldN: number): CordLoads {
  const stiffN = stiffShares(columnsMm, widthMm, heldN);
  const limpN = limpShares(columnsMm, widthMm, heldN);
  return { stiffN, limpN, designN: stiffN.map((stiff, i) => Math.max(stiff, limpN[i] ?? 0)) };
}

/** A cord cannot push: where the beam would lift off a column, that cord hangs slack and the others share. */
function stiffShares(columnsMm: readonly number[], widthMm: number, heldN: number): number[] {
  let taut = columnsMm.map((_, i) => i);
  for (;;) {
    const supportsMm = taut.map((i) => columnsMm[i] ?? 0);
    const { reactionsN } = continuousBeam({
      supportsMm,
      fromMm: 0,
      toMm: widthMm,
      loadNPerMm: heldN / widthMm,
    });
    const least = reactionsN.indexOf(Math.min(...reactionsN));
    if ((reactionsN[least] ?? 0) >= 0 || taut.length < 3) {
      const shares = columnsMm.map(() => 0);
      taut.forEach((column, i) => {
        shares[column] = reactionsN[i] ?? 0;
      });
      return shares;
    }
    taut = taut.filter((_, i) => i !== least);
  }
}

function limpShares(columnsMm: readonly number[], widthMm: number, heldN: number): number[] {
  return columnsMm.map((x, i) => {
    const left = columnsMm[i - 1];
    const right = columnsMm[i + 1];
    const from = left === undefined ? 0 : (left + x) / 2;
    const to = right === undefined ? widthMm : (x + right) / 2;
    return (heldN * (to - from)) / widthMm;
  });
}
