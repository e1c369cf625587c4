/// <reference lib="webworker" />
import { keepSharedFile } from "./keep-shared-file.ts";

/** Replaced by the build: every file of this release, and a name that changes with them. */
declare const __FILES__: string[];
declare const __RELEASE__: string;

const scope = globalThis as unknown as ServiceWorkerGlobalScope;
const CACHE = `shadewright-${__RELEASE__}`;

scope.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(__FILES__.map((file) => new Request(file, { cache: "reload" })))),
  );
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((name) => name.startsWith("shadewright-") && name !== CACHE)
            .map((name) => caches.delete(name)),
        ),
      )
      .then(() => scope.clients.claim()),
  );
});

/** Another app shared a file: it waits until the page has started. */
scope.addEventListener("fetch", (event) => {
  const { request } = event;
  const isShare = request.url === new URL("./share", scope.registration.scope).href;
  if (request.method !== "POST" || !isShare) return;
  event.respondWith(
    request
      .formData()
      .then(keepSharedFile)
      .then(() => Response.redirect(scope.registration.scope, 303)),
  );
});

/** The page itself whatever its address says after the hash or the question mark; files by their name. */
scope.addEventListener("fetch", (event) => {
  const { request } = event;
  const { scope: here } = scope.registration;
  // What the workroom's server says is never kept.
  if (request.method !== "GET" || !request.url.startsWith(here) || request.url.startsWith(`${here}api/`))
    return;
  const wanted: Request | string = request.mode === "navigate" ? "./" : request;
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(wanted, { ignoreSearch: true, ignoreVary: true }))
      .then((kept) => kept ?? fetch(request)),
  );
});

/** The maker asked for the newer release. */
scope.addEventListener("message", (event) => {
  if (event.data === "take-over") void scope.skipWaiting();
});
