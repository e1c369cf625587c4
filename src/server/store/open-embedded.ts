import { join } from "node:path";
import { Kysely, sql } from "kysely";
import { lockFolder } from "./folder-lock.ts";
import { migrateStore } from "./migrate.ts";
import { pgliteDialect } from "./pglite-dialect.ts";
import type { Store } from "./store.ts";
import type { RoomTables } from "./tables.ts";

/**
 * Opens the embedded database in a folder, for this process alone. It takes some hundred megabytes of memory, and what it
 * wrote outlives the process but not a power cut: it leaves to the system when its files reach the disk.
 * @param folder left out: in memory, gone with the process
 * @throws {FolderTaken} while another process has the folder
 */
export async function openEmbedded(folder?: string): Promise<Store> {
  const unlock = folder === undefined ? () => {} : lockFolder(folder);
  try {
    const { PGlite } = await import("@electric-sql/pglite");
    const pglite = await PGlite.create(folder === undefined ? {} : { dataDir: join(folder, "data") });
    const db = new Kysely<RoomTables>({ dialect: pgliteDialect(pglite) });
    await migrateStore(db);
    const listeners = new Set<(workrooms: readonly string[]) => void>();
    return {
      kind: "embedded",
      db,
      runSql: async (text, values) => {
        if (values.length > 0) {
          return await db.connection().execute(() => pglite.query(text, [...values]));
        }
        const results = await db.connection().execute(() => pglite.exec(text));
        return { rows: results.at(-1)?.rows ?? [] };
      },
      wake: async (workrooms) => {
        for (const listener of listeners) listener(workrooms);
      },
      onWake: (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
      close: async () => {
        await sql`select 1`.execute(db);
        await db.destroy();
        await pglite.close();
        unlock();
      },
    };
  } catch (error) {
    unlock();
    throw error;
  }
}
