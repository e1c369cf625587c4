import { isBuiltin } from "node:module";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";

const ENTRY = "\0tests";

/**
 * One script of some test files and of all that they import, for `compileFunction`; packages stay outside. It exports
 * `files`: by its path, what reads a test file. Until then its code does not run.
 * @param {string} root the copy of the project that it is made from
 * @param {readonly string[]} tests their paths below it
 * @param {readonly string[]} first read before any test, so that what they do once does not count as a test's own
 * @returns {Promise<string>}
 */
export async function bundleTests(root, tests, first) {
  const lines = [
    ...["test/seed.ts", ...first].map((path) => `import ${JSON.stringify(resolve(root, path))};`),
    "export const files = {",
    ...tests.map((path) => `${JSON.stringify(path)}: () => import(${JSON.stringify(resolve(root, path))}),`),
    "};",
  ];
  const built = await build({
    configFile: false,
    root,
    logLevel: "error",
    ssr: { external: true },
    build: {
      ssr: true,
      write: false,
      target: "node20",
      minify: false,
      rolldownOptions: {
        input: ENTRY,
        output: { format: "cjs", codeSplitting: false },
        external: (id) => isBuiltin(id) || /^[@a-z]/.test(id),
        treeshake: false,
      },
    },
    plugins: [
      {
        name: "tests-in-one",
        enforce: "pre",
        resolveId: (id) => (id === ENTRY ? id : undefined),
        load: (id) => (id === ENTRY ? lines.join("\n") : undefined),
        transform: (code, id) =>
          code.includes("import.meta.url")
            ? code.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(id).href))
            : undefined,
      },
    ],
  });
  const [chunk, ...more] = "output" in built ? built.output : [];
  if (chunk?.type !== "chunk" || more.some(({ type }) => type === "chunk"))
    throw new Error("the tests are not one script");
  return chunk.code;
}
