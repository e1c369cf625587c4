import { parentPort, workerData } from "node:worker_threads";
import { type DrawnCase, depthOf, textOf } from "./drawn.ts";
import { type CaseDepth, runCase } from "./run-case.ts";

/** Many cases in a row, or one text. */
export type Asked = { cases: Cases } | { text: string; depth: CaseDepth };

interface Cases extends Pick<DrawnCase, "kind"> {
  /** Number of the first. */
  from: number;
  forMs: number;
}

/** How many went well, and where the next one begins; `trouble` with what was met at `seed`. */
export interface Told {
  done: number;
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
  for (let seed = from; ; seed++) {
    if (performance.now() > until) return { done: seed - from };
    at[0] = seed;
    const drawn = { kind, seed };
    const { trouble } = await one({ text: textOf(drawn), depth: depthOf(drawn) });
    if (trouble !== undefined) return { done: seed - from, trouble, seed };
  }
}

async function one({ text, depth }: { text: string; depth: CaseDepth }): Promise<Told> {
  try {
    await runCase(text, depth);
    return { done: 1 };
  } catch (error) {
    return { done: 0, trouble: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

parentPort?.postMessage("ready");
