import { type ChildProcess, fork } from "node:child_process";
import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import fc from "fast-check";
import { TEXTS } from "./texts.ts";

/**
 * Takes drawn job files the whole way to drawings and workbook for some minutes: `npm run fuzz -- --minutes 10`.
 * What throws, or takes longer than `--limit` seconds, is made as small as can be and kept in `test/fuzz/cases`,
 * where a test takes it the same way at every run.
 */
const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    limit: { type: "string", default: "5" },
    seed: { type: "string", default: String(Date.now() % 1_000_000_007) },
  },
});
const limitMs = 1000 * Number(values.limit);
const endsAt = Date.now() + 60_000 * Number(values.minutes);

/** Errors that were found already, by message and place: the next is looked for. */
const known = new Set<string>();
let worker: ChildProcess | undefined;

async function started(): Promise<ChildProcess> {
  const child = fork(new URL("worker.ts", import.meta.url), {
    execArgv: ["--import", "tsx"],
    stdio: ["ignore", "ignore", "ignore", "ipc"],
  });
  await new Promise((resolve) => child.once("message", resolve));
  return child;
}

/** What went wrong with a text, in words; empty where nothing did. */
async function troubleWith(text: string): Promise<string> {
  worker ??= await started();
  const child = worker;
  const ended = await new Promise<string>((resolve) => {
    const timer = setTimeout(() => resolve(`takes longer than ${values.limit} s`), limitMs);
    const done = (words: string) => {
      clearTimeout(timer);
      child.removeAllListeners();
      resolve(words);
    };
    child.once("message", (words) => done(String(words)));
    child.once("exit", (code) => done(`ended with ${code}`));
    child.send(text);
  });
  if (/^(?:takes longer|ended)/.test(ended)) {
    child.removeAllListeners();
    child.kill("SIGKILL");
    worker = undefined;
  }
  return ended;
}

/** The same fault shows with other numbers. */
function signature(words: string): string {
  return words
    .split("\n")
    .slice(0, 2)
    .join(" ")
    .replace(/\d+(?:\.\d+)?/g, "#");
}

const counts = { valid: 0, wrong: 0, hostile: 0 };
const kinds = Object.keys(counts) as (keyof typeof counts)[];
let seed = Number(values.seed);
let found = 0;

/** Draws texts of one kind for a while; what is new is kept. */
async function explore(kind: keyof typeof counts, forMs: number): Promise<void> {
  let words = "";
  const property = fc.asyncProperty(TEXTS[kind], async (text) => {
    counts[kind]++;
    const trouble = await troubleWith(text);
    if (trouble === "" || known.has(signature(trouble))) return;
    words = trouble;
    throw new Error(trouble);
  });
  const details = await fc.check(property, {
    seed: seed++,
    numRuns: 200,
    interruptAfterTimeLimit: forMs,
    ignoreEqualValues: true,
  } as fc.Parameters<[string]>);
  if (!details.failed || details.counterexample === null) return;
  const [text] = details.counterexample;
  known.add(signature(words));
  const name = createHash("sha256").update(text).digest("hex").slice(0, 12);
  const path = `test/fuzz/cases/${name}.json`;
  writeFileSync(path, `${JSON.stringify({ kind, trouble: words.split("\n")[0], text }, null, 2)}\n`);
  found++;
  console.log(`${path}: ${words.split("\n").slice(0, 3).join(" | ")}`);
}

for (let turn = 0; Date.now() < endsAt; turn++)
  await explore(kinds[turn % kinds.length] ?? "valid", Math.min(60_000, endsAt - Date.now()));
worker?.kill();
console.log(
  `${counts.valid + counts.wrong + counts.hostile} texts from seed ${values.seed}: ${kinds.map((kind) => `${counts[kind]} ${kind}`).join(", ")}; ${found} faults found`,
);
process.exit(found === 0 ? 0 : 1);
