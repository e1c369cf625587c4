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
  return `${HEAD}${rows.join("\n")}\n];\n`;
}

const HEAD = `import type { FoldLevel } from "./fold-level.ts";

/**
 * Folds of every weight, so that planning a shade solves none: row k is for λ = 2^k. Written by \`npm run fold-table\` from
 * \`pressDrops\` and \`solveOpening\`; a test solves each row again.
 */
export const FOLD_TABLE: readonly FoldLevel[] = [
`;
