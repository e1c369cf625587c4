import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildForNode } from "./build-for-node.mjs";

/** Compiles the search for job files that go wrong, and runs it: `npm run fuzz -- --minutes 10`. */
const folder = await buildForNode(["test/fuzz/fuzz.ts", "test/fuzz/worker.ts"], "fuzz");
await import(pathToFileURL(join(folder, "fuzz.js")).href);
