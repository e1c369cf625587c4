import { sql } from "kysely";
import { ROOM_TABLES, STORE_MIGRATIONS } from "../store/migrations.ts";
import type { Store } from "../store/store.ts";

const FORMAT = "shadewright-workroom-backup";
const AT_ONCE = 200;

/**
 * Every row of every workroom, a line each, as they were at one moment. Passwords and secrets are in it as they are kept:
 * hashed. Keep the file as carefully as the database.
 */
export async function* backupLines({ db }: Store): AsyncGenerator<string> {
  const lines: string[] = [];
  let rows = 0;
  yield `${JSON.stringify({ format: FORMAT, version: 1, step: STORE_MIGRATIONS.length })}\n`;
  // A connection of its own for the whole of it; what is written meanwhile is not in it.
  const queue = rowsOf(db);
  for await (const { table, row } of queue) {
    rows++;
    lines.push(`["${table}",${row}]\n`);
    if (lines.length === AT_ONCE) yield lines.splice(0).join("");
  }
  yield `${lines.join("")}${JSON.stringify({ rows })}\n`;
}

/** Rows as PostgreSQL writes them in JSON: every digit of a moment, every byte, the fields of a document in their order. */
async function* rowsOf(db: Store["db"]): AsyncGenerator<{ table: string; row: string }> {
  const trx = await db.startTransaction().setIsolationLevel("repeatable read").execute();
  try {
    for (const table of ROOM_TABLES) {
      await sql`declare every_row no scroll cursor for
        select row_to_json(t)::text as row from ${sql.table(table)} t`.execute(trx);
      for (;;) {
        const { rows } = await sql<{ row: string }>`fetch ${sql.lit(AT_ONCE)} from every_row`.execute(trx);
        for (const { row } of rows) yield { table, row };
        if (rows.length < AT_ONCE) break;
      }
      await sql`close every_row`.execute(trx);
    }
  } finally {
    await trx.rollback().execute();
  }
}

/** A backup that cannot be put back, and why. */
export class BackupUnfit extends Error {}

/**
 * Puts a backup into an empty database: all of it or nothing.
 * @returns how many rows there were
 * @throws {BackupUnfit} a file that is no backup, is cut short or newer; a database that holds a workroom
 */
export async function restoreLines({ db }: Store, lines: AsyncIterable<string>): Promise<number> {
  return await db.transaction().execute(async (trx) => {
    const there = await trx.selectFrom("workrooms").select("id").limit(1).execute();
    if (there.length > 0)
      throw new BackupUnfit("The database holds a workroom already. Restore into an empty one.");
    let rows = -1;
    let told: number | undefined;
    for await (const line of lines) {
      if (line === "") continue;
      if (told !== undefined) throw new BackupUnfit("The backup goes on after its end.");
      const read = readLine(line);
      if (rows < 0) checkHead(read);
      else if (Array.isArray(read)) await putRow(trx, read, line);
      else told = Number((read as { rows?: unknown }).rows);
      rows++;
    }
    if (rows < 0) throw new BackupUnfit("The backup is empty.");
    if (told === undefined || told !== rows - 1)
      throw new BackupUnfit("The backup is cut short: its last line is missing.");
    await sql`select setval(pg_get_serial_sequence('audit', 'number'),
      greatest(1, (select max(number) from audit)))`.execute(trx);
    return told;
  });
}

function readLine(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    throw new BackupUnfit("The backup holds a line that is not JSON; it is damaged or cut short.");
  }
}

function checkHead(head: unknown): void {
  const { format, step } = (head ?? {}) as { format?: unknown; step?: unknown };
  if (format !== FORMAT) throw new BackupUnfit("The file is no backup of a workroom.");
  if (step !== STORE_MIGRATIONS.length) {
    throw new BackupUnfit(
      `The backup is of step ${String(step)} and this release works with ${STORE_MIGRATIONS.length}. Restore it with the release that wrote it, and update then.`,
    );
  }
}

async function putRow(trx: Store["db"], read: unknown[], line: string): Promise<void> {
  const table = String(read[0]);
  if (!ROOM_TABLES.includes(table))
    throw new BackupUnfit(`The backup has a table that there is not: ${table}.`);
  // Cut out of the line as it stands: read and written again, a document would lose the spelling of its numbers.
  const row = line.slice(JSON.stringify(table).length + 2, line.lastIndexOf("]"));
  try {
    await sql`insert into ${sql.table(table)} overriding system value
      select * from json_populate_record(null::${sql.table(table)}, ${row}::json)`.execute(trx);
  } catch (error) {
    // A row that does not fit the others, or holds what its column does not take.
    if (!/^2[23]/.test(String((error as { code?: unknown }).code))) throw error;
    throw new BackupUnfit(`The backup is damaged: a row of ${table} does not fit.`);
  }
}
