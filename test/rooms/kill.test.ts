import { type ChildProcess, spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, describe, expect, inject, test } from "vitest";
import { embeddedDoor } from "../../src/server/index.ts";
import type { NumberedOperation, Operation, OperationAnswers } from "../../src/workroom/protocol/index.ts";
import { type OwnPostgres, ownPostgres } from "./postgres.ts";
import { jobOf, nameOf, operationOf, PASSWORD, SET_UP_CODE } from "./room-for-tests.ts";

const folder = mkdtempSync(join(tmpdir(), "shadewright-kill-"));
const running = new Set<ChildProcess>();
afterAll(() => {
  for (const child of running) child.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

/** An answer that was not to be had again by asking again. */
class NotTaken extends Error {}

/** A server process and a browser that speaks to it, which goes on when another process takes its place. */
class Killed {
  #child: ChildProcess | undefined;
  #port = "";
  #cookie = "";
  readonly #home: string;
  readonly #url: string | undefined;

  constructor(name: string, url?: string) {
    this.#home = join(folder, name);
    this.#url = url;
  }

  async start(): Promise<void> {
    const env = { ...process.env, DATABASE_URL: this.#url ?? "" };
    const child = spawn(process.execPath, [resolve("test/rooms/server-process.mjs"), this.#home], {
      env,
      stdio: ["ignore", "pipe", "inherit"],
    });
    running.add(child);
    this.#child = child;
    this.#port = await new Promise<string>((done, fail) => {
      child.stdout?.setEncoding("utf8").once("data", (text: string) => done(text.trim()));
      child.once("exit", (code) => fail(new Error(`the server ended with ${code}`)));
    });
  }

  async kill(): Promise<void> {
    const child = this.#child;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    child.removeAllListeners("exit");
    const ended = new Promise((done) => child.once("exit", done));
    child.kill("SIGKILL");
    await ended;
  }

  async ask(method: string, path: string, body?: unknown): Promise<unknown> {
    const origin = `http://localhost:${this.#port}`;
    const response = await fetch(`${origin}${path}`, {
      method,
      headers: { origin, "content-type": "application/json", cookie: this.#cookie },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const set = response.headers.get("set-cookie");
    if (set) this.#cookie = set.split(";")[0] ?? "";
    const told = await response.json();
    if (!response.ok) throw new Error(`${path}: ${response.status} ${JSON.stringify(told)}`);
    return told;
  }

  /** Connections that broke with the database are found out one by one, each by a request that fails. */
  async insist(path: string): Promise<unknown> {
    for (let tries = 1; ; tries++) {
      try {
        return await this.ask("GET", path);
      } catch (error) {
        if (tries === 12) throw error;
      }
    }
  }

  async begin(): Promise<string> {
    const signUp = {
      workroom: "W",
      name: "N",
      signInName: `n-${randomUUID().slice(0, 8)}`,
      password: PASSWORD,
      code: SET_UP_CODE,
    };
    await this.ask("POST", "/api/sign-up", signUp);
    const job = jobOf(1);
    await this.ask("POST", "/api/jobs", { request: randomUUID(), job });
    return job.id;
  }
}

/**
 * Edits one field again and again while `strike` strikes; what gets no answer is sent again once `mend` has mended.
 * Afterwards every edit is there, once, in the order in which they were made.
 */
async function editThrough(
  server: Killed,
  rounds: number,
  strike: () => Promise<void>,
  mend: () => Promise<void>,
): Promise<void> {
  const job = await server.begin();
  const acknowledged: { id: string; version: number }[] = [];
  let name = "Window 1";
  for (let round = 0; round < rounds; round++) {
    let struck: Promise<void> | undefined;
    let isAimed = false;
    let waiting: Operation | undefined;
    while (!struck || waiting) {
      const next = `${round}.${acknowledged.length}`;
      const operation = waiting ?? operationOf(job, acknowledged.length, [nameOf("w1", name, next)]);
      waiting = operation;
      try {
        const told = (await server.ask("POST", `/api/jobs/${job}/operations`, {
          operations: [operation],
        })) as OperationAnswers;
        const [answer] = told.answers;
        if (!answer?.ok) throw new NotTaken(JSON.stringify(answer));
        acknowledged.push({ id: operation.id, version: answer.operation.version });
        if (!isAimed) {
          isAimed = true;
          // Strikes while one of the next edits is under way: now sooner, now later.
          const shot = () => {
            struck = strike();
          };
          setTimeout(shot, 20 + 45 * round);
        }
        name = String(operation.changes[0]?.to);
        waiting = undefined;
      } catch (error) {
        if (error instanceof NotTaken) throw error;
        while (!struck) await new Promise((go) => setTimeout(go, 10));
        await struck;
        await mend();
      }
      if (struck && waiting === undefined) break;
    }
    await struck;
    await mend();
  }
  const page = (await server.insist(`/api/jobs/${job}/operations?after=0`)) as {
    operations: NumberedOperation[];
  };
  const kept = page.operations.map(({ id, version }) => ({ id, version }));
  expect(acknowledged.length).toBeGreaterThan(rounds);
  expect(kept).toEqual(acknowledged);
  const held = (await server.insist(`/api/jobs/${job}`)) as { job: ReturnType<typeof jobOf> };
  expect(held.job.rooms[0]?.windows[0]?.name).toBe(name);
}

describe("nothing that was acknowledged is lost, and nothing is done twice", () => {
  test("embedded: the server is killed, and its folder is free again", async () => {
    const server = new Killed("embedded");
    await server.start();
    const mend = async () => {
      await server.kill();
      await server.start();
    };
    await editThrough(server, 2, () => server.kill(), mend);
    await expect(embeddedDoor(join(folder, "embedded/room")).open()).rejects.toThrow(/is in use by process/);
    await server.kill();
    const store = await embeddedDoor(join(folder, "embedded/room")).open();
    await store.close();
  });

  test.skipIf(inject("postgresUrl") === "")("PostgreSQL: the server is killed", async () => {
    const server = new Killed("postgres", inject("postgresUrl"));
    await server.start();
    const mend = async () => {
      await server.kill();
      await server.start();
    };
    await editThrough(server, 3, () => server.kill(), mend);
    await server.kill();
  });

  test.skipIf(inject("postgresUrl") === "")(
    "PostgreSQL: the database itself is killed under the server",
    async () => {
      const own = (await ownPostgres()) as OwnPostgres;
      const server = new Killed("database", own.url);
      await server.start();
      await editThrough(
        server,
        2,
        () => own.kill(),
        () => own.restart(),
      );
      await server.kill();
      await own.stop();
    },
  );
});
