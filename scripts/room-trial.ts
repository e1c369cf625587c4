import { type ChildProcess, spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import { Agent, type IncomingMessage, request } from "node:http";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import type { Hono } from "hono";
import { sql } from "kysely";
import { quantile } from "../bench/figure.ts";
import { jobOf } from "../bench/many-windows.ts";
import { makeRoom, openPostgres, roomApp, type Store } from "../src/server/index.ts";
import type { FieldChange, NumberedOperation, OperationAnswers } from "../src/workroom/protocol/index.ts";
import { freePort, ownPostgres } from "../test/rooms/postgres.ts";

/**
 * Many workrooms on one PostgreSQL and many clients who edit at once, some of them the same job and some the same field;
 * some requests are sent twice, and each client listens to the news. PostgreSQL and every server are processes of their
 * own, the servers as they are shipped. Says whether an acknowledged edit was lost or done twice, and how long edits took
 * beside bare inserts over as many connections. `--large` takes 200 workrooms of 2,000 shades and 300 clients.
 */
const { values } = parseArgs({ options: { large: { type: "boolean", default: false } } });
const SIZE = values.large
  ? { workrooms: 200, jobs: 40, windows: 50, clients: 300, editsEach: 20 }
  : { workrooms: 10, jobs: 8, windows: 25, clients: 30, editsEach: 8 };
/** Each client makes an edit so often, s: all of them together 120 a second in the large trial. */
const EDIT_EVERY_S = 2.5;
/** They come one after the other over so long, s: servers that were just started are slow at first, as in any morning. */
const COME_OVER_S = values.large ? 30 : 5;
/** As many server processes share the database. */
const SERVERS = 2;
/** Connections of each server to the database. */
const CONNECTIONS = 10;
const CODE = "code-of-the-trial";
/** As a proxy in front of the servers would be called. */
const ORIGIN = "https://trial.example";

interface Acknowledged {
  id: string;
  version: number;
}

class Client {
  readonly #port: number;
  readonly #cookie: string;
  readonly #n: number;
  readonly workroomId: string;
  readonly job: string;
  readonly acknowledged: Acknowledged[] = [];
  readonly times: number[] = [];
  #version = 0;
  #name: string;

  constructor(port: number, cookie: string, workroomId: string, job: string, n: number) {
    this.#port = port;
    this.#cookie = cookie;
    this.#n = n;
    this.workroomId = workroomId;
    this.job = job;
    this.#name = `Window ${this.#window}`;
  }

  get #window(): number {
    return this.#n % SIZE.windows;
  }

  /** Hears the news as a screen does; gives back how to stop. */
  async listen(tell: () => void): Promise<() => void> {
    const stream = await ask(this.#port, "GET", "/api/news/stream", this.#sender);
    stream.on("data", (part: Buffer) => {
      if (part.includes("data:")) tell();
    });
    stream.on("error", () => {});
    return () => stream.destroy();
  }

  get #sender(): Sender {
    return { cookie: this.#cookie, address: addressOf(this.#n) };
  }

  async edit(edit: number): Promise<void> {
    const to = `Client ${this.#n}, edit ${edit}`;
    const path = ["rooms", { id: "room" }, "windows", { id: `window-${this.#window}` }, "name"];
    const changes: FieldChange[] = [{ path, from: this.#name, to }];
    // Every fifth edit is of a field that others change as well.
    if (edit % 5 === 4) changes.push({ path: ["note"], to });
    const at = "2026-01-31T08:00:00.000Z";
    const operation = { id: randomUUID(), jobId: this.job, baseVersion: this.#version, at, changes };
    const send = () =>
      this.#told<OperationAnswers>("POST", `/api/jobs/${this.job}/operations`, { operations: [operation] });
    const start = performance.now();
    const [answer] = (await send()).answers;
    this.times.push(performance.now() - start);
    if (!answer?.ok) throw new Error(`an edit was turned down: ${JSON.stringify(answer)}`);
    // Every seventh is sent again, as after an answer that got lost.
    if (edit % 7 === 6) {
      const [again] = (await send()).answers;
      if (!again?.ok || again.operation.version !== answer.operation.version) {
        throw new Error("an edit that was sent again was answered otherwise");
      }
    }
    this.acknowledged.push({ id: operation.id, version: answer.operation.version });
    this.#name = to;
    // The planner takes in what others did after each of its own.
    const since = `/api/jobs/${this.job}/operations?after=${this.#version}`;
    this.#version = (await this.#told<{ version: number }>("GET", since)).version;
  }

  async #told<T>(method: string, path: string, body?: unknown): Promise<T> {
    const response = await ask(this.#port, method, path, this.#sender, body);
    const parts: Buffer[] = [];
    for await (const part of response) parts.push(part as Buffer);
    const text = Buffer.concat(parts).toString();
    if (response.statusCode !== 200) throw new Error(`${path}: ${response.statusCode} ${text}`);
    return JSON.parse(text) as T;
  }
}

interface Sender {
  cookie: string;
  /** As the proxy tells it. */
  address: string;
}

/** From an address each, so that the limit of requests is not what is measured. */
function addressOf(n: number): string {
  return `10.0.${Math.floor(n / 250)}.${(n % 250) + 1}`;
}

const agent = new Agent({ keepAlive: true, maxSockets: Number.POSITIVE_INFINITY });

function ask(
  port: number,
  method: string,
  path: string,
  { cookie, address }: Sender,
  body?: unknown,
): Promise<IncomingMessage> {
  return new Promise((done, fail) => {
    const headers = {
      ...{ host: new URL(ORIGIN).host, origin: ORIGIN, "x-forwarded-for": address, cookie },
      "content-type": "application/json",
    };
    const asked = request({ host: "127.0.0.1", port, method, path, headers, agent }, done);
    asked.on("error", fail);
    asked.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

interface ServerProcess {
  port: number;
  process: ChildProcess;
}

/** The server as it is shipped, behind what would be a proxy. */
async function startServer(databaseUrl: string): Promise<ServerProcess> {
  const program = fileURLToPath(new URL("../bin/shadewright.mjs", import.meta.url));
  const port = await freePort();
  const options = ["--port", `${port}`, "--address", ORIGIN, "--proxy", "127.0.0.1", "--workers", "0"];
  const child = spawn(process.execPath, [program, "serve", ...options], {
    env: { ...process.env, DATABASE_URL: databaseUrl, SHADEWRIGHT_CODE: CODE },
    stdio: ["ignore", "inherit", "pipe"],
  });
  await new Promise<void>((done, fail) => {
    let said = "";
    child.stderr?.on("data", (part: Buffer) => {
      said += part;
      if (said.includes("is ready")) done();
    });
    child.once("exit", (code) => fail(new Error(`a server ended with ${code}: ${said}`)));
  });
  return { port, process: child };
}

if (!existsSync(new URL("../dist/cli/process.js", import.meta.url)))
  throw new Error("The trial wants the built servers: npm run build");
const own = await ownPostgres();
if (own === undefined) throw new Error("The trial wants a PostgreSQL: install Debian's package.");
const { url } = own;
try {
  await trial(url);
} finally {
  await own.stop();
}

async function trial(databaseUrl: string): Promise<void> {
  const store = await openPostgres(databaseUrl, { connections: SERVERS * CONNECTIONS });
  const door = { isBegun: async () => true, begin: async () => {}, open: async () => store };
  const room = makeRoom(door, { setUpCode: CODE, passwordCost: 10 });
  let asked = 0;
  const seeder = roomApp(room, { named: ORIGIN, addressOf: () => `${asked++}` });
  const seeding = performance.now();
  const people = await seed(seeder, store);
  const { rows: size } = await sql<{
    size: string;
  }>`select pg_size_pretty(pg_database_size(current_database())) as size`.execute(store.db);
  say(
    `${SIZE.workrooms} workrooms of ${SIZE.jobs * SIZE.windows} shades seeded in ${seconds(seeding)}: ${size[0]?.size}`,
  );
  const servers = await Promise.all(Array.from({ length: SERVERS }, () => startServer(databaseUrl)));
  const clients = Array.from({ length: SIZE.clients }, (_, n) => {
    const { cookie, workroomId } = people[n % SIZE.workrooms] as Person;
    const { port } = servers[n % SERVERS] as ServerProcess;
    return new Client(port, cookie, workroomId, `job-${(n % SIZE.workrooms) % SIZE.jobs}`, n);
  });
  let news = 0;
  const stops = await Promise.all(clients.map((client) => client.listen(() => news++)));
  const start = performance.now();
  await Promise.all(
    clients.map(async (client, n) => {
      for (let edit = 0; edit < SIZE.editsEach; edit++) {
        const dueMs = start + (edit * EDIT_EVERY_S + (n / SIZE.clients) * COME_OVER_S) * 1000;
        await new Promise((go) => setTimeout(go, Math.max(0, dueMs - performance.now())));
        await client.edit(edit);
      }
    }),
  );
  const tookS = (performance.now() - start) / 1000;
  for (const stop of stops) stop();
  for (const { process } of servers) process.kill();
  const times = clients.flatMap((client) => client.times);
  say(
    `${times.length} edits of ${SIZE.clients} clients in ${tookS.toFixed(0)} s: ${tell(times)}; news told ${news} times`,
  );
  const inserts = await insertsOf(store, times.length / tookS, Math.min(times.length, 1500));
  say(`${inserts.length} bare inserts at the same rate: ${tell(inserts)}`);
  say(`edit beside insert, p99: ${(quantile(times, 0.99) / quantile(inserts, 0.99)).toFixed(1)} ×`);
  const { lost, doubled, gaps } = await compare(store, clients);
  say(`acknowledged edits lost: ${lost}; done twice: ${doubled}; numbers left out: ${gaps}`);
  if (lost + doubled + gaps > 0) process.exitCode = 1;
  await store.close();
}

interface Person {
  cookie: string;
  workroomId: string;
}

/** Workrooms as people make them, each with its owner; jobs straight into the tables. */
async function seed(app: Hono, { db }: Store): Promise<Person[]> {
  const people: Person[] = [];
  const document = JSON.stringify({ ...jobOf(SIZE.windows), id: "THE-JOB" });
  for (let n = 0; n < SIZE.workrooms; n++) {
    const body = {
      ...{ workroom: `Trial ${n}`, name: "N", signInName: `n-${n}-${randomUUID().slice(0, 8)}` },
      ...{ password: "a long enough password", code: CODE },
    };
    const response = await app.request(`${ORIGIN}/api/sign-up`, {
      method: "POST",
      headers: { host: new URL(ORIGIN).host, origin: ORIGIN, "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    if (!response.ok) throw new Error(`sign-up: ${response.status} ${await response.text()}`);
    const cookie = response.headers.get("set-cookie")?.split(";")[0] ?? "";
    const workroomId = /=([0-9a-f-]{36})/.exec(decodeURIComponent(cookie))?.[1] ?? "";
    people.push({ cookie, workroomId });
    await sql`insert into jobs (workroom_id, id, request, name, is_demo, windows, version, made_by, changed_by)
      select p.workroom_id, 'job-' || n, gen_random_uuid(), 'Trial', true, ${SIZE.windows}, 0, p.id, p.id
      from people p, generate_series(0, ${SIZE.jobs - 1}) n where p.workroom_id = ${workroomId}`.execute(db);
    await sql`insert into snapshots (workroom_id, job_id, version, document)
      select ${workroomId}, 'job-' || n, 0, replace(${document}::text, 'THE-JOB', 'job-' || n)::json
      from generate_series(0, ${SIZE.jobs - 1}) n`.execute(db);
  }
  await sql`analyze`.execute(db);
  return people;
}

/** The least that the database does for an edit: one row of its size, committed. */
async function insertsOf({ db }: Store, aSecond: number, count: number): Promise<number[]> {
  await sql`create table trial_insert (id uuid primary key, changes json)`.execute(db);
  const changes = JSON.stringify([
    { path: ["rooms", { id: "room" }, "windows", { id: "w" }, "name"], from: "a", to: "b" },
  ]);
  const start = performance.now();
  return await Promise.all(
    Array.from({ length: count }, async (_, n) => {
      const dueMs = start + (n * 1000) / aSecond;
      await new Promise((go) => setTimeout(go, Math.max(0, dueMs - performance.now())));
      const began = performance.now();
      await sql`insert into trial_insert values (${randomUUID()}, ${changes})`.execute(db);
      return performance.now() - began;
    }),
  );
}

/** What the clients were told beside what the database holds. */
async function compare(
  { db }: Store,
  clients: readonly Client[],
): Promise<{ lost: number; doubled: number; gaps: number }> {
  const told = new Map<string, Acknowledged[]>();
  for (const { workroomId, job, acknowledged } of clients) {
    const key = `${workroomId} ${job}`;
    told.set(key, [...(told.get(key) ?? []), ...acknowledged]);
  }
  let [lost, doubled, gaps] = [0, 0, 0];
  for (const [key, acknowledged] of told) {
    const [workroomId = "", job = ""] = key.split(" ");
    const kept: Pick<NumberedOperation, "id" | "version">[] = await db
      .selectFrom("operations")
      .select(["id", "version"])
      .where("workroom_id", "=", workroomId)
      .where("job_id", "=", job)
      .orderBy("version")
      .execute();
    const versions = new Map(kept.map(({ id, version }) => [id, version]));
    lost += acknowledged.filter(({ id, version }) => versions.get(id) !== version).length;
    doubled += kept.length - acknowledged.length + (kept.length - versions.size);
    gaps += kept.filter(({ version }, at) => version !== at + 1).length;
  }
  return { lost, doubled, gaps };
}

function tell(times: readonly number[]): string {
  const of = (share: number) => `${quantile(times, share).toFixed(1)} ms`;
  return `median ${of(0.5)}, p95 ${of(0.95)}, p99 ${of(0.99)}`;
}

function seconds(since: number): string {
  return `${((performance.now() - since) / 1000).toFixed(0)} s`;
}

function say(words: string): void {
  console.log(words);
}
