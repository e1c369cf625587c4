import { mkdirSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";
import { ROOT } from "./run.mjs";

/** Below the project, so that what is bundled finds the packages it leaves out. */
const OUT = join(ROOT, "out/bench");

/**
 * Compiles the timings and the library that they time, and runs them: a loader that compiles while it runs, as the tests
 * use one, makes each call dearer than it is for who uses the library.
 */
mkdirSync(OUT, { recursive: true });
await build({
  configFile: false,
  root: ROOT,
  logLevel: "warn",
  build: {
    ssr: join(ROOT, "bench/bench.ts"),
    outDir: OUT,
    emptyOutDir: true,
    target: "node20",
    minify: false,
  },
  plugins: [
    {
      // Scripts find the project by where they stand, so they are left there.
      name: "scripts-stay",
      enforce: "pre",
      resolveId: (id, importer) =>
        importer !== undefined && /scripts\/[\w-]+\.mjs$/.test(id)
          ? { id: pathToFileURL(resolve(dirname(importer), id)).href, external: true }
          : undefined,
    },
  ],
});
await import(pathToFileURL(join(OUT, "bench.js")).href);
