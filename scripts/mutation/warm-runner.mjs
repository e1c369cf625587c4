import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { compileFunction, constants } from "node:vm";
import { vi } from "vitest";
import { bundleTests } from "./bundle-tests.mjs";
import { collector } from "./collect-tests.mjs";
import { wordsOf } from "./score.mjs";
import { shuffled } from "./shuffled.mjs";

/**
 * One test: its file, how long it ran by the processor's own count, and how many mutants it noticed.
 * @typedef {{ file: string, tookMs: number, kills: number }} Known
 */

/**
 * Runs tests for Stryker in one warm process: all of them are one script, compiled once and read anew for each mutant,
 * so that nothing remembered of one mutant is there for the next. A run of the test tool itself takes seconds before
 * its first test; this takes a tenth of one. Of the test files only those that reach the mutant are read, and no more
 * of them once it is noticed.
 *
 * What is computed while a test file is read (a plan that all its tests look at) counts as read by each of its tests.
 */
class WarmRunner {
  /** @type {Record<string, any>} */
  #mutants = mutantsOf(globalThis);
  /** @type {Script | undefined} */
  #script;
  /** Test by id. */
  #known = /** @type {Map<string, Known>} */ (new Map());
  /** The mutants that are tried; all of them unless a sample was asked for. */
  #sample = /** @type {Set<string> | undefined} */ (undefined);
  #wish = JSON.parse(process.env.MUTATION ?? "{}");
  #require = createRequire(join(process.cwd(), "package.json"));

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    const { tests, mutated } = this.#wish;
    const code = await bundleTests(process.cwd(), tests, mutated);
    const script = compileFunction(code, ["require", "exports", "module"], {
      filename: join(process.cwd(), "tests.cjs"),
      // A solver is loaded once it is wanted, by an import in the midst of the code.
      importModuleDynamically: constants.USE_MAIN_CONTEXT_DEFAULT_LOADER,
    });
    this.#script = (...given) => script(...given);
  }

  /**
   * Reads the code that is tested, and hands out what reads a test file.
   * @returns {(file: string) => Promise<Collected[]>}
   */
  #read() {
    const { tests, stand, beginFile } = collector();
    const fastCheck = boundedFastCheck(this.#require("fast-check"));
    const given = new Map([
      ["vitest", stand],
      ["fast-check", fastCheck],
    ]);
    const exports = { files: /** @type {Record<string, () => Promise<unknown>>} */ ({}) };
    this.#script?.((id) => given.get(id) ?? this.#require(id), exports, { exports });
    return async (file) => {
      beginFile(file);
      await exports.files[file]?.();
      return [...tests];
    };
  }

  /**
   * @returns {Promise<object>}
   */
  async dryRun() {
    const mutants = this.#mutants;
    mutants.activeMutant = undefined;
    mutants.mutantCoverage = undefined;
    mutants.currentTestId = undefined;
    const read = this.#read();
    const results = [];
    for (const file of this.#wish.tests) {
      mutants.currentTestId = `file ${file}`;
      const tests = await read(file);
      const fileIs = join(process.cwd(), file);
      for (const test of tests) {
        const [from, ranFrom] = [performance.now(), ranMs()];
        mutants.currentTestId = test.id;
        const failure = await failureOf(test, new Set());
        // By the clock for who ends what hangs, by the processor for what a test is worth.
        const timeSpentMs = performance.now() - from;
        // A test of pictures or of the source tree itself may not do here: it says nothing of a mutant.
        if (failure !== undefined && this.#wish.optional.includes(file)) continue;
        this.#known.set(test.id, { file, tookMs: ranMs() - ranFrom, kills: 0 });
        const told = { id: test.id, name: test.id, timeSpentMs, fileName: fileIs };
        results.push(
          failure === undefined ? { ...told, status: 0 } : { ...told, status: 1, failureMessage: failure },
        );
      }
    }
    mutants.currentTestId = undefined;
    const coverage = mutants.mutantCoverage ?? { static: {}, perTest: {} };
    for (const [id, { file }] of this.#known) {
      coverage.perTest[id] ??= {};
      const own = coverage.perTest[id];
      for (const [mutant, hits] of Object.entries(coverage.perTest[`file ${file}`] ?? {}))
        own[mutant] = (own[mutant] ?? 0) + hits;
    }
    for (const id of Object.keys(coverage.perTest)) if (!this.#known.has(id)) delete coverage.perTest[id];
    this.#draw(coverage.perTest);
    this.#keep();
    return { status: "complete", tests: results, mutantCoverage: coverage };
  }

  /**
   * Draws the mutants to be tried from those that some test reaches; of the others it is known that no test notices.
   * @param {Record<string, Record<string, number>>} perTest
   */
  #draw(perTest) {
    const { sample, seed } = this.#wish;
    if (sample === undefined) return;
    const reached = new Set(Object.values(perTest).flatMap((hits) => Object.keys(hits)));
    const inOrder = [...reached].sort((a, b) => Number(a) - Number(b));
    this.#sample = new Set(shuffled(inOrder, seed).slice(0, sample));
  }

  /** Only one process makes the first run; what it has found out is kept for its successors and for those beside it. */
  #keep() {
    const { memory } = this.#wish;
    if (memory === undefined) return;
    const sample = this.#sample === undefined ? undefined : [...this.#sample];
    writeFileSync(memory, JSON.stringify({ known: [...this.#known], sample }));
  }

  /** A process that was begun anew, since the last one hung, knows nothing by itself. */
  #remember() {
    const { memory } = this.#wish;
    if (this.#known.size > 0 || memory === undefined || !existsSync(memory)) return;
    /** @type {{ known: [string, Known][], sample?: string[] }} */
    const { known, sample } = JSON.parse(readFileSync(memory, "utf8"));
    this.#known = new Map(known);
    if (sample !== undefined) this.#sample = new Set(sample);
  }

  /**
   * @param {{ testFilter?: string[], hitLimit?: number, activeMutant: { id: string } }} options
   * @returns {Promise<object>}
   */
  async mutantRun({ testFilter, hitLimit, activeMutant }) {
    this.#remember();
    // Without a test every mutant would survive.
    if (this.#known.size === 0) return { status: "error", errorMessage: "no test is known" };
    if (this.#sample?.has(activeMutant.id) === false) return { status: "error", errorMessage: "not drawn" };
    const mutants = this.#mutants;
    Object.assign(mutants, {
      hitCount: 0,
      hitLimit,
      activeMutant: activeMutant.id,
      currentTestId: undefined,
    });
    try {
      return await this.#judge(new Set(testFilter ?? this.#known.keys()));
    } finally {
      mutants.activeMutant = undefined;
    }
  }

  /**
   * @param {ReadonlySet<string>} wanted
   */
  async #judge(wanted) {
    let nrOfTests = 0;
    let tookMs = 0;
    let first = [...wanted][0] ?? "";
    try {
      const read = this.#read();
      for (const file of this.#filesOf(wanted)) {
        first = [...wanted].find((id) => this.#known.get(id)?.file === file) ?? first;
        const tests = (await read(file)).filter(({ id }) => wanted.has(id));
        tests.sort((a, b) => this.#worth(a.id) - this.#worth(b.id));
        const ran = new Set();
        for (const test of tests) {
          nrOfTests++;
          const failure = await failureOf(test, ran);
          const known = this.#known.get(test.id);
          tookMs += known?.tookMs ?? 0;
          if (failure === undefined) continue;
          if (known) known.kills++;
          return this.#killed(test.id, failure, nrOfTests);
        }
        if (tookMs > 1000 * (this.#wish.seconds ?? MOST_SECONDS)) break;
      }
    } catch (error) {
      // A test file cannot even be read with it.
      return this.#killed(first, String(error), nrOfTests);
    }
    return nrOfTests === 0
      ? { status: "error", errorMessage: "none of its tests was run" }
      : { status: "survived", nrOfTests };
  }

  /**
   * The files of some tests: those first that have noticed much for the time that all of these take.
   * @param {ReadonlySet<string>} wanted
   */
  #filesOf(wanted) {
    /** @type {Map<string, { tookMs: number, kills: number }>} */
    const files = new Map();
    for (const id of wanted) {
      const one = this.#known.get(id);
      if (one === undefined) continue;
      const sum = files.get(one.file) ?? { tookMs: 1, kills: 1 };
      files.set(one.file, { tookMs: sum.tookMs + one.tookMs, kills: sum.kills + one.kills });
    }
    return [...files]
      .map(([file, { tookMs, kills }]) => ({ file, worth: tookMs / kills }))
      .sort((a, b) => a.worth - b.worth)
      .map(({ file }) => file);
  }

  /**
   * @param {string} id
   */
  #worth(id) {
    const { tookMs, kills } = this.#known.get(id) ?? { tookMs: 0, kills: 0 };
    return (tookMs + 1) / (1 + kills);
  }

  /**
   * @param {string} id
   * @param {string} failureMessage
   * @param {number} nrOfTests
   */
  #killed(id, failureMessage, nrOfTests) {
    const { hitCount, hitLimit } = this.#mutants;
    if (hitLimit !== undefined && hitCount > hitLimit)
      return { status: "timeout", reason: "it runs on and on" };
    return { status: "killed", killedBy: [id], failureMessage, nrOfTests };
  }
}

/**
 * @typedef {import("./collect-tests.mjs").Collected} Collected
 * @typedef {(require: (id: string) => unknown, exports: object, module: object) => void} Script
 */

/** What tests that have taken so long, when nothing was changed, do not notice counts as noticed by none. */
const MOST_SECONDS = 20;

/** Milliseconds that this process has run: on a busy machine the clock tells of its neighbours as well. */
function ranMs() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/**
 * Where the changed code looks for the mutant that is on.
 * @param {Record<string, any>} known
 */
function mutantsOf(known) {
  known.__stryker__ ??= {};
  return known.__stryker__;
}

/**
 * @param {Collected} test
 * @param {Set<unknown>} ran what was run once before
 * @returns {Promise<string | undefined>} why it fails
 */
async function failureOf(test, ran) {
  try {
    for (const once of test.once) {
      if (ran.has(once)) continue;
      ran.add(once);
      await once();
    }
    for (const before of test.before) await before();
    await test.run({});
    for (const after of test.after) await after();
    return undefined;
  } catch (error) {
    return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  } finally {
    // What a test has replaced and, failing, not put back is not there for the next.
    vi.restoreAllMocks();
  }
}

/** A property that does not notice a mutant in so many cases is not asked for more. */
const MOST_RUNS = 15;

/**
 * One case on which a property fails is enough: nobody reads it, so it is not made small.
 * @param {any} module
 */
function boundedFastCheck(module) {
  const fc = module.default ?? module;
  const bounded = (/** @type {{ numRuns?: number } | undefined} */ given) => ({
    ...given,
    numRuns: Math.min(given?.numRuns ?? 100, MOST_RUNS),
    endOnFailure: true,
  });
  const assert = (/** @type {unknown} */ property, /** @type {object} */ given) =>
    fc.assert(property, bounded(given));
  return { ...module, __esModule: true, default: { ...fc, assert }, assert };
}

/** Says at once what no test has noticed: who reads it need not wait for the end. */
class Survivors {
  /**
   * @param {import("./score.mjs").Mutant} mutant
   */
  onMutantTested(mutant) {
    if (mutant.status === "Survived" || mutant.status === "NoCoverage")
      console.log(wordsOf(mutant, process.cwd()).words);
  }
}

/** What Stryker reads of a plugin. */
export const strykerPlugins = [
  { kind: "TestRunner", name: "warm", injectableClass: WarmRunner },
  { kind: "Reporter", name: "survivors", injectableClass: Survivors },
];
