import type { FindingCause } from "../../figures/index.ts";
import type { CordPlace } from "../../shade-plan/index.ts";

const SAYS: Record<CordPlace, string> = {
  front: "Cords hang at the front, where a child can come to them.",
  rail: "The cords of the top rail hang at the front, where a child can come to them.",
  loop: "A loop of cord or chain hangs at the front, where a child can come to it.",
  board: "Cords run bare along the board, where a child can draw them out.",
  back: "Cords run up the back, where a child can draw them out into a loop.",
  lead: "The motor’s lead hangs free, and a lead is a cord too.",
  cleat: "The cleat is not where it keeps cords out of reach.",
};

/** What failed rules about the same cords come from. */
export function cordCause(cords: CordPlace): FindingCause {
  return { id: `safety.cords-${cords}`, says: SAYS[cords] };
}
