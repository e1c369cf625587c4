import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { emptyFolder, launched, STACK_LINE } from "./typed.ts";

const PAGES = [
  ...readdirSync(".").filter((name) => name.endsWith(".md")),
  ...readdirSync("docs", { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md"))
    .map((name) => join("docs", name)),
];

const textOf = (page: string) => readFileSync(page, "utf8");
/** Lines of code: indented by four blanks, or fenced as `sh`. */
const commandsOf = (page: string): string[] => {
  const fenced = [...textOf(page).matchAll(/^```sh\n([\s\S]*?)^```/gm)].flatMap(([, code = ""]) =>
    code.split("\n"),
  );
  const indented = textOf(page)
    .split("\n")
    .filter((line) => /^ {4}(?:npm|npx) /.test(line));
  return [...fenced, ...indented].map((line) => line.trim()).filter((line) => /^(?:npm|npx) /.test(line));
};

/** Words of a command line, quotes taken off. */
function wordsOf(command: string): string[] {
  return [...command.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(([, a, b, c]) => a ?? b ?? c ?? "");
}

/** What serves and keeps a workroom goes on until it is stopped, or needs one: `room.test.ts` types it. */
const OF_A_WORKROOM = /^npx shadewright (?:serve|backup|restore|doctor)\b/;

const BUILT_IN = new Set(["audit", "ci", "install", "start", "test", "i"]);

describe.each(PAGES)("%s", (page) => {
  test("its links to files lead somewhere", () => {
    const targets = [...textOf(page).matchAll(/\]\(([^)\s#]+)(?:#[^)]*)?\)/g)].map(
      ([, target = ""]) => target,
    );
    const lost = targets.filter(
      (target) => !/^(?:https?|mailto):/.test(target) && !existsSync(join(dirname(page), target)),
    );
    expect(lost).toEqual([]);
  });

  test("the scripts that it names are there", () => {
    const { scripts } = JSON.parse(readFileSync("package.json", "utf8"));
    const named = [...textOf(page).matchAll(/\bnpm (?:run (?:-s )?)?([\w:-]+)/g)].map(
      ([whole, name = ""]) => ({ whole, name }),
    );
    const missing = named.filter(({ whole, name }) =>
      whole.includes(" run ") ? !scripts[name] : !scripts[name] && !BUILT_IN.has(name),
    );
    expect(missing.map(({ whole }) => whole)).toEqual([]);
  });
});

describe("what the pages tell to type", () => {
  const typing = PAGES.map((page) => ({
    page,
    commands: commandsOf(page).filter(
      (line) => line.startsWith("npx shadewright ") && !OF_A_WORKROOM.test(line),
    ),
  })).filter(({ commands }) => commands.length > 0);

  test("is told somewhere", () => {
    expect(typing.map(({ page }) => page)).toContain("README.md");
  });

  test.each(typing)("$page: its commands work, one after the other", async ({ commands }) => {
    const folder = emptyFolder();
    for (const command of commands) {
      const [, , ...words] = wordsOf(command);
      const ending = await launched(words, "", folder);
      expect([command, ending.code]).toEqual([command, 0]);
      expect(ending.err).not.toMatch(STACK_LINE);
    }
  });
});

describe("code in the pages", () => {
  // Inside the checkout, so that `shadewright` is found by its own name, as in a project that installed it.
  const folder = resolve("out/docs");
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const snippets = PAGES.flatMap((page) =>
    [...textOf(page).matchAll(/^```ts\n([\s\S]*?)^```/gm)].map(([, code = ""], n) => ({ page, n, code })),
  );

  /** What a project of somebody else might have. */
  const compilerOptions = {
    module: "NodeNext",
    target: "ES2023",
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    types: ["node"],
  };

  function ran(tool: string, ...words: string[]): string {
    // What the code writes goes into a folder of its own.
    const { status, stdout, stderr } = spawnSync(resolve("node_modules/.bin", tool), words, {
      encoding: "utf8",
      cwd: emptyFolder(),
    });
    expect([status, stderr, status === 0 ? "" : stdout]).toEqual([0, "", ""]);
    return stdout;
  }

  function checkedAndRun(name: string, code: string): string {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${name}.ts`), code);
    writeFileSync(join(folder, `${name}.json`), JSON.stringify({ compilerOptions, files: [`${name}.ts`] }));
    ran("tsc", "-p", join(folder, `${name}.json`));
    return ran("tsx", join(folder, `${name}.ts`));
  }

  test("is told somewhere", () => {
    expect(snippets.length).toBeGreaterThan(0);
  });

  test.each(snippets)(
    "$page, number $n: checks and runs with the library as it is shipped",
    ({ page, n, code }) => {
      expect(checkedAndRun(`${page.replace(/\W+/g, "-")}-${n}`, code)).not.toMatch(/undefined|NaN/);
    },
  );

  test("the types that are shipped are those of the library, not anything at all", () => {
    const code = `
      import { newJob, plan } from "shadewright";
      const { shades } = plan(newJob({ id: "a", name: "A", system: "metric" }));
      // @ts-expect-error: a number
      const wrong: string = shades.length;
      // @ts-expect-error: no such field
      shades[0]?.grid.colour;
      console.log(wrong);`;
    expect(checkedAndRun("types", code)).toBe("0\n");
  });
});
