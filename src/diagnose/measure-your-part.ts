import {
  type BenchTest,
  diameterFromTurns,
  frictionOfPair,
  leastHoldN,
  stretchAt10N,
  type TestReadings,
} from "../job/index.ts";
import { type Cite, cite } from "../sources/index.ts";
import { fineText, forceText, trimmed, type UnitChoice } from "../units/index.ts";

/** One reading of a test: its field in the document, and what is read. */
export interface TestReading {
  field: string;
  label: string;
  /** `force` is read off a luggage scale. */
  unit: "mm" | "force" | "count";
  /** Read so many times, one after the other. */
  times?: number;
}

/** How to measure one property of a part at the bench, with what lies about in a sewing room. */
export interface PartTest {
  id: BenchTest;
  title: string;
  /** The kind of part with which its result is kept. */
  of: "locks" | "cords" | "eyes";
  steps: readonly string[];
  reads: readonly TestReading[];
  /** What the readings come to, over the letters of `where`. */
  formula: string;
  where: string;
  cite: Cite;
  /** What to enter, and where. */
  enter: string;
}

export const PART_TESTS: readonly PartTest[] = [
  {
    id: "gap",
    title: "Gap at the end of a lock’s roller",
    of: "locks",
    steps: [
      "Push the roller to one side with a thumb.",
      "Try the leaves of a feeler gauge, or slips of card that you have measured, between its other end and the housing.",
      "The thickest that goes in is the gap.",
    ],
    reads: [{ field: "gapMm", label: "Thickest leaf that goes in", unit: "mm" }],
    formula: "g",
    where: "g the thickest leaf; a cord no thicker than g keeps to the inner slots",
    cite: cite("lock-instructions", "thin cord wedges between roller and housing"),
    enter: "Gap at the roller’s end. A cord no thicker than it can slip in and jam.",
  },
  {
    id: "hold",
    title: "Does the lock hold?",
    of: "locks",
    steps: [
      "Screw the lock to a scrap of board and clamp the board to a table, away from your feet.",
      "Thread one cord, lock it, and hook a luggage scale into its lower end. Keep your face out of line with the cord.",
      "Pull slowly until it slips, and read the scale; do it ten times with the cord moved on each time.",
    ],
    reads: [
      { field: "readingsN", label: "It slipped at", unit: "force", times: 10 },
      { field: "cordDiameterMm", label: "Diameter of the cord", unit: "mm" },
    ],
    formula: "min(F) ≥ 2·T",
    where: "F the readings, T what hangs on the heaviest cord of the shade",
    cite: cite("common-practice", "one cord holds twice what hangs on it"),
    enter: "All readings: the least must be twice what hangs on the heaviest cord of a shade.",
  },
  {
    id: "turns",
    title: "Diameter of a cord",
    of: "cords",
    steps: [
      "Wind twenty turns round a pencil, side by side, each touching the next, none on top of another.",
      "Measure the width of all turns together with a steel rule.",
      "Divide by twenty.",
    ],
    reads: [
      { field: "turns", label: "Turns", unit: "count" },
      { field: "widthMm", label: "Width of all turns", unit: "mm" },
    ],
    formula: "d = w / n",
    where: "w the width of all turns, n their number",
    cite: cite("common-practice", "turns side by side round a pencil"),
    enter: "Diameter of the cord.",
  },
  {
    id: "stretch",
    title: "Stretch of a cord",
    of: "cords",
    steps: [
      "Hang two metres of cord from a nail, a loop at its lower end, and mark its length under its own weight.",
      "Hang one kilogram on it for a minute (a litre of water and its bottle come near), and mark again.",
      "Divide what it grew by by two metres.",
    ],
    reads: [
      { field: "lengthMm", label: "Length without the weight", unit: "mm" },
      { field: "grewMm", label: "It grew by", unit: "mm" },
      { field: "pullN", label: "Weight hung on it", unit: "force" },
    ],
    formula: "s = e / L · 10 N / P",
    where: "e what it grew by, L its length, P the weight hung on it",
    cite: cite("common-practice", "growth under a kilogram, in proportion to the pull"),
    enter: "Stretch under 10 N, as a share.",
  },
  {
    id: "friction",
    title: "Friction of a cord on an eye",
    of: "eyes",
    steps: [
      "Lead the cord over the eye with a quarter turn, a known weight on one end, the luggage scale on the other.",
      "Pull slowly and evenly: read what just raises the weight.",
      "Let it down slowly: read what just lets it sink.",
    ],
    reads: [
      { field: "raisesN", label: "Just raises the weight", unit: "force" },
      { field: "lowersN", label: "Just lets it sink", unit: "force" },
    ],
    formula: "μ = ln(R / S) / π",
    where: "R what raises the weight, S what lets it sink, over a quarter turn",
    cite: cite("capstan"),
    enter: "Friction of cord on it, from the two readings; for a pulley the share of the pull.",
  },
];

type ResultText = { [T in BenchTest]: (readings: TestReadings<T>, units: UnitChoice) => string | undefined };

const RESULT_TEXT: ResultText = {
  gap: ({ gapMm }) => `gap ${fineText(gapMm)}`,
  hold: (readings, units) => `the least is ${forceText(leastHoldN(readings), units)}`,
  turns: (readings) => {
    const mm = diameterFromTurns(readings);
    return mm === undefined ? undefined : `diameter ${fineText(mm)}`;
  },
  stretch: (readings) => {
    const stretch = stretchAt10N(readings);
    return stretch === undefined ? undefined : `stretch ${trimmed(100 * stretch, 2)} % under 10 N`;
  },
  friction: (readings) => {
    const found = frictionOfPair(readings);
    return (
      found &&
      `friction ${trimmed(found.friction, 2)}; as a pulley it passes on ${trimmed(100 * found.pulleyShare, 0)} % of the pull`
    );
  },
};

/** What the readings of a test come to, in words; undefined where they come to no such part. */
export function testResultText<T extends BenchTest>(
  test: T,
  readings: TestReadings<T>,
  units: UnitChoice,
): string | undefined {
  return RESULT_TEXT[test](readings, units);
}
