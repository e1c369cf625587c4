import { createHash } from "node:crypto";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import { CASE_KINDS, type DrawnCase, depthOf, textOf } from "./drawn.ts";
import { smaller } from "./smaller.ts";
import { addTo, NOTHING_COUNTED, readTally, tallyWords, writeTally } from "./tally.ts";
import type { Asked, Told } from "./worker.ts";

/**
 * Takes drawn job files to plans, and some of them to lists, drawings, cutting and workbook, for some minutes:
 * `npm run fuzz -- --minutes 10`. What throws, or takes longer than `--limit` seconds, is made as small as can be and
 * kept in `test/fuzz/cases`, where a test takes it the whole way at every run. Runs add up in `out/fuzz-tally.json`, each
 * goes on where the last one ended; `--seed` begins elsewhere, and counts anew. `--kind` takes one kind alone.
 */
const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    limit: { type: "string", default: "5" },
    seed: { type: "string" },
    kind: { type: "string" },
  },
});
const limitMs = 1000 * Number(values.limit);
const endsAt = Date.now() + 60_000 * Number(values.minutes);
const TALLY = values.seed === undefined ? "out/fuzz-tally.json" : `out/fuzz-tally-${values.seed}.json`;
/** Each kind has its turn for so long. */
const TURN_MS = 20_000;
const TURNS = CASE_KINDS;
/** A shade of hardly any cloth fits in this; a plan that grows without end does not. */
const MOST_MEMORY_MB = 2048;

const TOO_LONG = "takes longer than";

/** Errors that were found already, by message and place: the next is looked for. */
const known = new Set<string>();
const at = new Int32Array(new SharedArrayBuffer(4));
let worker: Worker | undefined;

async function started(): Promise<Worker> {
  const own = new Worker(new URL("worker.js", import.meta.url), {
    workerData: { at },
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY_MB },
  });
  await once(own, "message");
  return own;
}

/** What this process has worked, ms: on a machine with other work a case takes longer than that. */
function workedMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Asks the worker. Where it works at one case beyond the limit, or dies, it is ended, and the case at work told. */
async function ask(asked: Asked): Promise<Told> {
  worker ??= await started();
  const own = worker;
  at[0] = -1;
  const end = (trouble: string): Told => {
    worker = undefined;
    void own.terminate();
    const seed = at[0] ?? -1;
    return { counts: NOTHING_COUNTED, trouble, ...(seed < 0 ? {} : { seed }) };
  };
  let seen: number | undefined = at[0];
  let since = workedMs();
  let watch: NodeJS.Timeout | undefined;
  let answer: (told: Told) => void = () => {};
  let died: (error: Error) => void = () => {};
  const told = await new Promise<Told>((resolve) => {
    answer = resolve;
    died = (error) => resolve(end(`ended: ${error.message}`));
    own.once("message", answer);
    own.once("error", died);
    own.postMessage(asked);
    watch = setInterval(() => {
      if (at[0] !== seen) {
        seen = at[0];
        since = workedMs();
      } else if (workedMs() - since > limitMs) resolve(end(`${TOO_LONG} ${values.limit} s`));
    }, 100);
  });
  clearInterval(watch);
  own.off("message", answer);
  own.off("error", died);
  // What is ended on purpose may still tell of an error, to nobody.
  if (worker !== own) own.on("error", () => {});
  return told;
}

/** The same fault shows with other numbers. */
function signature(words: string): string {
  return words
    .split("\n")
    .slice(0, 2)
    .join(" ")
    .replace(/\d+(?:\.\d+)?/g, "#");
}

let found = 0;

/** Makes a case that went wrong as small as can be, and keeps it. */
async function keep({ kind, seed }: DrawnCase, trouble: string): Promise<void> {
  if (known.has(signature(trouble))) return;
  known.add(signature(trouble));
  found++;
  console.log(`${kind} ${seed}: ${trouble.split("\n").slice(0, 3).join(" | ")}`);
  const depth = depthOf({ kind, seed });
  const isAlike = async (one: string) => {
    const again = await ask({ text: one, depth });
    return again.trouble !== undefined && signature(again.trouble) === signature(trouble);
  };
  // Of what hangs each try takes as long as the limit.
  const text = await smaller(textOf({ kind, seed }), isAlike, trouble.startsWith(TOO_LONG) ? 30 : 600);
  const name = createHash("sha256").update(text).digest("hex").slice(0, 12);
  const path = `test/fuzz/cases/${name}.json`;
  writeFileSync(path, `${JSON.stringify({ kind, trouble: trouble.split("\n")[0], text }, null, 2)}\n`);
  console.log(path);
}

const turns = TURNS.filter((kind) => (values.kind ?? kind) === kind);
if (turns.length === 0) throw new Error(`no such kind; there are ${CASE_KINDS.join(", ")}`);
const tally = readTally(TALLY, Number(values.seed ?? 1));

for (let turn = 0; Date.now() < endsAt; turn++) {
  const kind = turns[turn % turns.length] ?? "valid";
  const own = tally[kind];
  const forMs = Math.min(TURN_MS, endsAt - Date.now());
  const began = workedMs();
  const { counts, trouble, seed } = await ask({ cases: { kind, from: own.next, forMs } });
  own.workedMs += workedMs() - began;
  addTo(own, counts);
  own.next = seed === undefined ? own.next + counts.texts : seed + 1;
  if (trouble !== undefined) own.faults++;
  // Before it is made smaller, which takes its time.
  writeTally(TALLY, tally);
  if (trouble !== undefined && seed !== undefined) await keep({ kind, seed }, trouble);
}
void worker?.terminate();
console.log(tallyWords(tally));
console.log(`${found} faults found by this run`);
process.exit(found === 0 ? 0 : 1);
