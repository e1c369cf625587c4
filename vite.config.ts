import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url));

/** Only what this page brings along: no code from elsewhere, none from text. */
const POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "connect-src 'self' blob: data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** The content policy as part of the page, so that it holds wherever the files are served from. */
function contentPolicy(): Plugin {
  return {
    name: "content-policy",
    apply: "build",
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "Content-Security-Policy", content: POLICY },
        injectTo: "head-prepend",
      },
    ],
  };
}

const WORKER = "service-worker.js";

/** Writes the list of all built files into the service worker, so that the first visit fetches them for offline use. */
function precache(): Plugin {
  return {
    name: "precache",
    apply: "build",
    enforce: "post",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const worker = bundle[WORKER];
        if (worker?.type !== "chunk") return;
        const files = [
          ...Object.keys(bundle).filter((name) => name !== WORKER),
          "icon.svg",
          "manifest.webmanifest",
        ];
        const hash = createHash("sha256");
        for (const [name, file] of Object.entries(bundle))
          hash.update(name).update(file.type === "chunk" ? file.code : file.source);
        worker.code = worker.code
          .replace("__FILES__", JSON.stringify(["./", ...files]))
          .replace("__RELEASE__", JSON.stringify(hash.digest("hex").slice(0, 16)));
      },
    },
  };
}

/** Rooms that do nothing when they are merely imported: what a screen does not use stays out of its bundle. */
const PURE_ROOMS = /\/src\/(?!web\/)[a-z]+\//;

export default defineConfig({
  root: path("src/web"),
  base: "./",
  cacheDir: path("node_modules/.vite"),
  plugins: [react(), contentPolicy(), precache()],
  worker: { format: "es" },
  build: {
    outDir: path("dist/web"),
    emptyOutDir: true,
    target: "es2022",
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: {
        index: path("src/web/index.html"),
        "service-worker": path("src/web/offline/service-worker.ts"),
      },
      output: {
        entryFileNames: (chunk) => (chunk.name === "service-worker" ? WORKER : "assets/[name]-[hash].js"),
      },
      treeshake: { moduleSideEffects: (id) => !PURE_ROOMS.test(id) },
    },
  },
});
