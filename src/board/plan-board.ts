import {
  type Figure,
  type FigureInput,
  figureRule,
  figureRuleOf,
  lazy,
  stagedWhole,
  type WholeResult,
} from "../figures/index.ts";
import { type BoardPlan, type Form, fromBoardEndMm, type MountedBoard } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { BoardInput, BoardShade } from "./board-input.ts";
import { boardLoads, fixingLoads, type HandAt } from "./board-loads.ts";
import { boardStrength, type HandAtWork } from "./board-strength.ts";
import { type Fixings, PLACED, planFixings } from "./fixings.ts";
import { clearScrewShare, judgeCordWays } from "./judge-cord-ways.ts";
import { judgeFixings } from "./judge-fixings.ts";
import { judgeParts } from "./judge-parts.ts";
import { judgeRecess } from "./judge-recess.ts";
import { judgeBoardStrength } from "./judge-strength.ts";
import { recessDepths } from "./recess.ts";
import { gripMm, wallScrews } from "./wall-screws.ts";

const WOOD_DENSITY = sourced(
  450,
  "kg/m3",
  cite("wood-handbook", "ch. 5, table 5-3a: common softwoods 350 to 510 at 12 % moisture"),
);

const BOARD_MASS = figureRuleOf<{ weighed: boolean }>()({
  id: "board.mass",
  label: "Board: mass",
  symbol: "B",
  unit: "kg",
  formula: "l·d·t·ρ / 10^9",
  inputs: {
    l: ["mm", "length", "figure:measure.board-length", "opening/head"],
    d: ["mm", "depth", "board/section"],
    t: ["mm", "thickness", "board/section"],
    ρ: ["kg/m3", "density", "board/section"],
  },
  cite: ({ weighed }) => (weighed ? cite("maker", "density of the board") : WOOD_DENSITY.cite),
  compute: (v) => (v.l * v.d * v.t * v.ρ) / 1e9,
});

const SCREW_LINE = figureRule({
  id: "board.screw-line",
  label: "Screws from the wall edge",
  symbol: "z",
  unit: "mm",
  formula: "max(0, d − D) / 4",
  inputs: {
    d: ["mm", "depth of the board", "board/section", "shade/mount", "lift/kind"],
    D: ["mm", "tube, under the middle of the board", "lift/tube"],
  },
  cite: cite("geometry", "midway between the wall edge and the tube"),
  compute: ({ d, D }) => Math.max(0, d - D) / 4,
});

const SCREW_LINE_BESIDE = figureRule({
  id: "board.screw-line",
  label: "Screws from the wall edge",
  symbol: "z",
  unit: "mm",
  formula: "k·d",
  inputs: {
    k: ["ratio", "share of the depth at which no cord passes them", ...PLACED],
    d: ["mm", "depth of the board", "board/section", "shade/mount", "lift/kind"],
  },
  cite: cite("geometry", "clear of the cords that run along the board"),
  compute: ({ k, d }) => k * d,
});

const BAR_LENGTH = figureRule({
  id: "board.bar-length",
  label: "Weight bar: length",
  symbol: "b",
  unit: "mm",
  formula: "max(0, W − s)",
  inputs: {
    W: [
      "mm",
      "width of hem that it stiffens",
      "figure:measure.finished-width",
      "figure:shape.*",
      "pleat/bar",
    ],
    s: ["mm", "bar shorter than the shade", "board/barShorterMm"],
  },
  cite: cite("from-memory", "W − 1/2 in"),
  compute: ({ W, s }) => Math.max(0, W - s),
});

const LOAD = figureRuleOf<{ rail: boolean }>()({
  id: "board.load",
  label: "Load on all fixings together",
  symbol: "Q",
  unit: "N",
  formula: ({ rail }) => (rail ? "g·(S + B + K + R) + F" : "g·(S + B + K) + F"),
  inputs: ({ rail }): Record<string, FigureInput<{ rail: boolean }>> => ({
    g: ["ratio", "standard gravity, m/s²"],
    S: ["kg", "shade", "lift/ring", "figure:cloth.*-mass", "figure:shape.*"],
    B: ["kg", "board", "figure:board.mass"],
    K: ["kg", "cloth that covers the board", "figure:cloth.on-board-mass"],
    ...(rail ? { R: ["kg", "top rail", "figure:rig.rail-mass"] } : {}),
    F: ["N", "pull of the hand", "figure:lift.*", ...(rail ? ["figure:rig.rail-pull"] : [])],
  }),
  restsOn: ["fold/topDropMm"],
  cite: cite("arithmetic", "weight of shade and board, and the hand’s pull"),
  compute: ({ g = 0, S = 0, B = 0, K = 0, R = 0, F = 0 }) => g * (S + B + K + R) + F,
});

const FIXING_LOAD = figureRuleOf<{ fixings: number }>()({
  id: "board.fixing-load",
  label: "Load on the heaviest fixing",
  symbol: "q",
  unit: "N",
  formula: ({ fixings }) => `max(${Array.from({ length: fixings }, (_, i) => `q${i + 1}`).join(", ")})`,
  inputs: ({ fixings }): Record<string, FigureInput<{ fixings: number }>> =>
    Object.fromEntries(
      Array.from({ length: fixings }, (_, i) => [
        `q${i + 1}`,
        ["N", `load on fixing ${i + 1}, by the lever rule`],
      ]),
    ),
  restsOn: ["board/bracketEndMm", "board/bracketSpacingMm", "shade/mount", ...PLACED, "figure:board.load"],
  cite: cite("beam-theory", "each stretch between two fixings taken as a plank of its own"),
  note: "with the shade raised and a hand on the cords; a tug asks for more",
  compute: (loadsN) => Math.max(...Object.values(loadsN)),
});

