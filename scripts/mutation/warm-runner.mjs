import { createRequire } from "node:module";
import { join } from "node:path";
import { compileFunction } from "node:vm";
import { bundleTests } from "./bundle-tests.mjs";
import { collector } from "./collect-tests.mjs";

/**
 * Runs tests for Stryker in one warm process: all of them are one script, compiled once and read anew for each mutant,
 * so that nothing remembered of one mutant is there for the next. A run of the test tool itself takes seconds before
 * its first test; this takes a tenth of one.
 *
 * What is computed while a test file is read (a plan that all its tests look at) counts as read by each of its tests.
 */
class WarmRunner {
  /** @type {Record<string, any>} */
  #mutants = mutantsOf(globalThis);
  /** @type {((require: (id: string) => unknown, exports: object, module: object) => void) | undefined} */
  #script;
  /** Test by id: how long it took, and how many mutants it noticed. */
  #known = /** @type {Map<string, { tookMs: number, kills: number }>} */ (new Map());
  #require = createRequire(join(process.cwd(), "package.json"));

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    const { tests, mutated } = JSON.parse(process.env.MUTATION ?? "{}");
    const code = await bundleTests(process.cwd(), tests, ["src/index.ts", ...mutated]);
    const script = compileFunction(code, ["require", "exports", "module"], { filename: "tests.cjs" });
    this.#script = (...given) => script(...given);
  }

  /**
   * Reads all test files.
   * @param {(file: string) => void} [onFile]
   */
  #collect(onFile) {
    const { tests, stand } = collector(onFile);
    const fastCheck = boundedFastCheck(this.#require("fast-check"));
    const given = new Map([
      ["vitest", stand],
      ["fast-check", fastCheck],
    ]);
    this.#script?.((id) => given.get(id) ?? this.#require(id), {}, {});
    return tests;
  }

  /**
   * @returns {Promise<object>}
   */
  async dryRun() {
    const mutants = this.#mutants;
    mutants.activeMutant = undefined;
    mutants.mutantCoverage = undefined;
    mutants.currentTestId = undefined;
    const tests = this.#collect((file) => {
      mutants.currentTestId = `file ${file}`;
    });
    mutants.currentTestId = undefined;
    const results = [];
    for (const test of tests) {
      const from = performance.now();
      mutants.currentTestId = test.id;
      const failure = await failureOf(test, new Set());
      mutants.currentTestId = undefined;
      const timeSpentMs = performance.now() - from;
      this.#known.set(test.id, { tookMs: timeSpentMs, kills: 0 });
      const told = { id: test.id, name: test.id, timeSpentMs, fileName: join(process.cwd(), test.file) };
      results.push(
        failure === undefined ? { ...told, status: 0 } : { ...told, status: 1, failureMessage: failure },
      );
    }
    const coverage = mutants.mutantCoverage ?? { static: {}, perTest: {} };
    for (const test of tests) {
      const ofFile = coverage.perTest[`file ${test.file}`] ?? {};
      coverage.perTest[test.id] ??= {};
      const own = coverage.perTest[test.id];
      for (const [mutant, hits] of Object.entries(ofFile)) own[mutant] = (own[mutant] ?? 0) + hits;
    }
    for (const id of Object.keys(coverage.perTest)) if (!this.#known.has(id)) delete coverage.perTest[id];
    return { status: "complete", tests: results, mutantCoverage: coverage };
  }

  /**
   * @param {{ testFilter?: string[], hitLimit?: number, activeMutant: { id: string } }} options
   * @returns {Promise<object>}
   */
  async mutantRun({ testFilter, hitLimit, activeMutant }) {
    const mutants = this.#mutants;
    Object.assign(mutants, {
      hitCount: 0,
      hitLimit,
      activeMutant: activeMutant.id,
      currentTestId: undefined,
    });
    try {
      return await this.#judge(testFilter === undefined ? undefined : new Set(testFilter));
    } finally {
      mutants.activeMutant = undefined;
    }
  }

  /**
   * @param {ReadonlySet<string> | undefined} wanted
   */
  async #judge(wanted) {
    /** @type {import("./collect-tests.mjs").Collected[]} */
    let tests;
    try {
      tests = this.#collect().filter(({ id }) => wanted?.has(id) ?? true);
    } catch (error) {
      return this.#killed([...(wanted ?? this.#known.keys())][0] ?? "", String(error), 0);
    }
    const worth = (/** @type {string} */ id) => {
      const { tookMs, kills } = this.#known.get(id) ?? { tookMs: 0, kills: 0 };
      return (tookMs + 1) / (1 + kills);
    };
    tests.sort((a, b) => worth(a.id) - worth(b.id));
    const ran = new Set();
    for (const [at, test] of tests.entries()) {
      const failure = await failureOf(test, ran);
      if (failure === undefined) continue;
      const known = this.#known.get(test.id);
      if (known) known.kills++;
      return this.#killed(test.id, failure, at + 1);
    }
    return { status: "survived", nrOfTests: tests.length };
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
 * Where the changed code looks for the mutant that is on.
 * @param {Record<string, any>} known
 */
function mutantsOf(known) {
  known.__stryker__ ??= {};
  return known.__stryker__;
}

/**
 * @param {import("./collect-tests.mjs").Collected} test
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

/** What Stryker reads of a plugin. */
export const strykerPlugins = [{ kind: "TestRunner", name: "warm", injectableClass: WarmRunner }];
