import { type Kysely, sql, type Transaction } from "kysely";
import { APP_ROLE } from "./migrations.ts";
import { sendAhead } from "./send-ahead.ts";
import type { RoomTables } from "./tables.ts";

export type RoomDb = Kysely<RoomTables>;
export type RoomTrx = Transaction<RoomTables>;

/** A database with the tables of workrooms, whichever of the two it is. */
export interface Store {
  kind: "embedded" | "postgres";
  /** For what belongs to no workroom yet or to all: sign-up, backup, upkeep. Requests work through `inWorkroom`. */
  db: RoomDb;
  /** Runs SQL for the queue, which brings its own. */
  runSql(text: string, values: readonly unknown[]): Promise<{ rows: unknown[] }>;
  /** Tells all processes on this database that something happened in these workrooms. A hint: it can get lost. */
  wake(workrooms: readonly string[]): Promise<void>;
  /** Calls whenever one of the processes wakes the others; gives back how to stop. */
  onWake(listener: (workrooms: readonly string[]) => void): () => void;
  close(): Promise<void>;
}

const TRIES = 4;
/** Two transactions waited for each other, or read what the other then changed: the database asks to try again. */
const TRY_AGAIN = /^(?:40001|40P01)$/;

/** Runs the work of one request: one transaction, in the role and within the workroom that it belongs to. */
export async function inWorkroom<T>(
  { db }: Pick<Store, "db">,
  workroomId: string,
  work: (trx: RoomTrx) => Promise<T>,
): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await db.transaction().execute(async (trx) => {
        const settings = sql`select set_config('role', ${APP_ROLE}, true),
          set_config('shadewright.workroom', ${workroomId}, true),
          set_config('statement_timeout', '30s', true),
          set_config('idle_in_transaction_session_timeout', '60s', true)`;
        await sendAhead(trx, { compile: () => settings.compile(trx) });
        return await work(trx);
      });
    } catch (error) {
      if (tries >= TRIES || !TRY_AGAIN.test(String((error as { code?: unknown }).code))) throw error;
    }
  }
}
