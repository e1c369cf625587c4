/** A file that another app shared waits here, under this name, until the page has started. */
const SHARED_FILES = "shared-files";
const WAITING = "./shared-file";
const NAME_HEADER = "x-file-name";

/** Keeps a shared file for the page that is about to open; called by the service worker. */
export async function keepSharedFile(form: FormData): Promise<void> {
  const file = form.get("file");
  if (!(file instanceof File)) return;
  const cache = await caches.open(SHARED_FILES);
  const headers = { "content-type": file.type, [NAME_HEADER]: encodeURIComponent(file.name) };
  await cache.put(WAITING, new Response(file, { headers }));
}

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
