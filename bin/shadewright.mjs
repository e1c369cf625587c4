#!/usr/bin/env node
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";

const path = (/** @type {string} */ name) => fileURLToPath(new URL(`../${name}`, import.meta.url));
const entry = path("dist/cli/process.js");

if (!existsSync(entry)) {
  console.error("The command line is not built yet. In the checkout, run: npm ci");
  process.exit(1);
}
// An installed package has no sources beside it; in a checkout they can run ahead of the build.
if (existsSync(path("src/cli")) && existsSync(path("scripts/freshness.mjs"))) {
  const { isNotTest, newestUnder } = await import("../scripts/freshness.mjs");
  if (newestUnder(path("src"), (name) => name !== "web" && isNotTest(name)) > newestUnder(entry)) {
    console.error(
      "Note: the sources are newer than the built command line. To bring it up: npm run build:lib",
    );
  }
}
try {
  const { runProcess } = await import(pathToFileURL(entry).href);
  await runProcess();
} catch (error) {
  console.error(`Shadewright could not start: ${error instanceof Error ? error.message : error}`);
  console.error("In the checkout, `npm ci` puts this right.");
  process.exit(1);
}
