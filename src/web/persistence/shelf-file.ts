import type { OpenedJob } from "../../job/index.ts";
import type { StoredJob } from "./database.ts";

/** Of a whole shelf: one line that says what it is, then one job a line, so that a file cut short still has jobs. */
export const SHELF_FORMAT = "shadewright-shelf";
export const SHELF_FILE_ENDING = ".shadewright-shelf.jsonl";
const VERSION = 1;

/** The parts of a shelf's file, job by job, so that no text holds them all. Undo histories stay on this device. */
export function shelfParts(stored: readonly StoredJob[]): string[] {
  const head = { format: SHELF_FORMAT, version: VERSION, jobs: stored.length };
  return [head, ...stored.map(({ job }) => job)].map((one) => `${JSON.stringify(one)}\n`);
}

/** Whether a text begins as the file of a shelf does. */
export function isShelfText(text: string): boolean {
  return text.slice(0, 200).includes(`"format":"${SHELF_FORMAT}"`);
}

export interface OpenedShelf {
  /** One for each line after the first, in their order. */
  jobs: OpenedJob[];
  /** Jobs that the first line promises and that are not there: the file was cut short. */
  missing: number;
}

/** Reads the file of a shelf, each job by `open`. Never throws: what cannot be read comes back as issues. */
export function openShelfText(text: string, open: (line: string) => OpenedJob): OpenedShelf {
  const [head = "", ...lines] = text.split("\n").filter((line) => line.trim() !== "");
  const jobs = lines.map(open);
  return { jobs, missing: Math.max(0, promisedBy(head) - jobs.length) };
}

function promisedBy(head: string): number {
  try {
    const { jobs } = JSON.parse(head) as { jobs?: unknown };
    return typeof jobs === "number" ? jobs : 0;
  } catch {
    return 0;
  }
}
