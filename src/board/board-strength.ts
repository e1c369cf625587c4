import { type Figure, type FigureInput, figureRule, figureRuleOf, type Worked } from "../figures/index.ts";
import {
  bendingStressNPerMm2,
  type LoadedBeam,
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
import type { BoardStrength, MountedBoard, ScrewLoad } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { BoardShade } from "./board-input.ts";
import { type BoardLoads, endsOnCleat, withHand, withSomeoneOnHem } from "./board-loads.ts";
import { PLACED } from "./fixings.ts";

/** A tug at the cord, over a steady pull. */
export const TUG = sourced(1.5, "ratio", cite("our-choice", "half as much again for a tug"));
/** A guide that keeps a cord taut is tried by this pull; a cord is pulled as hard. */
export const CORD_PULL = sourced(70, "N", cite("au-2014-standard", "a cord guide holds 70 N for 10 s"));
/** Shades are hung on. */
export const CHILD = sourced(
  12,
  "kg",
  cite("our-choice", "a child of two or three that hangs on cord or hem"),
);
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

const HAND_LOAD = figureRuleOf<{ rail: boolean }>()({
  id: "board.hand-load",
  label: "Pull on the shade by which the board’s strength is judged",
  symbol: "H",
  unit: "N",
  formula: "max(k·F, P, m·g)",
  inputs: ({ rail }): Record<string, FigureInput<{ rail: boolean }>> => ({
    k: ["ratio", "a tug over a steady pull"],
    F: [
      "N",
      rail ? "pull of the hand, on shade or top rail" : "pull of the hand",
      "figure:lift.*",
      ...(rail ? ["figure:rig.rail-pull"] : []),
    ],
    P: ["N", "somebody pulls at the cord"],
    m: ["kg", "a child hangs on it"],
    g: ["ratio", "standard gravity, m/s²"],
  }),
  cite: cite("our-choice", "the heaviest of a tug, a pull and a child that hangs on the shade"),
  compute: ({ k = 0, F = 0, P = 0, m = 0, g = 0 }) => Math.max(k * F, P, m * g),
});

const DEFLECTION = figureRuleOf<{ wood: WoodSpecies }>()({
  id: "board.deflection",
  label: "Bend of the board, at most",
  symbol: "v",
  unit: "mm",
  formula: "J·12 / (E·D·t^3)",
  inputs: ({ wood }) => ({
    J: [
      "ratio",
      "bend of the same beam where E·I is 1, by the three-moment equation, N·mm³",
      "board/bracketSpacingMm",
      "board/bracketEndMm",
      "figure:board.load",
    ],
    E: ["ratio", `stiffness of ${wood.name.toLowerCase()}, N/mm²`, "board/wood"],
    D: ["mm", "depth of the board", "board/section"],
    t: ["mm", "thickness of the board", "board/section"],
  }),
  restsOn: PLACED,
  cite: ({ wood }) => cite("wood-handbook", `table ${wood.table}: ${wood.name}`),
  note: "continuous over its fixings, with the hand’s pull half as much again",
  compute: ({ J, E, D, t }) => (J * 12) / (E * D * t ** 3),
});

const DEFLECTION_LIMIT = figureRule({
  id: "board.deflection-limit",
  label: "Bend that is allowed",
  symbol: "v_max",
  unit: "mm",
  formula: "min(s / q, m)",
  inputs: {
    s: [
      "mm",
      "widest stretch between two fixings, or beyond the last",
      "board/bracketSpacingMm",
      "board/bracketEndMm",
      "figure:measure.board-length",
      "figure:board.fixing-load",
    ],
    q: ["ratio", "share of it"],
    m: ["mm", "and never more than"],
  },
  restsOn: PLACED,
  cite: BEND_SHARE.cite,
  compute: ({ s, q, m }) => Math.min(s / q, m),
});

const SCREW_PULL = figureRule({
  id: "board.screw-pull",
  label: "Pull on the upper screw of the hardest worked bracket",
  symbol: "T",
  unit: "N",
  formula: "Q·D·z / (y^2 + z^2)",
  inputs: {
    Q: [
      "N",
      "load on that bracket, with the pull by which strength is judged",
      "figure:board.hand-load",
      "board/bracketSpacingMm",
      "board/bracketEndMm",
      "shade/mount",
      "figure:board.load",
    ],
    D: ["mm", "out from the wall, as if all hung at the front edge", "board/section"],
    z: ["mm", "upper screw above the lower end of the leg", "board/bracketLegMm"],
    y: ["mm", "lower screw above it"],
  },
  restsOn: PLACED,
  cite: cite("geometry", "a stiff bracket turns on the lower end of its leg"),
  compute: ({ Q, D, z, y }) => (Q * D * z) / (y ** 2 + z ** 2),
});

const SCREW_WITHDRAWAL = figureRuleOf<{ wood: WoodSpecies; gauge: string }>()({
  id: "board.screw-withdrawal",
  label: "One screw pulled out of the wood, mean ultimate",
  symbol: "p",
  unit: "N",
  formula: "108.25·G^2·d·l",
  inputs: ({ wood, gauge }) => ({
    G: ["ratio", `specific gravity of ${wood.name.toLowerCase()}`, "board/wallWood", "board/substrate"],
    d: ["mm", `shank of a No. ${gauge} screw`, "board/screwGauge"],
    l: ["mm", "thread in the wood", "board/screwGauge"],
  }),
  cite: cite("wood-handbook", "eq. 8-10, p. 8-10: ultimate, side grain"),
  compute: ({ G, d, l }) => screwWithdrawalN({ gravity: G, diameterMm: d, depthMm: l }),
});

const SHARE_CITE = cite("wood-handbook", "eq. 8-10 and 8-13; both shares added");
const SHARE_NOTE = "mean strengths of clear dry wood; local codes and licensed practice prevail";
const PULLED_OUT = {
  T: [
    "N",
    "pull away from the wood",
    "board/substrate",
    "figure:board.screw-pull",
    "figure:board.hand-load",
    "figure:board.load",
  ],
  k: ["ratio", "ultimate over allowed"],
  p: ["N", "ultimate withdrawal", "figure:board.screw-withdrawal"],
} as const;
const SHARE_BEHIND = ["shade/mount", "board/bracketSpacingMm", "board/bracketEndMm", ...PLACED];

const SCREW_SHARE = figureRule({
  id: "board.screw-share",
  label: "Share of what one screw may be put to",
  symbol: "u",
  unit: "ratio",
  formula: "T·k / p + V / c",
  inputs: {
    ...PULLED_OUT,
    V: ["N", "load along the wood", "figure:board.hand-load", "figure:board.load"],
    c: [
      "N",
      "lateral load at which the screw begins to slip, table 8-4",
      "board/wallWood",
      "board/screwGauge",
    ],
  },
  restsOn: SHARE_BEHIND,
  cite: SHARE_CITE,
  note: SHARE_NOTE,
  compute: ({ T, k, p, V, c }) => (T * k) / p + V / c,
});

/** For a wood whose lateral figure is not in the table. */
const SCREW_SHARE_PULLED = figureRule({
  id: "board.screw-share",
  label: "Share of what one screw may be put to",
  symbol: "u",
  unit: "ratio",
  formula: "T·k / p",
  inputs: PULLED_OUT,
  restsOn: SHARE_BEHIND,
  cite: SHARE_CITE,
  note: SHARE_NOTE,
  compute: ({ T, k, p }) => (T * k) / p,
});

/** What the hardest worked screw takes, with a tug and with the pull by which strength is judged. */
export interface ScrewLoads {
  tugged: ScrewLoad;
  worst: ScrewLoad;
  hand: BoardStrength["hand"];
}

/** Somebody’s hand at one of the rigs under the board: all that then pulls it down, and the pull of that hand, N. */
export interface HandAtWork {
  loads: BoardLoads;
  pullN: number;
}

/** What one hand does to the board, in a tug and with the pull by which strength is judged. */
interface Tried {
  tugging: BoardLoads;
  hanging: BoardLoads;
  /** Absent where a single fixing holds the board: it is no beam. */
  beams?: { tugged: SolvedBeam; hung: SolvedBeam };
}

/**
 * Bend, stress and screws of the board, each by the worst of the hands that can be at it; of one that lies on a single
 * fixing, which is no beam, its screws alone.
 */
export function boardStrength(
  shade: BoardShade,
  board: MountedBoard,
  hands: readonly HandAtWork[],
  gripMm: number,
): Worked<{ screws: ScrewLoads; strength?: BoardStrength }> {
  const handLoad = HAND_LOAD.figure(
    {
      k: TUG.value,
      F: Math.max(...hands.map(({ pullN }) => pullN)),
      P: CORD_PULL.value,
      m: CHILD.value,
      g: GRAVITY,
    },
    { rail: hands.length > 1 },
  );
  const handN = handLoad.value;
  const hand = handN > CHILD.value * GRAVITY ? "tug" : "child";
  const wood: WoodSpecies = WOOD_SPECIES[shade.making.board.wood];
  const section = rectangle(board.depthMm, board.thicknessMm);
  const tried = hands.map((one) => tryHand(one, { handN, hand }, wood.elasticityMPa * section.inertiaMm4));
  const worst = (of: (one: Tried) => number) => tried.reduce((a, b) => (of(b) > of(a) ? b : a));
  const tuggedN = ({ tugging, beams }: Tried) => heaviestN(tugging, beams?.tugged);
  const hungN = ({ hanging, beams }: Tried) => heaviestN(hanging, beams?.hung);
  const tugged = screwLoad(shade, board, tuggedN(worst(tuggedN)));
  const onScrew = onOneScrew(shade, board, hungN(worst(hungN)));
  const screws: ScrewLoads = { tugged, worst: onScrew.values, hand };
  const bending = worst(({ beams }) => Math.abs(beams?.tugged.largestDeflection.value ?? 0));
  const straining = worst(({ beams }) => Math.abs(beams?.hung.largestMoment.value ?? 0));
  const { beams: bent } = bending;
  const { beams: strained } = straining;
  const { beams: onFixings } = worst(hungN);
  if (bent === undefined || strained === undefined || onFixings === undefined) {
    return { values: { screws }, workings: [handLoad, ...onScrew.workings] };
  }
  const share = screwShare(shade, onScrew.values, gripMm);
  const [deflection, limit] = bend(bending.tugging, wood, board, bent.tugged);
  const strength: BoardStrength = {
    handN,
    hand,
    reactionsN: onFixings.hung.reactionsN,
    deflectionMm: deflection.value,
    deflectionAtMm: bent.tugged.largestDeflection.atMm,
    deflectionLimitMm: limit.value,
    ...stress(strained.hung, wood, section),
    ...onScrew.values,
    tugged,
    ...(share.values === undefined ? {} : { screwShare: share.values }),
  };
  return {
    values: { screws, strength },
    workings: [handLoad, ...onScrew.workings, ...share.workings, deflection, limit],
  };
}

function tryHand(
  { loads, pullN }: HandAtWork,
  { handN, hand }: Pick<BoardStrength, "handN" | "hand">,
  stiffnessNmm2: number,
): Tried {
  const tugging = withHand(loads, TUG.value * pullN);
  const hanging =
    hand === "child" && endsOnCleat(loads) ? withSomeoneOnHem(loads, handN) : withHand(loads, handN);
  if (loads.supportsMm.length < 2 || loads.toMm <= loads.fromMm) return { tugging, hanging };
  const solved = (one: BoardLoads) => solveBeam(beamOf(one, stiffnessNmm2));
  return { tugging, hanging, beams: { tugged: solved(tugging), hung: solved(hanging) } };
}

/** On the heaviest fixing: of a beam its largest reaction, of what is no beam all of it, N. */
function heaviestN(loads: BoardLoads, solved: SolvedBeam | undefined): number {
  return solved?.reactionsN.reduce((most, one) => Math.max(most, Math.abs(one)), 0) ?? totalN(loads);
}

function totalN({ evenN, points }: BoardLoads): number {
  return points.reduce((sum, { loadN }) => sum + loadN, evenN);
}

/** Loads beyond an end of an impossible board are left out: there is nothing for them to hang on. */
function beamOf({ fromMm, toMm, evenN, points, supportsMm }: BoardLoads, stiffnessNmm2: number): LoadedBeam {
  return {
    supportsMm,
    fromMm,
    toMm,
    spread: [{ fromMm, toMm, loadNPerMm: evenN / (toMm - fromMm) }],
    points: points.filter(({ atMm }) => atMm >= fromMm && atMm <= toMm),
    stiffnessNmm2,
  };
}

function bend(
  loads: BoardLoads,
  wood: WoodSpecies,
  { depthMm, thicknessMm }: Pick<MountedBoard, "depthMm" | "thicknessMm">,
  { largestDeflection }: SolvedBeam,
): [deflection: Figure, limit: Figure] {
  const places = [loads.fromMm, ...loads.supportsMm, loads.toMm];
  const bayMm = Math.max(...places.slice(1).map((place, i) => place - (places[i] ?? place)));
  const bend1 = (Math.abs(largestDeflection.value) * wood.elasticityMPa * depthMm * thicknessMm ** 3) / 12;
  return [
    DEFLECTION.figure({ J: bend1, E: wood.elasticityMPa, D: depthMm, t: thicknessMm }, { wood }),
    DEFLECTION_LIMIT.figure({ s: bayMm, q: BEND_SHARE.value, m: MOST_BEND.value }),
  ];
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

/** Heights of both screws of a bracket above the lower end of its leg, on which it turns, mm. */
function screwHeightsMm({ making }: BoardShade): [lower: number, upper: number] {
  const legMm = Math.max(2 * SCREW_FROM_END_MM + 1, making.board.bracketLegMm);
  return [SCREW_FROM_END_MM, legMm - SCREW_FROM_END_MM];
}

type Fixed = Pick<MountedBoard, "fixing" | "depthMm">;

/** A screw up through the board takes its load straight; a bracket pries at the upper one of its two. */
function screwLoad(shade: BoardShade, { fixing, depthMm }: Fixed, loadN: number): ScrewLoad {
  if (fixing === "screwed-up") return { pullN: loadN, shearN: 0 };
  const pulls = screwPulls({ loadN, armMm: depthMm, screwsMm: screwHeightsMm(shade) });
  return pulls[1] ?? { pullN: loadN, shearN: 0 };
}

function onOneScrew(shade: BoardShade, board: Fixed, loadN: number): Worked<ScrewLoad> {
  const values = screwLoad(shade, board, loadN);
  if (board.fixing === "screwed-up") return { values, workings: [] };
  const [lowerMm, upperMm] = screwHeightsMm(shade);
  const pull = SCREW_PULL.figure({ Q: loadN, D: board.depthMm, z: upperMm, y: lowerMm });
  return { values: { ...values, pullN: pull.value }, workings: [pull] };
}

/** Withdrawal and shear together as shares of what each may be, for a screw into wood. */
function screwShare(
  shade: BoardShade,
  { pullN, shearN }: ScrewLoad,
  gripMm: number,
): Worked<number | undefined> {
  const { substrate, wallWood, screwGauge } = shade.making.board;
  if (substrate !== "timber") return { values: undefined, workings: [] };
  const wood: WoodSpecies = WOOD_SPECIES[wallWood];
  const diameterMm = SCREW_SHANK_MM[screwGauge];
  const withdrawal = SCREW_WITHDRAWAL.figure(
    { G: wood.gravity, d: diameterMm, l: gripMm },
    { wood, gauge: screwGauge },
  );
  const lateralN = screwLateralN(wood.wood, wood.gravity, diameterMm);
  const pulled = { T: pullN, k: WOOD_FACTOR.value, p: withdrawal.value };
  const share =
    lateralN === undefined
      ? SCREW_SHARE_PULLED.figure(pulled)
      : SCREW_SHARE.figure({ ...pulled, V: shearN, c: lateralN });
  return { values: share.value, workings: [withdrawal, share] };
}
