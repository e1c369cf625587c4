/** Where `keep-shared-file` has put a file that another app shared, until the page has started. */
const SHARED_FILES = "shared-files";
const WAITING = "./shared-file";
const NAME_HEADER = "x-file-name";

/** The file that was shared, once; undefined where none waits. */
export async function takeSharedFile(): Promise<File | undefined> {
  // Pages that came by an unguarded line have no caches, and no service worker to fill them.
  if (!("caches" in globalThis) || !(await caches.has(SHARED_FILES))) return undefined;
  const cache = await caches.open(SHARED_FILES);
  const waiting = await cache.match(WAITING);
  await caches.delete(SHARED_FILES);
  if (waiting === undefined) return undefined;
  const name = decodeURIComponent(waiting.headers.get(NAME_HEADER) ?? "shared.json");
  return new File([await waiting.blob()], name, { type: waiting.headers.get("content-type") ?? "" });
}
