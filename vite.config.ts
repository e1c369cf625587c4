import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { licencesText, packageOf } from "./scripts/bundled-licences.mjs";

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
        // A service worker that imports is not taken by every browser, and by none unless it is told to.
        if (worker.imports.length > 0) throw new Error(`${WORKER} imports ${worker.imports.join(", ")}`);
        const files = [
          ...Object.keys(bundle).filter((name) => name !== WORKER),
          "icon.svg",
          "icon-192.png",
          "icon-512.png",
          "icon-maskable-512.png",
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

const bundled = new Set<string>();

/** Notes whose code and fonts go into a bundle; those of workers are built before that of the page. */
function notePackages(): Plugin {
  return {
    name: "note-packages",
    apply: "build",
    generateBundle(_options, bundle) {
      for (const file of Object.values(bundle)) {
        const sources = file.type === "chunk" ? file.moduleIds : file.originalFileNames;
        for (const name of sources.map(packageOf)) if (name !== undefined) bundled.add(name);
      }
    },
  };
}

/** Ships the licences of all that with the page. */
function shipLicences(): Plugin {
  return {
    name: "ship-licences",
    apply: "build",
    generateBundle() {
      this.emitFile({ type: "asset", fileName: "licences.txt", source: licencesText(bundled) });
    },
  };
}

/** Rooms that do nothing when they are merely imported: what a screen does not use stays out of its bundle. */
const PURE_ROOMS = /\/src\/(?!web\/)[a-z]+\//;
const treeshake = { moduleSideEffects: (id: string) => !PURE_ROOMS.test(id) };

export default defineConfig({
  root: path("src/web"),
  base: "./",
  cacheDir: path("node_modules/.vite"),
  plugins: [
    react({ jsxImportSource: "#spelt" }),
    contentPolicy(),
    notePackages(),
    shipLicences(),
    precache(),
  ],
  worker: { format: "es", plugins: () => [notePackages()], rolldownOptions: { treeshake } },
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
      treeshake,
    },
  },
});
