import type { Page } from "playwright-core";

type Store = "jobs" | "cards" | "marks" | "bin" | "parts";

/** One record of the page's database as it lies there, with no help of the planner's code. */
export function storedRecord(page: Page, store: Store, key: string): Promise<Record<string, unknown>> {
  return page.evaluate(
    ([store, key]) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open("shadewright");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const request = opening.result.transaction(store).objectStore(store).get(key);
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            opening.result.close();
            resolve(request.result);
          };
        };
      }),
    [store, key] as const,
  );
}

/** Spoils a record of the page's database: these fields are set, or the whole record goes. */
export function spoilRecord(
  page: Page,
  store: Store,
  key: string,
  change: Record<string, unknown> | "lost",
): Promise<void> {
  return page.evaluate(
    ([store, key, change]) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open("shadewright");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(store, "readwrite");
          const records = transaction.objectStore(store);
          const request = records.get(key);
          request.onsuccess = () => {
            if (change === "lost") records.delete(key);
            else records.put({ ...request.result, ...change });
          };
          transaction.onerror = () => reject(transaction.error);
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    [store, key, change] as const,
  );
}
