import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { CASE_KINDS, type CaseKind } from "./drawn.ts";

/** How many texts of a kind went well, how many of them were jobs, and how many of those were taken further. */
export interface Counts {
  texts: number;
  jobs: number;
  words: number;
  sheets: number;
  cutting: number;
  remedies: number;
  workbook: number;
}

export const NOTHING_COUNTED: Counts = {
  texts: 0,
  jobs: 0,
  words: 0,
  sheets: 0,
  cutting: 0,
  remedies: 0,
  workbook: 0,
};

/** One kind's part of all runs so far. */
interface KindTally extends Counts {
  /** Number of the next case. */
  next: number;
  faults: number;
  workedMs: number;
}

export type Tally = Record<CaseKind, KindTally>;

/** What earlier runs came to, so that the next goes on from there. */
export function readTally(path: string, seed: number): Tally {
  if (existsSync(path)) return JSON.parse(readFileSync(path, "utf8")) as Tally;
  const empty = () => ({ ...NOTHING_COUNTED, next: seed, faults: 0, workedMs: 0 });
  return Object.fromEntries(CASE_KINDS.map((kind) => [kind, empty()])) as Tally;
}

export function writeTally(path: string, tally: Tally): void {
  writeFileSync(path, `${JSON.stringify(tally, null, 2)}\n`);
}

export function addTo(tally: KindTally, counts: Counts): void {
  for (const key of Object.keys(NOTHING_COUNTED) as (keyof Counts)[]) tally[key] += counts[key];
}

/** One line a kind, and one of all. */
export function tallyWords(tally: Tally): string {
  const lines = CASE_KINDS.map((kind) => {
    const { texts, jobs, words, sheets, cutting, remedies, workbook, faults, workedMs } = tally[kind];
    const reached = `lists ${words}, sheets ${sheets}, cutting ${cutting}, remedies ${remedies}, workbook ${workbook}`;
    const each = (workedMs / Math.max(1, texts)).toFixed(2);
    return `${kind}: ${texts} texts, ${each} ms each; ${jobs} jobs (${reached}); ${faults} faults`;
  });
  const all = CASE_KINDS.reduce((sum, kind) => sum + tally[kind].texts, 0);
  return [...lines, `${all} texts in all`].join("\n");
}
