import { mkdirSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";
import { ROOT } from "./run.mjs";

/**
 * Compiles scripts in TypeScript with all of the project that they use, into a folder below `out`: a loader that compiles
 * while it runs makes each call dearer than it is for who uses the library.
 * @param {readonly string[]} paths from the top of the project
 * @param {string} name of the folder
 * @returns {Promise<string>} the folder
 */
export async function buildForNode(paths, name) {
  // Below the project, so that what is bundled finds the packages it leaves out.
  const folder = join(ROOT, "out", name);
  mkdirSync(folder, { recursive: true });
  await build({
    configFile: false,
    root: ROOT,
    logLevel: "warn",
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: true,
      target: "node20",
      minify: false,
      rolldownOptions: {
        input: Object.fromEntries(paths.map((path) => [basename(path, ".ts"), join(ROOT, path)])),
      },
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
  return folder;
}
