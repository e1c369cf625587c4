import { SEVERITIES, type Severity } from "../figures/index.ts";

/** Of the sixteen colours that every terminal has (ECMA-48, SGR): they follow the reader’s own scheme. */
const SGR: Record<Severity, number> = { stop: 31, fix: 33, note: 36, unproven: 35 };

const AT_MARGIN = new RegExp(`^( {2})(${SEVERITIES.join("|")})(?= )`, "gm");

/** Findings with their severity in colour, for a terminal: the word is there all the same. */
export function inColours(text: string): string {
  return text.replace(
    AT_MARGIN,
    (_, margin: string, word: Severity) => `${margin}\u001b[1;${SGR[word]}m${word}\u001b[0m`,
  );
}

/** Whether to paint: on a terminal, unless its owner set `NO_COLOR` to anything (no-color.org) or it says that it is dumb. */
export function paints(isTerminal: boolean, env: Readonly<Record<string, string | undefined>>): boolean {
  return isTerminal && (env.NO_COLOR ?? "") === "" && env.TERM !== "dumb";
}
