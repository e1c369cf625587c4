import type { WorkingBook } from "../../figures/index.ts";
import type { Tube } from "../../job/index.ts";
import { roundTube, solveBeam } from "../../mechanics/index.ts";
import type { LiftTube, Spool, TubeSupport } from "../../shade-plan/index.ts";
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

export interface TubeStiffness {
  bendMm: number;
  /** How much later the last spool turns than the first, as hem out of level, mm. */
  twistMm: number;
}

/** Bend and twist of the tube with the shade raised; undefined where its wall is not known. */
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
  book: WorkingBook,
): TubeStiffness | undefined {
  const { wallMm, metal = "aluminium", diameterMm } = part;
  const placesMm = [...new Set([...supports.map(({ xMm }) => xMm), driveMm])].sort((a, b) => a - b);
  const inside = placesMm.filter((x) => x >= tube.fromMm && x <= tube.toMm);
  if (wallMm === undefined || wallMm * 2 >= diameterMm || inside.length < 2) return undefined;
  const of = METALS[metal];
  const section = roundTube(diameterMm, diameterMm - 2 * wallMm);
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
      .filter(({ atMm }) => atMm >= tube.fromMm && atMm <= tube.toMm),
    stiffnessNmm2: of.elasticity * section.inertiaMm4,
  });
  const bendMm = book.figure("lift.tube-bend", {
    label: "Bend of the tube, at most",
    symbol: "v",
    unit: "mm",
    formula: "J / (E·I)",
    given: {
      J: [
        Math.abs(solved.largestDeflection.value) * of.elasticity * section.inertiaMm4,
        "ratio",
        "bend of the same tube where E·I is 1, by Macaulay’s method, N·mm³",
      ],
      E: [of.elasticity, "ratio", `stiffness of ${metal}, N/mm²`],
      I: [section.inertiaMm4, "ratio", "second moment of the tube’s ring, π(D⁴ − d⁴)/64, mm⁴"],
    },
    cite: of.cite,
    compute: ({ J, E, I }) => J / (E * I),
  });
  return { bendMm, twistMm: twist(spools, loadsN, woundMm, driveMm, of, 2 * section.inertiaMm4, book) };
}

/** Each spool’s torque twists the tube between it and the drive; the hem shows the difference of the outer two. */
function twist(
  spools: readonly Spool[],
  loadsN: readonly number[],
  woundMm: number,
  driveMm: number,
  of: { rigidity: number; cite: Cite },
  polarMm4: number,
  book: WorkingBook,
): number {
  const turned = spools.map(({ xMm }) =>
    spools.reduce((sum, other, i) => {
      const sameSide = other.xMm > driveMm === xMm > driveMm;
      const reach = sameSide ? Math.min(Math.abs(other.xMm - driveMm), Math.abs(xMm - driveMm)) : 0;
      return sum + (loadsN[i] ?? 0) * woundMm * reach;
    }, 0),
  );
  return book.figure("lift.tube-twist", {
    label: "Hem out of level by the twist of the tube",
    symbol: "w",
    unit: "mm",
    formula: "ρ·(A − B) / (G·K)",
    given: {
      ρ: [woundMm, "mm", "axis to the cord, shade raised"],
      A: [Math.max(...turned), "ratio", "torques times lengths to the spool that lags most, N·mm²"],
      B: [Math.min(...turned), "ratio", "the same to the spool that lags least, N·mm²"],
      G: [of.rigidity, "ratio", "stiffness against twist, N/mm²"],
      K: [polarMm4, "ratio", "polar second moment of the tube’s ring, mm⁴"],
    },
    cite: of.cite,
    note: "angle of twist Σ M·l / (G·K)",
    compute: ({ ρ, A, B, G, K }) => (ρ * (A - B)) / (G * K),
  });
}
