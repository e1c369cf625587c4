import type { PGlite } from "@electric-sql/pglite";
import { CompiledQuery, type DatabaseConnection, type Dialect, type Driver, type QueryResult } from "kysely";
import { dialectWith } from "./dialect-with.ts";

/** Kysely on the embedded database, which has one connection: whoever comes meanwhile waits for it. */
export function pgliteDialect(pglite: PGlite): Dialect {
  return dialectWith(() => new OneAtATime(pglite));
}

class OneAtATime implements Driver {
  readonly #connection: DatabaseConnection;
  #last: Promise<void> = Promise.resolve();
  #release = () => {};

  constructor(pglite: PGlite) {
    this.#connection = {
      async executeQuery<R>({ sql, parameters }: CompiledQuery): Promise<QueryResult<R>> {
        const { rows, affectedRows } = await pglite.query<R>(sql, [...parameters]);
        return { rows, numAffectedRows: BigInt(affectedRows ?? 0) };
      },
      // biome-ignore lint/correctness/useYield: it cannot stream, and says so
      async *streamQuery() {
        throw new Error("The embedded database does not stream.");
      },
    };
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<DatabaseConnection> {
    const before = this.#last;
    let release = () => {};
    this.#last = new Promise((done) => {
      release = done;
    });
    await before;
    this.#release = release;
    return this.#connection;
  }

  async releaseConnection(): Promise<void> {
    this.#release();
  }

  async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin"));
  }

  async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("commit"));
  }

  async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("rollback"));
  }

  async destroy(): Promise<void> {
    await this.#last;
  }
}
