import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { isNotTest, newestUnder } from "./freshness.mjs";
import { ROOT, runTool } from "./run.mjs";

export const WEB = join(ROOT, "dist/web");
const SOURCES = ["src", "index.html", "public", "examples", "vite.config.ts", "package-lock.json"];

function isStale() {
  const built = newestUnder(join(WEB, "index.html"));
  return SOURCES.some((source) => newestUnder(join(ROOT, source), isNotTest) > built);
}

/**
 * Writes .br and .gz beside every file that shrinks, so that the server never compresses while one waits.
 * @param {string} folder
 */
function precompress(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) precompress(path);
    else if (/\.(?:js|css|html|svg|json|webmanifest|wasm|ttf|map)$/.test(entry.name)) {
      const bytes = readFileSync(path);
      writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }));
      const params = {
        [constants.BROTLI_PARAM_QUALITY]: 9,
        [constants.BROTLI_PARAM_SIZE_HINT]: statSync(path).size,
      };
      writeFileSync(`${path}.br`, brotliCompressSync(bytes, { params }));
    }
  }
}

/**
 * Builds the planner into dist/web.
 * @param {{ warnings?: boolean }} [told] whether warnings of the bundler are shown, which only a developer can use
 * @returns {boolean} whether it was built
 */
export function buildWeb({ warnings = true } = {}) {
  // A test runner sets NODE_ENV to "test", which would build the slow, talkative React into what is served.
  if (!runTool("vite", ["build", "--logLevel", warnings ? "warn" : "error"], { NODE_ENV: "production" }))
    return false;
  precompress(WEB);
  return true;
}

/** Builds the planner where its sources are newer. Ends the program when that fails. */
export function ensureWeb() {
  if (existsSync(join(WEB, "index.html")) && !isStale()) return;
  console.error("Building the planner …");
  if (buildWeb({ warnings: false })) return;
  console.error("The planner could not be built; see the message above.");
  process.exit(1);
}

if (process.argv[1] === import.meta.filename) process.exit(buildWeb() ? 0 : 1);
