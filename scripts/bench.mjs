import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildForNode } from "./build-for-node.mjs";

/** Compiles the timings and the library that they time, and runs them. */
const folder = await buildForNode(
  ["bench/bench.ts", "bench/contract-workbook.ts", "bench/contract-run.ts"],
  "bench",
);
await import(pathToFileURL(join(folder, "bench.js")).href);
