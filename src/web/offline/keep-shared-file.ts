// The service worker is one file: it shares no code with the pages, and these names stand with `take-shared-file` too.
const SHARED_FILES = "shared-files";
const WAITING = "./shared-file";
const NAME_HEADER = "x-file-name";

/** Keeps a shared file for the page that is about to open. */
export async function keepSharedFile(form: FormData): Promise<void> {
  const file = form.get("file");
  if (!(file instanceof File)) return;
  const cache = await caches.open(SHARED_FILES);
  const headers = { "content-type": file.type, [NAME_HEADER]: encodeURIComponent(file.name) };
  await cache.put(WAITING, new Response(file, { headers }));
}
