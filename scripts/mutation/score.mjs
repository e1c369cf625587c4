import { readFileSync } from "node:fs";
import { relative } from "node:path";

/**
 * A change that changes nothing anyone could see, with the reason. `from` is the code that is changed, as it stands.
 * @typedef {{ file: string, from: string, to: string, because: string }} Equivalent
 * @typedef {{ line: number, column: number }} Position
 * @typedef {{
 *   fileName: string, status: string, replacement?: string, mutatorName: string,
 *   location: { start: Position, end: Position },
 * }} Mutant
 * @typedef {{
 *   share: number, from: number, to: number, tried: number, killed: number, reached: number, unreached: number,
 *   equal: number,
 * }} Score
 */

/**
 * The share of changes that some test notices. Those that no test reaches are all known; of those that are reached a
 * sample may have been tried, so their share is an estimate.
 * @param {readonly Mutant[]} mutants
 * @param {readonly Equivalent[]} equivalent
 * @param {string} root of the project
 * @returns {Score}
 */
export function scoreOf(mutants, equivalent, root) {
  const told = mutants.map((mutant) => {
    const { file, from } = wordsOf(mutant, root);
    const to = mutant.replacement ?? "";
    return {
      status: mutant.status,
      isEqual: equivalent.some((one) => one.file === file && one.from === from && one.to === to),
    };
  });
  const has = (/** @type {string[]} */ ...statuses) =>
    told.filter(({ status, isEqual }) => statuses.includes(status) && !isEqual);
  const killed = has("Killed", "Timeout").length;
  const unreached = has("NoCoverage");
  const tried = killed + has("Survived").length;
  const reached = tried + has("RuntimeError").length;
  const all = reached + unreached.length;
  const within = reached / Math.max(1, all);
  const [low, high] =
    tried === reached ? [killed / Math.max(1, tried), killed / Math.max(1, tried)] : wilson(killed, tried);
  return {
    share: (within * killed) / Math.max(1, tried),
    from: within * low,
    to: within * high,
    ...{ tried, killed, reached, unreached: unreached.length },
    equal: told.filter(({ isEqual }) => isEqual).length,
  };
}

/** @type {Map<string, string>} */
const TEXTS = new Map();

/**
 * Where a mutant stands, and what it changes into what.
 * @param {Mutant} mutant
 * @param {string} root of the project
 */
export function wordsOf({ fileName, location, mutatorName, status, replacement = "" }, root) {
  const text = TEXTS.get(fileName) ?? readFileSync(fileName, "utf8");
  TEXTS.set(fileName, text);
  const file = relative(root, fileName);
  const from = stretchOf(text, location);
  const { line, column } = location.start;
  const words = `${file}:${line}:${column} ${mutatorName} ${status}\n  - ${from.slice(0, 300)}\n  + ${replacement.slice(0, 300)}`;
  return { file, from, words };
}

/**
 * Wilson's score interval for 19 in 20: E. B. Wilson, Probable inference, the law of succession, and statistical
 * inference, J. Amer. Statist. Assoc. 22 (1927), 209-212.
 * @param {number} hits
 * @param {number} tries
 * @returns {[number, number]}
 */
export function wilson(hits, tries) {
  if (tries === 0) return [0, 1];
  const z = 1.959964;
  const share = hits / tries;
  const middle = (share + (z * z) / (2 * tries)) / (1 + (z * z) / tries);
  const half =
    (z / (1 + (z * z) / tries)) * Math.sqrt((share * (1 - share)) / tries + (z * z) / (4 * tries * tries));
  return [middle - half, middle + half];
}

/**
 * @param {string} text of a file
 * @param {{ start: Position, end: Position }} location lines and columns from 1, as told at the end of a run
 */
function stretchOf(text, { start, end }) {
  const lines = text.split("\n");
  const at = (/** @type {Position} */ { line, column }) =>
    lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0) + column - 1;
  return text.slice(at(start), at(end));
}

/**
 * @param {Score} score
 * @param {number} listed how many are listed as changing nothing
 */
export function scoreWords({ share, from, to, tried, killed, reached, unreached, equal }, listed) {
  const percent = (/** @type {number} */ one) => (100 * one).toFixed(1);
  const range = tried === reached ? "" : ` (${percent(from)} to ${percent(to)}, 19 times in 20)`;
  return [
    `${killed} of ${tried} tried are noticed; ${reached} are reached by a test and ${unreached} are not; ${equal} of ${listed} listed change nothing`,
    `noticed: ${percent(share)} %${range}`,
  ].join("\n");
}
