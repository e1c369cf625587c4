import { type Kysely, sql } from "kysely";
import { STORE_MIGRATIONS } from "./migrations.ts";

/** Any number that no other program takes: processes that start together migrate one after the other. */
const LOCK = 7_413_366_902;

/**
 * Brings a database to the shape that this release works with.
 * @throws where a newer release has been at it
 */
// biome-ignore lint/suspicious/noExplicitAny: it runs before the tables are there
export async function migrateStore(db: Kysely<any>): Promise<{ from: number; to: number }> {
  return await db.transaction().execute(async (trx) => {
    await sql`select pg_advisory_xact_lock(${sql.lit(LOCK)})`.execute(trx);
    await sql`create table if not exists store_migrations (
      number integer primary key, name text not null, at timestamptz not null default now())`.execute(trx);
    const done = await sql<{ number: number }>`select max(number) as number from store_migrations`.execute(
      trx,
    );
    const from = done.rows[0]?.number ?? 0;
    const to = STORE_MIGRATIONS.length;
    if (from > to) {
      throw new Error(
        `The database has been taken to step ${from} by a newer release; this one knows ${to}. Use the newer release.`,
      );
    }
    for (const [index, { name, sql: text }] of STORE_MIGRATIONS.entries()) {
      if (index < from) continue;
      for (const statement of statementsOf(text)) await sql.raw(statement).execute(trx);
      await sql`insert into store_migrations (number, name) values (${index + 1}, ${name})`.execute(trx);
    }
    return { from, to };
  });
}

/** Statements one by one, as both databases take them; what stands between `$$` stays together. */
function statementsOf(text: string): string[] {
  return text
    .split(/(\$\$[\s\S]*?\$\$)/)
    .flatMap((part) => (part.startsWith("$$") ? [part] : part.split(/(;)/)))
    .reduce<string[]>(
      (all, part) => {
        if (part === ";") all.push("");
        else all[all.length - 1] += part;
        return all;
      },
      [""],
    )
    .map((one) => one.trim())
    .filter((one) => one !== "");
}
