import type { Compilable, CompiledQuery, QueryResult, Transaction } from "kysely";
import type { RoomTables } from "./tables.ts";

/** Queries that are sent without waiting, and their answers once they are on their way. */
const ahead = new WeakMap<CompiledQuery, Promise<QueryResult<unknown>> | undefined>();

/**
 * Sends a query whose answer is not needed yet: it goes to the database together with the next one, since the way there
 * and back is what an edit mostly waits for. A fault of it is the fault of that next one, or of the commit.
 * @returns gives the rows; to be asked after the next query
 */
export async function sendAhead<R>(
  trx: Transaction<RoomTables>,
  query: Compilable<R>,
): Promise<() => Promise<R[]>> {
  const compiled = query.compile();
  ahead.set(compiled, undefined);
  const atOnce = await trx.executeQuery(compiled);
  return async () => ((await ahead.get(compiled)) as QueryResult<R> | undefined)?.rows ?? atOnce.rows;
}

/** For drivers: whether a query need not be waited for. */
export function isSentAhead(query: CompiledQuery): boolean {
  return ahead.has(query);
}

/** For drivers: where the answer of such a query will be. */
export function answerLater(query: CompiledQuery, answer: Promise<QueryResult<unknown>>): void {
  // Its fault is told to whoever waits next; nobody may ever ask for its rows.
  answer.catch(() => {});
  ahead.set(query, answer);
}
