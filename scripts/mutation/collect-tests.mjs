import { expect, vi } from "vitest";

/**
 * One test, and what is run before and after it, the outermost first.
 * @typedef {{
 *   id: string, file: string, run: (context: object) => unknown,
 *   before: Hook[], after: Hook[], once: Hook[],
 * }} Collected
 * @typedef {() => unknown} Hook
 * @typedef {{ name: string, before: Hook[], after: Hook[], once: Hook[] }} Group
 * @typedef {(name: string | Function, ...rest: any[]) => void} Declare
 */

/** Stands in for the test tool while test files are read, one after the other: lists their tests, to be run singly. */
export function collector() {
  /** @type {Collected[]} */
  const tests = [];
  /** @type {Group[]} */
  let groups = [];
  let file = "";

  /**
   * @param {string} path of the file whose tests come next
   */
  function beginFile(path) {
    file = path;
    groups = [{ name: path, before: [], after: [], once: [] }];
    // Numbered by itself: which files were read before makes no difference to a test's name.
    tests.length = 0;
  }

  /** @type {Declare} */
  const declareGroup = (name, ...rest) => {
    groups.push({ name: String(name), before: [], after: [], once: [] });
    rest.find((one) => typeof one === "function")?.();
    groups.pop();
  };

  /** @type {Declare} */
  const declareTest = (name, ...rest) => {
    const names = [...groups.map((group) => group.name), String(name)].join(" > ");
    // The lists are those of the groups themselves: a hook may follow the test.
    const own = [...groups];
    tests.push({
      id: `${names} #${tests.length}`,
      file,
      run: rest.find((one) => typeof one === "function") ?? (() => {}),
      get before() {
        return own.flatMap((group) => group.before);
      },
      get after() {
        return own.flatMap((group) => group.after).reverse();
      },
      get once() {
        return own.flatMap((group) => group.once);
      },
    });
  };

  /** @param {"before" | "after" | "once"} list */
  const hook = (list) => (/** @type {Hook} */ run) => void groups.at(-1)?.[list].push(run);
  const describe = withRows(declareGroup);
  const test = withRows(declareTest);
  const stand = {
    describe,
    test,
    it: test,
    expect,
    vi,
    beforeAll: hook("once"),
    beforeEach: hook("before"),
    afterEach: hook("after"),
    afterAll: () => {},
  };
  return { beginFile, tests, stand };
}

/**
 * @param {Declare} declare
 */
function withRows(declare) {
  const each =
    (/** @type {readonly unknown[]} */ rows) =>
    (/** @type {string} */ name, /** @type {any[]} */ ...rest) => {
      const run = rest.find((one) => typeof one === "function");
      for (const row of rows) declare(name, () => (Array.isArray(row) ? run(...row) : run(row)));
    };
  const skip = () => {};
  return Object.assign(declare, {
    each,
    skip,
    skipIf: (/** @type {unknown} */ condition) => (condition ? skip : declare),
  });
}
