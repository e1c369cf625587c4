import { CompiledQuery, type DatabaseConnection, type Dialect, type Driver, type QueryResult } from "kysely";
import type { Pool, PoolClient } from "pg";
import { dialectWith } from "./dialect-with.ts";
import { answerLater, isSentAhead } from "./send-ahead.ts";

/**
 * Kysely on PostgreSQL by connections that send without waiting for what was sent before (`pipeline` of the pool):
 * what is sent ahead, and what begins a transaction, goes in one packet with the query after it.
 */
export function pipelinedDialect(pool: Pool): Dialect {
  return dialectWith(() => new PipelinedDriver(pool));
}

class PipelinedDriver implements Driver {
  readonly #pool: Pool;

  constructor(pool: Pool) {
    this.#pool = pool;
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<PipelinedConnection> {
    return new PipelinedConnection(await this.#pool.connect());
  }

  async beginTransaction(connection: PipelinedConnection): Promise<void> {
    connection.sendAhead(CompiledQuery.raw("begin"));
  }

  async commitTransaction(connection: PipelinedConnection): Promise<void> {
    // Answered with ROLLBACK where a statement before it failed.
    const { command } = await connection.ask(CompiledQuery.raw("commit"));
    if (command !== "COMMIT") throw new Error(`a transaction ended with ${command}`);
  }

  async rollbackTransaction(connection: PipelinedConnection): Promise<void> {
    await connection.rollBack();
  }

  async releaseConnection(connection: PipelinedConnection): Promise<void> {
    connection.release();
  }

  async destroy(): Promise<void> {
    await this.#pool.end();
  }
}

class PipelinedConnection implements DatabaseConnection {
  readonly #client: PoolClient;
  #ahead: Promise<PgAnswer>[] = [];
  #isSpoilt = false;

  constructor(client: PoolClient) {
    this.#client = client;
  }

  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    if (!isSentAhead(query)) return resultOf<R>(await this.ask(query));
    answerLater(query, this.sendAhead(query).then(resultOf));
    return { rows: [] };
  }

  /** Sends without waiting: the packet leaves with the next query that is waited for. */
  sendAhead(query: CompiledQuery): Promise<PgAnswer> {
    if (this.#ahead.length === 0) this.#client.connection.stream.cork();
    const answer = this.#send(query);
    this.#ahead.push(answer);
    // Whoever waits next is told; until then it is nobody's.
    answer.catch(() => {});
    return answer;
  }

  /** Sends and waits, for what was sent ahead as well: its fault comes first, since it is the cause. */
  async ask(query: CompiledQuery): Promise<PgAnswer> {
    const { ahead, answer } = this.#sendAll(query);
    const [last] = await Promise.all([answer, ...ahead]);
    return last;
  }

  async rollBack(): Promise<void> {
    try {
      // What was sent ahead may have failed: that is why this is undone.
      await this.#sendAll(CompiledQuery.raw("rollback")).answer;
    } catch (error) {
      this.#isSpoilt = true;
      throw error;
    }
  }

  release(): void {
    this.#client.release(this.#isSpoilt);
  }

  // biome-ignore lint/correctness/useYield: nothing here streams, and it says so
  async *streamQuery(): AsyncIterableIterator<never> {
    throw new Error("Queries of a workroom do not stream.");
  }

  /** The packet leaves, with this query as its last. */
  #sendAll(query: CompiledQuery): { ahead: Promise<PgAnswer>[]; answer: Promise<PgAnswer> } {
    const ahead = this.#ahead;
    this.#ahead = [];
    const answer = this.#send(query);
    if (ahead.length > 0) this.#client.connection.stream.uncork();
    return { ahead, answer };
  }

  #send({ sql, parameters }: CompiledQuery): Promise<PgAnswer> {
    return this.#client.query(sql, [...parameters]);
  }
}

interface PgAnswer {
  command: string;
  rowCount: number | null;
  rows: unknown[];
}

function resultOf<R>({ command, rowCount, rows }: PgAnswer): QueryResult<R> {
  const isChange = ["INSERT", "UPDATE", "DELETE", "MERGE"].includes(command);
  return { rows: rows as R[], ...(isChange && { numAffectedRows: BigInt(rowCount ?? 0) }) };
}
