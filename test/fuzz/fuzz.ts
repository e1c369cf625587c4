import { createHash } from "node:crypto";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import fc from "fast-check";
import { type CaseKind, type DrawnCase, depthOf } from "./drawn.ts";
import { TEXTS } from "./texts.ts";
import type { Asked, Told } from "./worker.ts";

/**
 * Takes drawn job files the whole way to drawings and workbook for some minutes: `npm run fuzz -- --minutes 10`.
 * What throws, or takes longer than `--limit` seconds, is made as small as can be and kept in `test/fuzz/cases`,
 * where a test takes it the same way at every run. `--kind` takes one kind alone.
 */
const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    limit: { type: "string", default: "5" },
    seed: { type: "string", default: String(Date.now() % 1_000_000_007) },
    kind: { type: "string" },
  },
});
const limitMs = 1000 * Number(values.limit);
const endsAt = Date.now() + 60_000 * Number(values.minutes);
/** Each kind has its turn for so long. */
const TURN_MS = 20_000;
/** A shade of hardly any cloth fits in this; a plan that grows without end does not. */
const MOST_MEMORY_MB = 2048;

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
  const began = "cases" in asked ? asked.cases.from : 0;
  const end = (trouble: string): Told => {
    worker = undefined;
    void own.terminate();
    const seed = at[0] ?? began;
    return { done: Math.max(0, seed - began), trouble, seed };
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
      } else if (workedMs() - since > limitMs) resolve(end(`takes longer than ${values.limit} s`));
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
  const depth = depthOf({ kind, seed });
  const property = fc.asyncProperty(TEXTS[kind], async (text) => {
    const again = await ask({ text, depth });
    if (again.trouble !== undefined && signature(again.trouble) === signature(trouble))
      throw new Error(again.trouble);
  });
  const details = await fc.check(property, { seed, numRuns: 1, interruptAfterTimeLimit: 60_000 });
  const [text] = details.counterexample ?? fc.sample(TEXTS[kind], { seed, numRuns: 1 });
  const name = createHash("sha256").update(String(text)).digest("hex").slice(0, 12);
  const path = `test/fuzz/cases/${name}.json`;
  writeFileSync(path, `${JSON.stringify({ kind, trouble: trouble.split("\n")[0], text }, null, 2)}\n`);
  found++;
  console.log(`${path}: ${trouble.split("\n").slice(0, 3).join(" | ")}`);
}

const kinds = (Object.keys(TEXTS) as CaseKind[]).filter((kind) => (values.kind ?? kind) === kind);
const next = new Map(kinds.map((kind) => [kind, Number(values.seed)]));
const spentMs = new Map(kinds.map((kind) => [kind, 0]));
const countOf = (kind: CaseKind) => (next.get(kind) ?? 0) - Number(values.seed);

for (let turn = 0; Date.now() < endsAt; turn++) {
  const kind = kinds[turn % kinds.length];
  if (kind === undefined) throw new Error(`no such kind; there are ${Object.keys(TEXTS).join(", ")}`);
  const forMs = Math.min(TURN_MS, endsAt - Date.now());
  const from = next.get(kind) ?? 0;
  const began = performance.now();
  const { done, trouble, seed } = await ask({ cases: { kind, from, forMs } });
  spentMs.set(kind, (spentMs.get(kind) ?? 0) + performance.now() - began);
  next.set(kind, from + done + (trouble === undefined ? 0 : 1));
  if (trouble !== undefined && seed !== undefined) await keep({ kind, seed }, trouble);
}
void worker?.terminate();
const each = kinds.map((kind) => {
  const aMinute = Math.round((60_000 * countOf(kind)) / Math.max(1, spentMs.get(kind) ?? 0));
  return `${countOf(kind)} ${kind} (${aMinute} a minute)`;
});
const all = kinds.reduce((sum, kind) => sum + countOf(kind), 0);
console.log(`${all} texts from seed ${values.seed}: ${each.join(", ")}; ${found} faults found`);
process.exit(found === 0 ? 0 : 1);
