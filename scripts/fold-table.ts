import { solveOpening } from "../src/mechanics/elastica/fold-opening.ts";
import { pressDrops } from "../src/mechanics/elastica/pressed-drop.ts";

const LEVELS = 11;

/** The table of folds as the solvers give it today, as the file that holds it. */
export function foldTableText(): string {
  const rows = Array.from({ length: LEVELS }, (_, level) => {
    const weight = 2 ** level;
    const drops = pressDrops(weight);
    const opening = solveOpening(weight);
    if (!drops.converged || opening === undefined) throw new Error(`not converged: level ${level}`);
    const [free, ...pressed] = drops.presses;
    const digits = (value: number) => Number(value.toPrecision(5));
    return `  {
    freeRad: ${digits(free?.halfAngleRad ?? 0)},
    moments: [${pressed.map(({ moment }) => digits(moment)).join(", ")}],
    startShare: ${digits(opening.startShare)},
    outShare: ${digits(opening.outShare)},
  },`;
  });
  return `${HEAD}${rows.join("\n")}\n];\n${TAIL}`;
}

const HEAD = `/**
 * Folds of every weight, so that planning a shade solves none. Written by \`npm run fold-table\` from \`pressDrops\` and
 * \`solveOpening\`; a test solves each row again.
 */
export interface FoldLevel {
  /** Half the angle of a drop that hangs free. */
  freeRad: number;
  /** Moments that press it to the shares of \`DROP_SHARES\` after the first, in units of B/a. */
  moments: readonly number[];
  /** As in \`FoldOpening\`. */
  startShare: number;
  outShare: number;
}

/** Row k is for λ = 2^k. */
export const FOLD_TABLE: readonly FoldLevel[] = [
`;

const TAIL = `
/** The row at or below a weight, how far on to the next it is by its logarithm, and ∛(λ over the last row's) where that is over 1. */
export function foldLevel(weight: number): { low: number; part: number; above: number } {
  if (!(weight >= 0)) throw new Error(\`invalid weight: \${weight}\`);
  const last = FOLD_TABLE.length - 1;
  const place = Math.min(last, Math.max(0, Math.log2(weight)));
  const low = Math.min(last - 1, Math.floor(place));
  return { low, part: place - low, above: Math.cbrt(Math.max(1, weight / 2 ** last)) };
}
`;
