import { randomUUID } from "node:crypto";
import { parseArgs } from "node:util";
import type { Hono } from "hono";
import { sql } from "kysely";
import { quantile } from "../bench/figure.ts";
import { jobOf } from "../bench/many-windows.ts";
import { makeRoom, openPostgres, roomApp, type Store, type Workroom } from "../src/server/index.ts";
import type { FieldChange, NumberedOperation, OperationAnswers } from "../src/workroom/protocol/index.ts";
import { ownPostgres } from "../test/rooms/postgres.ts";

/**
 * Many workrooms on one PostgreSQL and many clients who edit at once, some of them the same job and some the same field;
 * some requests are sent twice. Says whether an acknowledged edit was lost or done twice, and how long edits took beside
 * bare inserts. `--large` takes 200 workrooms of 2,000 shades and 300 clients.
 */
const { values } = parseArgs({ options: { large: { type: "boolean", default: false } } });
const SIZE = values.large
  ? { workrooms: 200, jobs: 40, windows: 50, clients: 300, editsEach: 20 }
  : { workrooms: 10, jobs: 8, windows: 25, clients: 30, editsEach: 8 };
/** Each client makes an edit so often, s: all of them together 60 a second in the large trial. */
const EDIT_EVERY_S = 5;
/** As many server processes would share the database. */
const SERVERS = 2;
const CODE = "code-of-the-trial";

interface Acknowledged {
  id: string;
  version: number;
}

class Client {
  readonly #app: Hono;
  readonly #cookie: string;
  readonly #n: number;
  readonly workroomId: string;
  readonly job: string;
  readonly acknowledged: Acknowledged[] = [];
  readonly times: number[] = [];
  #version = 0;
  #name: string;

  constructor(app: Hono, cookie: string, workroomId: string, job: string, n: number) {
    this.#app = app;
    this.#cookie = cookie;
    this.#n = n;
    this.workroomId = workroomId;
    this.job = job;
    this.#name = `Window ${this.#window}`;
  }

  get #window(): number {
    return this.#n % SIZE.windows;
  }

  async edit(edit: number): Promise<void> {
    const to = `Client ${this.#n}, edit ${edit}`;
    const path = ["rooms", { id: "room" }, "windows", { id: `window-${this.#window}` }, "name"];
    const changes: FieldChange[] = [{ path, from: this.#name, to }];
    // Every fifth edit is of a field that others change as well.
    if (edit % 5 === 4) changes.push({ path: ["note"], to });
    const at = "2026-01-31T08:00:00.000Z";
    const operation = { id: randomUUID(), jobId: this.job, baseVersion: this.#version, at, changes };
    const send = async () =>
      (await (
        await this.#ask("POST", `/api/jobs/${this.job}/operations`, { operations: [operation] })
      ).json()) as OperationAnswers;
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
    const page = await this.#ask("GET", `/api/jobs/${this.job}/operations?after=${this.#version}`);
    this.#version = ((await page.json()) as { version: number }).version;
  }

  async #ask(method: string, path: string, body?: unknown): Promise<Response> {
    const response = await ask(this.#app, method, path, this.#cookie, body);
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response;
  }
}

async function ask(
  app: Hono,
  method: string,
  path: string,
  cookie: string,
  body?: unknown,
): Promise<Response> {
  return await app.request(`http://localhost${path}`, {
    method,
    headers: {
      ...{ host: "localhost", origin: "http://localhost", "content-type": "application/json" },
      cookie,
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
}

const own = await ownPostgres();
if (own === undefined) throw new Error("The trial wants a PostgreSQL: install Debian's package.");
const { url } = own;
try {
  await trial(url);
} finally {
  await own.stop();
}

async function trial(databaseUrl: string): Promise<void> {
  const stores = await Promise.all(
    Array.from({ length: SERVERS }, () => openPostgres(databaseUrl, { connections: 10 })),
  );
  const rooms = stores.map((store) =>
    makeRoom(
      { isBegun: async () => true, begin: async () => {}, open: async () => store },
      { setUpCode: CODE, passwordCost: 10 },
    ),
  );
  let asked = 0;
  // From an address each, so that the limit of requests is not what is measured.
  const apps = rooms.map((room) => roomApp(room, { addressOf: () => `${asked++}` }));
  const [store] = stores as [Store];
  const seeding = performance.now();
  const people = await seed(apps[0] as Hono, store);
  const { rows: size } = await sql<{
    size: string;
  }>`select pg_size_pretty(pg_database_size(current_database())) as size`.execute(store.db);
  say(
    `${SIZE.workrooms} workrooms of ${SIZE.jobs * SIZE.windows} shades seeded in ${seconds(seeding)}: ${size[0]?.size}`,
  );
  const clients = Array.from({ length: SIZE.clients }, (_, n) => {
    const { cookie, workroomId } = people[n % SIZE.workrooms] as Person;
    return new Client(
      apps[n % SERVERS] as Hono,
      cookie,
      workroomId,
      `job-${(n % SIZE.workrooms) % SIZE.jobs}`,
      n,
    );
  });
  let news = 0;
  const stops = await Promise.all(
    clients.map((_, n) =>
      watch(rooms[n % SERVERS] as Workroom, people[n % SIZE.workrooms] as Person, () => news++),
    ),
  );
  const start = performance.now();
  await Promise.all(
    clients.map(async (client, n) => {
      for (let edit = 0; edit < SIZE.editsEach; edit++) {
        const dueMs = start + (edit + n / SIZE.clients) * EDIT_EVERY_S * 1000;
        await new Promise((go) => setTimeout(go, Math.max(0, dueMs - performance.now())));
        await client.edit(edit);
      }
    }),
  );
  const tookS = (performance.now() - start) / 1000;
  for (const stop of stops) stop();
  for (const room of rooms) room.news.close();
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
  for (const one of stores) await one.close();
}

interface Person {
  cookie: string;
  workroomId: string;
  session: string;
  personId: string;
}

/** Workrooms as people make them, each with its owner; jobs straight into the tables. */
async function seed(app: Hono, { db }: Store): Promise<Person[]> {
  const people: Person[] = [];
  const document = JSON.stringify({ ...jobOf(SIZE.windows), id: "THE-JOB" });
  for (let n = 0; n < SIZE.workrooms; n++) {
    const response = await ask(app, "POST", "/api/sign-up", "", {
      ...{ workroom: `Trial ${n}`, name: "N", signInName: `n-${n}-${randomUUID().slice(0, 8)}` },
      ...{ password: "a long enough password", code: CODE },
    });
    if (!response.ok) throw new Error(`sign-up: ${response.status} ${await response.text()}`);
    const cookie = response.headers.get("set-cookie")?.split(";")[0] ?? "";
    const workroomId = /=([0-9a-f-]{36})/.exec(decodeURIComponent(cookie))?.[1] ?? "";
    const signedIn = await db
      .selectFrom("sessions")
      .select(["id", "person_id"])
      .where("workroom_id", "=", workroomId)
      .executeTakeFirstOrThrow();
    people.push({ cookie, workroomId, session: signedIn.id, personId: signedIn.person_id });
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

async function watch(room: Workroom, person: Person, tell: () => void): Promise<() => void> {
  const { workroomId, session, personId } = person;
  return await room.news.watch(workroomId, { session, personId, isClass: false, tell, end: () => {} });
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
