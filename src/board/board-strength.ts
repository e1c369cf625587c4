import type { WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import {
  bendingStressNPerMm2,
  rectangle,
  SCREW_SHANK_MM,
  type SolvedBeam,
  screwLateralN,
  screwPulls,
  screwWithdrawalN,
  solveBeam,
  WOOD_SPECIES,
  type WoodSpecies,
} from "../mechanics/index.ts";
import type { BoardPlan, BoardStrength } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import type { BoardLoads } from "./board-loads.ts";

/** A tug at the cord, over a steady pull. */
export const TUG = sourced(1.5, "ratio", cite("our-choice", "half as much again for a tug"));
/** Mean ultimate strength of clear wood over what it may be put to. */
export const WOOD_FACTOR = sourced(
  5,
  "ratio",
  cite("our-choice", "mean strength of clear, dry wood over the load; local codes prevail"),
);
/** Bend that nobody sees: the smaller of a share of the bay and a length. */
const BEND_SHARE = sourced(360, "ratio", cite("from-memory", "span/360"));
const MOST_BEND = sourced(3, "mm", cite("our-choice", "more shows as a gap at the top"));
/** From either end of a bracket's leg to the middle of its screw. */
const SCREW_FROM_END_MM = 10;

/** Bend, stress and screws of the board with a hand tugging; undefined where it does not lie on two fixings. */
export function boardStrength(
  resolved: ResolvedShade,
  board: Omit<BoardPlan, "strength">,
  loads: BoardLoads,
  gripMm: number,
  book: WorkingBook,
): BoardStrength | undefined {
  if (loads.supportsMm.length < 2 || !(loads.toMm > loads.fromMm)) return undefined;
  const wood: WoodSpecies = WOOD_SPECIES[resolved.making.board.wood];
  const section = rectangle(board.depthMm, board.thicknessMm);
  const beam = solveBeam({
    supportsMm: loads.supportsMm,
    fromMm: loads.fromMm,
    toMm: loads.toMm,
    spread: [
      { fromMm: loads.fromMm, toMm: loads.toMm, loadNPerMm: loads.evenN / (loads.toMm - loads.fromMm) },
    ],
    points: loads.points
      .map(({ what, atMm, loadN }) => ({
        atMm,
        loadN: what === "lock" || what === "drive" ? loadN * TUG.value : loadN,
      }))
      .filter(({ atMm }) => atMm >= loads.fromMm && atMm <= loads.toMm),
    stiffnessNmm2: wood.elasticityMPa * section.inertiaMm4,
  });
  const worstN = Math.max(...beam.reactionsN.map(Math.abs));
  const { pullN, shearN } = onOneScrew(resolved, board, worstN, book);
  const share = screwShare(resolved, pullN, shearN, gripMm, book);
  return {
    reactionsN: beam.reactionsN,
    ...bend(loads, wood, board, beam, book),
    ...stress(beam, wood, section),
    pullN,
    shearN,
    ...(share === undefined ? {} : { screwShare: share }),
  };
}

function bend(
  loads: BoardLoads,
  wood: WoodSpecies,
  { depthMm, thicknessMm }: Pick<BoardPlan, "depthMm" | "thicknessMm">,
  { largestDeflection }: SolvedBeam,
  book: WorkingBook,
): Pick<BoardStrength, "deflectionMm" | "deflectionAtMm" | "deflectionLimitMm"> {
  const places = [loads.fromMm, ...loads.supportsMm, loads.toMm];
  const bayMm = Math.max(...places.slice(1).map((place, i) => place - (places[i] ?? place)));
  const deflectionMm = book.figure("board.deflection", {
    label: "Bend of the board, at most",
    symbol: "v",
    unit: "mm",
    formula: "J·12 / (E·D·t^3)",
    given: {
      J: [
        (Math.abs(largestDeflection.value) * wood.elasticityMPa * depthMm * thicknessMm ** 3) / 12,
        "ratio",
        "bend of the same beam where E·I is 1, by Macaulay’s method, N·mm³",
      ],
      E: [wood.elasticityMPa, "ratio", `stiffness of ${wood.name.toLowerCase()}, N/mm²`],
      D: [depthMm, "mm", "depth of the board"],
      t: [thicknessMm, "mm", "thickness of the board"],
    },
    cite: cite("wood-handbook", `table ${wood.table}: ${wood.name}`),
    note: "continuous over its fixings, with the hand’s pull half as much again",
    compute: ({ J, E, D, t }) => (J * 12) / (E * D * t ** 3),
  });
  const deflectionLimitMm = book.figure("board.deflection-limit", {
    label: "Bend that is allowed",
    symbol: "v_max",
    unit: "mm",
    formula: "min(s / q, m)",
    given: {
      s: [bayMm, "mm", "widest stretch between two fixings, or beyond the last"],
      q: [BEND_SHARE.value, "ratio", "share of it"],
      m: [MOST_BEND.value, "mm", "and never more than"],
    },
    cite: BEND_SHARE.cite,
    compute: ({ s, q, m }) => Math.min(s / q, m),
  });
  return { deflectionMm, deflectionAtMm: largestDeflection.atMm, deflectionLimitMm };
}

function stress(
  { largestMoment }: SolvedBeam,
  { ruptureKPa }: WoodSpecies,
  section: ReturnType<typeof rectangle>,
): Pick<BoardStrength, "stressNPerMm2" | "ruptureNPerMm2"> {
  return {
    stressNPerMm2: bendingStressNPerMm2(largestMoment.value, section),
    ...(ruptureKPa === undefined ? {} : { ruptureNPerMm2: ruptureKPa / 1000 }),
  };
}

/** A screw up through the board takes its load straight; a bracket turns on the lower end of its leg. */
function onOneScrew(
  resolved: ResolvedShade,
  board: Pick<BoardPlan, "fixing" | "depthMm">,
  loadN: number,
  book: WorkingBook,
): { pullN: number; shearN: number } {
  if (board.fixing === "screwed-up") return { pullN: loadN, shearN: 0 };
  const legMm = Math.max(2 * SCREW_FROM_END_MM + 1, resolved.making.board.bracketLegMm);
  const screwsMm = [SCREW_FROM_END_MM, legMm - SCREW_FROM_END_MM];
  const pulls = screwPulls({ loadN, armMm: board.depthMm, screwsMm });
  const pullN = book.figure("board.screw-pull", {
    label: "Pull on the upper screw of the hardest worked bracket",
    symbol: "T",
    unit: "N",
    formula: "Q·D·z / (y^2 + z^2)",
    given: {
      Q: [loadN, "N", "load on that bracket, with a tug"],
      D: [board.depthMm, "mm", "out from the wall, as if all hung at the front edge"],
      z: [screwsMm[1] ?? 0, "mm", "upper screw above the lower end of the leg"],
      y: [screwsMm[0] ?? 0, "mm", "lower screw above it"],
    },
    cite: cite("geometry", "a stiff bracket turns on the lower end of its leg"),
    compute: ({ Q, D, z, y }) => (Q * D * z) / (y ** 2 + z ** 2),
  });
  return { pullN, shearN: pulls[0]?.shearN ?? 0 };
}

/** Withdrawal and shear together as shares of what each may be, for a screw into wood. */
function screwShare(
  resolved: ResolvedShade,
  pullN: number,
  shearN: number,
  gripMm: number,
  book: WorkingBook,
): number | undefined {
  const { substrate, wallWood, screwGauge } = resolved.making.board;
  if (substrate !== "timber") return undefined;
  const wood: WoodSpecies = WOOD_SPECIES[wallWood];
  const diameterMm = SCREW_SHANK_MM[screwGauge];
  const withdrawalN = book.figure("board.screw-withdrawal", {
    label: "One screw pulled out of the wood, mean ultimate",
    symbol: "p",
    unit: "N",
    formula: "108.25·G^2·d·l",
    given: {
      G: [wood.gravity, "ratio", `specific gravity of ${wood.name.toLowerCase()}`],
      d: [diameterMm, "mm", `shank of a No. ${screwGauge} screw`],
      l: [gripMm, "mm", "thread in the wood"],
    },
    cite: cite("wood-handbook", "eq. 8-10, p. 8-10: ultimate, side grain"),
    compute: ({ G, d, l }) => screwWithdrawalN({ gravity: G, diameterMm: d, depthMm: l }),
  });
  const lateralN = screwLateralN(wood.wood, wood.gravity, diameterMm);
  return book.figure("board.screw-share", {
    label: "Share of what one screw may be put to",
    symbol: "u",
    unit: "ratio",
    formula: lateralN === undefined ? "T·k / p" : "T·k / p + V / c",
    given: {
      T: [pullN, "N", "pull away from the wood"],
      k: [WOOD_FACTOR.value, "ratio", "ultimate over allowed"],
      p: [withdrawalN, "N", "ultimate withdrawal"],
      ...(lateralN === undefined
        ? {}
        : {
            V: [shearN, "N", "load along the wood"] as const,
            c: [lateralN, "N", "lateral load at which the screw begins to slip, table 8-4"] as const,
          }),
    } as Record<"T" | "k" | "p" | "V" | "c", readonly [number, "N" | "ratio", string]>,
    cite: cite("wood-handbook", "eq. 8-10 and 8-13; both shares added"),
    note: "mean strengths of clear dry wood; local codes and licensed practice prevail",
    compute: ({ T, k, p, V, c }) => (T * k) / p + (lateralN === undefined ? 0 : V / c),
  });
}
