import type { BoltPlan, Leaf } from "../../cutting/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import { type ClothCutting, pieceNames } from "./cutting-plan.ts";
import { type FollowedCut, followCuts } from "./follow-cuts.ts";

/** One cut in words, and a measure by which to check it. */
export interface TicketLine {
  number: number;
  /** `Across the bolt, 78 3/4 in from the cut before`; edges and ends are those of the drawing. */
  how: string;
  /** What comes free. */
  frees: string;
  /** `The bolt measures 88 in now`. */
  check: string;
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
  return followCuts(of, bolt).map((followed) => ({
    number: followed.cut.number,
    how: howText(followed, units),
    frees: followed.frees
      .map((leaf) => leafText(names, leaf))
      .filter((text) => text !== "")
      .join("; "),
    check: checkText(followed, units),
  }));
}

function howText({ cut, markMm, sheet, wholeWidth }: FollowedCut, units: UnitChoice): string {
  const mark = lengthText(markMm, units);
  if (wholeWidth) {
    return sheet.yMm <= 0.05
      ? `Across the bolt, ${mark} from its end`
      : `Across the bolt, ${mark} from the cut before`;
  }
  return cut.direction === "across"
    ? `Across the piece, ${mark} from its left end`
    : `Along the piece, ${mark} from its lower edge`;
}

/** What must measure how much when the cut is made: a slip of the ruler shows at once. */
function checkText(
  { cut, beyondMm, markMm, endless, wholeWidth, sheet }: FollowedCut,
  units: UnitChoice,
): string {
  const len = (mm: number) => lengthText(mm, units);
  if (endless) return `${len(cut.atMm)} are off the bolt in all`;
  if (wholeWidth && cut.boltLeftMm !== undefined) return `the bolt measures ${len(cut.boltLeftMm)} now`;
  const whole = cut.direction === "across" ? sheet.lengthMm : sheet.widthMm;
  return `${len(markMm)} + ${len(beyondMm)} = ${len(whole)}`;
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