/** The board of one shade: size, eyes, fixings, covering, bar, and what its fixings must carry. */
export function planBoard(input: BoardInput): WholeResult<MountedBoard, BoardPlan> {
  const { shade, size, form, mass, lift } = input;
  const { depthMm, thicknessMm } = shade.board;
  const leftMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const fixed = planFixings(input, leftMm);
  const fixings = fixed.values;
  const wall = wallScrews(shade, fixings.kind, fixings.brackets.length);
  const { tooLong, ...screws } = wall.values;
  const on = { size, board: { leftMm }, lift };
  const alongMm = fromBoardEndMm(on, leftMm + size.boardLengthMm);
  const ofBoard = boardMass(shade, alongMm);
  const line = screwLine(input, fixings);
  const bar = barLength(shade, form);
  const { topRail } = lift;
  const load = LOAD.figure(
    {
      g: GRAVITY,
      S: mass.totalKg,
      B: ofBoard.value,
      K: mass.onBoardKg,
      ...(topRail === undefined ? {} : { R: topRail.massKg }),
      F: Math.max(lift.pullN, topRail?.pullN ?? 0),
    },
    { rail: topRail !== undefined },
  );
  const board: MountedBoard = {
    sectionId: shade.board.id,
    sectionName: shade.board.name,
    lengthMm: size.boardLengthMm,
    cutMm: size.boardOnSlopeMm ?? size.boardLengthMm,
    depthMm,
    thicknessMm,
    leftMm,
    eyes: lift.eyes,
    fixing: fixings.kind,
    brackets: fixings.brackets,
    ...(line === undefined ? {} : { screwsZMm: line.value }),
    screws,
    ...(bar === undefined ? {} : { barLengthMm: bar.value, barName: shade.bar.name }),
    loadN: load.value,
  };
  const boardKg = ofBoard.value + mass.onBoardKg;
  const hands = lazy((): HandAtWork[] => {
    const at = (hand: HandAt) => boardLoads({ size, board, lift }, boardKg, mass, hand);
    const raising = { loads: at("lift"), pullN: lift.pullN };
    return topRail === undefined ? [raising] : [raising, { loads: at("rail"), pullN: topRail.pullN }];
  });
  const worst = lazy(() =>
    hands()
      .map((hand) => worstFixing(fixingLoads(hand.loads)))
      .reduce((a, b) => (b.value > a.value ? b : a)),
  );
  const strength = lazy(() => boardStrength(shade, board, hands(), gripMm(shade).value));
  const recess = lazy(() => recessDepths(input));
  const whole: BoardPlan = {
    ...board,
    get stackDepthMm() {
      return recess().values.stackMm;
    },
    get strength() {
      return strength().values.strength;
    },
  };
  return stagedWhole(board, whole, {
    findings: () => [
      ...judgeParts(input, board),
      ...judgeRecess(input, recess().values),
      ...judgeFixings(input, board, fixings, {
        worstN: worst().value,
        tooLong,
        screws: strength().values.screws,
      }),
      ...judgeCordWays(input, board, fixings.widthMm),
      ...judgeBoardStrength(shade, whole),
    ],
    workings: () => [
      ...fixed.workings,
      ...wall.workings,
      ofBoard,
      ...(line === undefined ? [] : [line]),
      ...(bar === undefined ? [] : [bar]),
      load,
      worst(),
      ...strength().workings,
      ...recess().workings,
    ],
  });
}

/**
 * A tube runs under the middle of the board: screws from below go in behind it, midway to the wall edge. Elsewhere they
 * go in midway between front and back, or beside the cords where those pass there.
 */
function screwLine(input: BoardInput, { kind, brackets }: Fixings): Figure | undefined {
  const { shade, lift } = input;
  if (kind !== "screwed-up") return undefined;
  if (lift.takeUp === "tube") return SCREW_LINE.figure({ d: shade.board.depthMm, D: lift.tube.diameterMm });
  const share = clearScrewShare(input, brackets);
  return share === 1 / 2 ? undefined : SCREW_LINE_BESIDE.figure({ k: share, d: shade.board.depthMm });
}

function boardMass({ board }: BoardShade, lengthMm: number): Figure {
  const { depthMm, thicknessMm, densityKgM3 } = board;
  return BOARD_MASS.figure(
    { l: lengthMm, d: depthMm, t: thicknessMm, ρ: densityKgM3 ?? WOOD_DENSITY.value },
    { weighed: densityKgM3 !== undefined },
  );
}

function barLength({ making }: BoardShade, { bar }: Form): Figure | undefined {
  if (bar === undefined) return undefined;
  const { barShorterMm } = making.board;
  return BAR_LENGTH.figure({ W: bar.toMm - bar.fromMm + barShorterMm, s: barShorterMm });
}

function worstFixing(loadsN: readonly number[]): Figure {
  const given: Record<string, number> = {};
  loadsN.forEach((loadN, i) => {
    given[`q${i + 1}`] = loadN;
  });
  return FIXING_LOAD.figure(given, { fixings: loadsN.length });
}
