import { figureRuleOf, type Worked } from "../../figures/index.ts";
import type { Tube } from "../../job/index.ts";
import { roundTube, solveBeam } from "../../mechanics/index.ts";
import type { LiftTube, Spool, TubeLift, TubeSupport } from "../../shade-plan/index.ts";
import { type Cite, cite, sourced } from "../../sources/index.ts";
import { GRAVITY } from "../../units/index.ts";

/** Stiffness against bending and against twist, N/mm². */
const METALS: Record<NonNullable<Tube["metal"]>, { elasticity: number; rigidity: number; cite: Cite }> = {
  aluminium: { elasticity: 69_000, rigidity: 26_000, cite: cite("from-memory", "aluminium, 69 and 26 GPa") },
  steel: { elasticity: 200_000, rigidity: 77_000, cite: cite("from-memory", "steel, 200 and 77 GPa") },
};
/** More than this and spools rub, or the hem hangs out of level to the eye. */
export const TUBE_BEND = sourced(
  1.5,
  "mm",
  cite("our-choice", "half of what is kept between spool and board"),
);
export const TUBE_TWIST = sourced(3, "mm", cite("our-choice", "1/8 in: about what shows beside a sill"));

/** What a tube is made of. */
interface OfMetal {
  metal: NonNullable<Tube["metal"]>;
}

const BEND = figureRuleOf<OfMetal>()({
  id: "lift.tube-bend",
  label: "Bend of the tube, at most",
  symbol: "v",
  unit: "mm",
  formula: "J / (E·I)",
  inputs: {
    J: [
      "ratio",
      "bend of the same tube where E·I is 1, by the three-moment equation, N·mm³",
      "figure:lift.held",
      "figure:shape.columns",
      "lift/drive",
      "columns/edgeInsetMm",
      "figure:measure.board-length",
    ],
    E: ["ratio", ({ metal }) => `stiffness of ${metal}, N/mm²`, "lift/tube"],
    I: ["ratio", "second moment of the tube’s ring, π(D⁴ − d⁴)/64, mm⁴", "lift/tube"],
  },
  cite: ({ metal }) => METALS[metal].cite,
  compute: ({ J, E, I }) => J / (E * I),
});

const TWIST = figureRuleOf<OfMetal>()({
  id: "lift.tube-twist",
  label: "Hem out of level by the twist of the tube",
  symbol: "w",
  unit: "mm",
  formula: "ρ·(A − B) / (G·K)",
  inputs: {
    ρ: ["mm", "axis to the cord, shade raised", "figure:lift.wound-raised"],
    A: [
      "ratio",
      "torques times lengths to the spool that lags most, N·mm²",
      "figure:lift.held",
      "lift/drive",
      "figure:shape.columns",
    ],
    B: ["ratio", "the same to the spool that lags least, N·mm²", "figure:lift.held"],
    G: ["ratio", "stiffness against twist, N/mm²", "lift/tube"],
    K: ["ratio", "polar second moment of the tube’s ring, mm⁴", "lift/tube"],
  },
  cite: ({ metal }) => METALS[metal].cite,
  note: "angle of twist Σ M·l / (G·K)",
  compute: ({ ρ, A, B, G, K }) => (ρ * (A - B)) / (G * K),
});

/** Bend and twist of the tube with the shade raised; nothing where its wall is not known. */
export function tubeStiffness(
  part: Tube,
  {
    tube,
    spools,
    supports,
    driveMm,
  }: { tube: LiftTube; spools: readonly Spool[]; supports: readonly TubeSupport[]; driveMm: number },
  loadsN: readonly number[],
  woundMm: number,
): Worked<TubeLift["stiffness"]> {
  const { wallMm, metal = "aluminium", diameterMm } = part;
  const isOnTube = (xMm: number) => xMm >= tube.fromMm && xMm <= tube.toMm;
  // A drive beyond the end of the tube bears that end: the tube sits in its face.
  const bornAtMm = Math.min(Math.max(driveMm, tube.fromMm), tube.toMm);
  const bearingsMm = [...supports.map(({ xMm }) => xMm).filter(isOnTube), bornAtMm];
  const inside = [...new Set(bearingsMm)].sort((a, b) => a - b);
  if (wallMm === undefined || wallMm * 2 >= diameterMm || inside.length < 2) {
    return { values: undefined, workings: [] };
  }
  const { elasticity, rigidity } = METALS[metal];
  const { inertiaMm4 } = roundTube(diameterMm, diameterMm - 2 * wallMm);
  const solved = solveBeam({
    supportsMm: inside,
    fromMm: tube.fromMm,
    toMm: tube.toMm,
    spread:
      part.massGPerM === undefined
        ? []
        : [{ fromMm: tube.fromMm, toMm: tube.toMm, loadNPerMm: (part.massGPerM * GRAVITY) / 1e6 }],
    points: spools
      .map(({ xMm }, i) => ({ atMm: xMm, loadN: loadsN[i] ?? 0 }))
      .filter(({ atMm }) => isOnTube(atMm)),
    stiffnessNmm2: elasticity * inertiaMm4,
  });
  const unitBend = Math.abs(solved.largestDeflection.value) * elasticity * inertiaMm4;
  const bend = BEND.figure({ J: unitBend, E: elasticity, I: inertiaMm4 }, { metal });
  const turned = turnedNmm2(spools, loadsN, woundMm, bornAtMm);
  const twist = TWIST.figure(
    {
      ρ: woundMm,
      A: Math.max(...turned),
      B: Math.min(...turned),
      G: rigidity,
      K: 2 * inertiaMm4,
    },
    { metal },
  );
  return { values: { bendMm: bend.value, twistMm: twist.value }, workings: [bend, twist] };
}

/** Each spool’s torque twists the tube between it and the drive: torque times length at each, N·mm². */
function turnedNmm2(
  spools: readonly Spool[],
  loadsN: readonly number[],
  woundMm: number,
  driveMm: number,
): number[] {
  return spools.map(({ xMm }) =>
    spools.reduce((sum, other, i) => {
      const sameSide = other.xMm > driveMm === xMm > driveMm;
      const reach = sameSide ? Math.min(Math.abs(other.xMm - driveMm), Math.abs(xMm - driveMm)) : 0;
      return sum + (loadsN[i] ?? 0) * woundMm * reach;
    }, 0),
  );
}
