import type { Finding, WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { BoardPlan, Form } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { BoardInput } from "./board-input.ts";
import { boardLoads, fixingLoads } from "./board-loads.ts";
import { boardStrength } from "./board-strength.ts";
import { planFixings } from "./fixings.ts";
import { judgeFixings } from "./judge-fixings.ts";
import { judgeParts } from "./judge-parts.ts";
import { judgeRecess } from "./judge-recess.ts";
import { judgeStrength } from "./judge-strength.ts";
import { gripMm, wallScrews } from "./wall-screws.ts";

const WOOD_DENSITY = sourced(
  450,
  "kg/m3",
  cite("wood-handbook", "ch. 5, table 5-3a: common softwoods 350 to 510 at 12 % moisture"),
);

/** The board of one shade: size, eyes, fixings, covering, bar, and what its fixings must carry. */
export function planBoard(input: BoardInput, book: WorkingBook): { board: BoardPlan; findings: Finding[] } {
  const { resolved, size, form, mass, lift } = input;
  const { depthMm, thicknessMm } = resolved.board;
  const leftMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const fixings = planFixings(input, leftMm, book);
  const { tooLong, ...screws } = wallScrews(resolved, fixings.kind, fixings.brackets.length, book);
  const boardKg = boardMass(resolved, size.boardLengthMm, book);
  const board: BoardPlan = {
    sectionId: resolved.board.id,
    sectionName: resolved.board.name,
    lengthMm: size.boardLengthMm,
    cutMm: size.boardOnSlopeMm ?? size.boardLengthMm,
    depthMm,
    thicknessMm,
    leftMm,
    eyes: lift.eyes,
    fixing: fixings.kind,
    brackets: fixings.brackets,
    ...screwLine(input, fixings.kind, book),
    screws,
    ...barOf(resolved, form, book),
    loadN: book.figure("board.load", {
      label: "Load on all fixings together",
      symbol: "Q",
      unit: "N",
      formula: "g·(S + B) + F",
      given: {
        g: [GRAVITY, "ratio", "standard gravity, m/s²"],
        S: [mass.totalKg, "kg", "shade"],
        B: [boardKg, "kg", "board"],
        F: [lift.pullN, "N", "pull of the hand"],
      },
      cite: cite("arithmetic", "weight of shade and board, and the hand’s pull"),
      compute: ({ g, S, B, F }) => g * (S + B) + F,
    }),
  };
  const loads = boardLoads(board, boardKg, mass, lift);
  const worstN = worstFixing(fixingLoads(loads), book);
  const strength = boardStrength(resolved, board, loads, gripMm(resolved).value, book);
  if (strength !== undefined) board.strength = strength;
  const findings = [
    ...judgeParts(input, board),
    ...judgeRecess(input, book),
    ...judgeFixings(input, board, fixings, { worstN, tooLong }),
    ...judgeStrength(resolved, board),
  ];
  return { board, findings };
}

/** A tube runs under the middle of the board: screws from below go in behind it, midway to the wall edge. */
function screwLine(
  { resolved, lift }: BoardInput,
  kind: BoardPlan["fixing"],
  book: WorkingBook,
): Pick<BoardPlan, "screwsZMm"> {
  if (kind !== "screwed-up" || lift.kind === "cord-lock") return {};
  return {
    screwsZMm: book.figure("board.screw-line", {
      label: "Screws from the wall edge",
      symbol: "z",
      unit: "mm",
      formula: "max(0, d − D) / 4",
      given: {
        d: [resolved.board.depthMm, "mm", "depth of the board"],
        D: [lift.tube.diameterMm, "mm", "tube, under the middle of the board"],
      },
      cite: cite("geometry", "midway between the wall edge and the tube"),
      compute: ({ d, D }) => Math.max(0, d - D) / 4,
    }),
  };
}

function boardMass(resolved: ResolvedShade, lengthMm: number, book: WorkingBook): number {
  const { depthMm, thicknessMm, densityKgM3 } = resolved.board;
  return book.figure("board.mass", {
    label: "Board: mass",
    symbol: "B",
    unit: "kg",
    formula: "l·d·t·ρ / 10^9",
    given: {
      l: [lengthMm, "mm", "length"],
      d: [depthMm, "mm", "depth"],
      t: [thicknessMm, "mm", "thickness"],
      ρ: [densityKgM3 ?? WOOD_DENSITY.value, "kg/m3", "density"],
    },
    cite: densityKgM3 === undefined ? WOOD_DENSITY.cite : cite("maker", "density of the board"),
    compute: (v) => (v.l * v.d * v.t * v.ρ) / 1e9,
  });
}

function barOf(
  resolved: ResolvedShade,
  { bar }: Form,
  book: WorkingBook,
): Pick<BoardPlan, "barLengthMm" | "barName"> {
  if (bar === undefined) return {};
  const { barShorterMm } = resolved.making.board;
  const barLengthMm = book.figure("board.bar-length", {
    label: "Weight bar: length",
    symbol: "b",
    unit: "mm",
    formula: "max(0, W − s)",
    given: {
      W: [bar.toMm - bar.fromMm + barShorterMm, "mm", "width of hem that it stiffens"],
      s: [resolved.making.board.barShorterMm, "mm", "bar shorter than the shade"],
    },
    cite: cite("from-memory", "W − 1/2 in"),
    compute: ({ W, s }) => Math.max(0, W - s),
  });
  return { barLengthMm, barName: resolved.bar.name };
}

function worstFixing(loadsN: number[], book: WorkingBook): number {
  const given: Record<string, readonly [number, "N", string]> = {};
  loadsN.forEach((loadN, i) => {
    given[`q${i + 1}`] = [loadN, "N", `load on fixing ${i + 1}, by the lever rule`];
  });
  return book.figure("board.fixing-load", {
    label: "Load on the heaviest fixing",
    symbol: "q",
    unit: "N",
    formula: `max(${Object.keys(given).join(", ")})`,
    given,
    cite: cite("beam-theory", "each stretch between two fixings taken as a plank of its own"),
    note: "with the shade raised and a hand on the cords; a tug asks for more",
    compute: (values) => Math.max(...Object.values(values)),
  });
}
