import { parentPort, workerData } from "node:worker_threads";
import { type CaseKind, depthOf, textOf } from "./drawn.ts";
import { type CaseDepth, runCase } from "./run-case.ts";
import { type Counts, NOTHING_COUNTED } from "./tally.ts";

/** Many cases in a row, or one text. */
export type Asked = { cases: Cases } | { text: string; depth: CaseDepth };

interface Cases {
  kind: CaseKind;
  /** Number of the first. */
  from: number;
  forMs: number;
}

/** What went well; `trouble` with what was met at `seed`. */
export interface Told {
  counts: Counts;
  trouble?: string;
  seed?: number;
}

/** The case at work, for who waits outside: one that hangs tells nothing. */
const { at } = workerData as { at: Int32Array };

parentPort?.on("message", async (asked: Asked) => {
  parentPort?.postMessage("text" in asked ? await one(asked) : await many(asked.cases));
});

async function many({ kind, from, forMs }: Cases): Promise<Told> {
  const until = performance.now() + forMs;
  const counts = { ...NOTHING_COUNTED };
  for (let seed = from; ; seed++) {
    if (performance.now() > until) return { counts };
    at[0] = seed;
    const depth = depthOf({ kind, seed });
    const { counts: own, trouble } = await one({ text: textOf({ kind, seed }), depth });
    if (trouble !== undefined) return { counts, trouble, seed };
    for (const key of Object.keys(counts) as (keyof Counts)[]) counts[key] += own[key];
  }
}

async function one({ text, depth }: { text: string; depth: CaseDepth }): Promise<Told> {
  try {
    const isJob = await runCase(text, depth);
    const { words, sheets, cutting, remedies, workbook } = depth;
    const ones = { words, sheets: sheets.length > 0, cutting, remedies, workbook };
    const reached = Object.entries(ones).map(([key, is]) => [key, Number(isJob && is)]);
    return { counts: { texts: 1, jobs: Number(isJob), ...Object.fromEntries(reached) } };
  } catch (error) {
    const trouble = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { counts: NOTHING_COUNTED, trouble };
  }
}

parentPort?.postMessage("ready");
