import type { BoltPlan, Cut, Leaf, Placement } from "../../cutting/index.ts";
import { fineText, lengthText, rulerText, type UnitChoice } from "../../units/index.ts";
import { type CheckSum, checkSums } from "./check-sums.ts";
import { type ClothCutting, pieceNames } from "./cutting-plan.ts";
import { type FollowedCut, followCuts } from "./follow-cuts.ts";

/** One cut in words, and a measure by which to check it; two that are made at one go. */
export interface TicketLine {
  /** Of the last of them. */
  number: number;
  /** `4`, or `4, 5` where two lengths lie on each other. */
  numbers: string;
  /** Places on the bolt of the first of them. */
  cut: Cut;
  /** `Across the bolt, 78 3/4 in from cut 4`; edges and ends are those of the drawing. */
  how: string;
  /** What comes free. */
  frees: string;
  /** `the bolt measures 88 in now`, `41 1/4 + 6 1/4 = 47 1/2 in`. */
  check: string;
  /** How near to its line it is to be: `1 mm`. */
  within: string;
}

/**
 * The cutting ticket of one bolt: its cuts in their order, what each sets free, and check sums.
 *
 * @throws where the plan names a bolt that is not in the problem: a bug
 */
export function cuttingTicket(cutting: ClothCutting, bolt: BoltPlan, units: UnitChoice): TicketLine[] {
  const of = cutting.problem.bolts.find(({ id }) => id === bolt.boltId);
  if (of === undefined) throw new Error(`invalid bolt: ${bolt.boltId}`);
  const names = pieceNames(cutting);
  const { table = {} } = cutting.problem;
  // Sheets that lie on those of the cut before.
  const upper = new Set(bolt.cuts.flatMap(({ withCut, sheet }) => (withCut === undefined ? [] : [sheet])));
  const tolerances = tolerancesOf(cutting, bolt, units);
  const lines: TicketLine[] = [];
  const cuts = followCuts(of, bolt);
  const leftHanded = table.leftHanded === true;
  const ends = new Map(
    cuts.filter(({ wholeWidth }) => wholeWidth).map(({ cut }) => [cut.second, cut.number]),
  );
  const sums = checkSums(cuts, leftHanded, units.ruler);
  const ways = { units, leftHanded, sheetName: sheetNames(cuts, leftHanded), ends, sums };
  for (const followed of cuts) {
    const { cut } = followed;
    const frees = freesText(names, followed);
    const last = lines.at(-1);
    if (cut.withCut !== undefined && last) {
      lines[lines.length - 1] = {
        ...last,
        number: cut.number,
        numbers: `${last.numbers}, ${cut.number}`,
        how: `${last.how}, through both lengths`,
        frees: [last.frees, frees].filter((text) => text !== "").join("; "),
      };
      continue;
    }
    const onto = followed.wholeWidth && upper.has(cut.first) ? "; lay it on the length before" : "";
    lines.push({
      number: cut.number,
      numbers: String(cut.number),
      cut,
      how: `${howText(followed, ways)}${onto}`,
      frees,
      check: checkText(followed, ways),
      within: tolerances(followed),
    });
  }
  return lines;
}

/** How a ticket speaks: its units, the hand that cuts, and what each sheet is called. */
interface Ways {
  units: UnitChoice;
  leftHanded: boolean;
  sheetName: (sheet: number) => string;
  /** The cut at which what is left of the bolt ends, by its sheet. */
  ends: ReadonlyMap<number, number>;
  /** By the number of the cut. */
  sums: ReadonlyMap<number, CheckSum>;
}

function howText(followed: FollowedCut, { units, leftHanded, sheetName, ends, sums }: Ways): string {
  const { cut, wholeWidth } = followed;
  const mark = lengthText(sums.get(cut.number)?.markMm ?? followed.markMm, units);
  if (wholeWidth) {
    const last = ends.get(cut.sheet);
    return `Across the bolt, ${mark} from ${last === undefined ? "its end" : `cut ${last}`}`;
  }
  return cut.direction === "across"
    ? `Across ${sheetName(cut.sheet)}, ${mark} from its ${leftHanded ? "right" : "left"} end`
    : `Along ${sheetName(cut.sheet)}, ${mark} from its lower edge`;
}

/**
 * What each sheet is called on the table, where several lie by then: `the length of cut 2`, `the piece of cut 5`, and
 * `the upper piece of cut 5` where both of them are cut again.
 */
