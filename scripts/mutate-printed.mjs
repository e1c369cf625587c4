import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./run.mjs";

/**
 * Prints wrong numbers on purpose, one at a time (`test/printed/mutants.json`), and says which ones the tests of what
 * is printed notice: `npm run mutate:printed`. Works on a copy, which is thrown away. Ends with 1 where one survives.
 */
const COPY = join(ROOT, ".mutants/printed");
const PARTS = [
  "src",
  "test",
  "schema",
  "examples",
  "scripts",
  "package.json",
  "vitest.config.ts",
  "tsconfig.json",
  "tsconfig.base.json",
];

/** @type {{ file: string, from: string, to: string, what: string }[]} */
const mutants = JSON.parse(readFileSync(join(ROOT, "test/printed/mutants.json"), "utf8"));

rmSync(COPY, { recursive: true, force: true });
mkdirSync(COPY, { recursive: true });
for (const part of PARTS) cpSync(join(ROOT, part), join(COPY, part), { recursive: true });
symlinkSync(join(ROOT, "node_modules"), join(COPY, "node_modules"));

/** @returns {boolean} whether all tests of what is printed pass */
function passes() {
  const args = [
    "run",
    "--project",
    "unit",
    "--maxWorkers=1",
    "--bail=1",
    "--reporter=dot",
    "test/printed/read-back",
  ];
  return spawnSync(join(COPY, "node_modules/.bin/vitest"), args, { cwd: COPY }).status === 0;
}

if (!passes()) throw new Error("the tests of what is printed fail before anything is changed");
let survived = 0;
for (const { file, from, to, what } of mutants) {
  const path = join(COPY, file);
  const source = readFileSync(path, "utf8");
  if (source.split(from).length !== 2) throw new Error(`${file} has not once what is to be changed: ${what}`);
  writeFileSync(
    path,
    source.replace(from, () => to),
  );
  const lives = passes();
  writeFileSync(path, source);
  if (lives) survived++;
  console.log(`${lives ? "SURVIVED" : "killed  "}  ${what} (${file})`);
}
rmSync(COPY, { recursive: true, force: true });
console.log(`${mutants.length - survived} of ${mutants.length} killed`);
process.exit(survived === 0 ? 0 : 1);