function sheetNames(cuts: readonly FollowedCut[], leftHanded: boolean): (sheet: number) => string {
  const cutAgain = new Set(cuts.map(({ cut }) => cut.sheet));
  const names = new Map<number, string>();
  for (const { cut, wholeWidth } of cuts) {
    const { number, direction, first, second } = cut;
    if (wholeWidth) {
      names.set(first, `the length of cut ${number}`);
      continue;
    }
    const [near, far] = direction === "across" ? ["left", "right"] : ["lower", "upper"];
    const both = cutAgain.has(first) && cutAgain.has(second);
    const nearSheet = leftHanded ? second : first;
    for (const sheet of [first, second]) {
      const side = both ? `${sheet === nearSheet ? near : far} ` : "";
      names.set(sheet, `the ${side}piece of cut ${number}`);
    }
  }
  return (sheet) => names.get(sheet) ?? "the cloth";
}

/** How near to its line each cut is to be, in words: as the piece beside it that asks for the most. */
function tolerancesOf(
  { problem }: ClothCutting,
  { placements }: BoltPlan,
  units: UnitChoice,
): (followed: FollowedCut) => string {
  const mm = problem.table?.toleranceMm;
  if (mm === undefined) return () => "";
  const [near, loose] = [toleranceText(mm, units), toleranceText(2 * mm, units)];
  const hidden = new Set(problem.pieces.flatMap(({ id, hidden: is }) => (is ? [id] : [])));
  const asking = byStretch(placements.filter(({ pieceId }) => !hidden.has(pieceId)));
  return ({ cut, sheet }) => {
    const across = cut.direction === "across";
    const isNear = (edgeMm: number) => Math.abs(edgeMm - cut.atMm) < EDGE_MM;
    const [fromMm, toMm] = across
      ? [cut.atMm - EDGE_MM, cut.atMm + EDGE_MM]
      : [sheet.yMm, sheet.yMm + sheet.lengthMm];
    const isBeside = ({ xMm, yMm, widthMm, lengthMm }: Placement) =>
      xMm + widthMm > sheet.xMm &&
      xMm < sheet.xMm + sheet.widthMm &&
      yMm + lengthMm > sheet.yMm &&
      yMm < sheet.yMm + sheet.lengthMm &&
      (across ? isNear(yMm) || isNear(yMm + lengthMm) : isNear(xMm) || isNear(xMm + widthMm));
    return asking(fromMm, toMm).some(isBeside) ? near : loose;
  };
}

/** Pieces by the metres of the bolt on which they lie: a contract has tens of thousands, and a cut touches a few. */
function byStretch(placements: readonly Placement[]): (fromMm: number, toMm: number) => Placement[] {
  const stretches = new Map<number, Placement[]>();
  const numbersOf = (fromMm: number, toMm: number) => {
    const first = Math.floor(fromMm / STRETCH_MM);
    return Array.from({ length: Math.floor(toMm / STRETCH_MM) - first + 1 }, (_, n) => first + n);
  };
  for (const placement of placements) {
    for (const n of numbersOf(placement.yMm, placement.yMm + placement.lengthMm)) {
      const there = stretches.get(n);
      if (there === undefined) stretches.set(n, [placement]);
      else there.push(placement);
    }
  }
  return (fromMm, toMm) => numbersOf(fromMm, toMm).flatMap((n) => stretches.get(n) ?? []);
}

const STRETCH_MM = 1000;

/** An edge this near to a cut is made by it, mm. */
const EDGE_MM = 0.2;

function toleranceText(mm: number, { system }: UnitChoice): string {
  return system === "metric" ? fineText(mm) : lengthText(mm, { system, ruler: "1/16 in" });
}

function freesText(names: ReadonlyMap<string, string>, { frees }: FollowedCut): string {
  return frees
    .map((leaf) => leafText(names, leaf))
    .filter((text) => text !== "")
    .join("; ");
}

/** What must measure how much when the cut is made: a slip of the ruler shows at once. */
function checkText({ cut, endless, wholeWidth }: FollowedCut, { units, sums }: Ways): string {
  const len = (mm: number) => lengthText(mm, units);
  if (endless) return `${len(cut.atMm)} off the bolt`;
  if (wholeWidth && cut.boltLeftMm !== undefined) return `the bolt measures ${len(cut.boltLeftMm)} now`;
  const sum = sums.get(cut.number);
  if (sum === undefined) return "";
  const { markMm, beyondMm, wholeMm } = sum;
  // A cut that takes off less than a mark of the ruler.
  if (beyondMm === 0) return `${len(markMm)}, only threads beyond`;
  return `${rulerText(markMm, units.ruler)} + ${rulerText(beyondMm, units.ruler)} = ${len(wholeMm)}`;
}

/** A sheet that is done, in words. */
function leafText(names: ReadonlyMap<string, string>, { holds }: Leaf): string {
  switch (holds.kind) {
    case "piece":
      return names.get(holds.pieceId) ?? holds.pieceId;
    case "remnant":
      return `keep ${holds.name}`;
    case "rest":
      return "the rest stays on the bolt";
    case "waste":
      return "";
  }
}
