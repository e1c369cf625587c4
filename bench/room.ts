import { randomUUID } from "node:crypto";
import type { Hono } from "hono";
import { sql } from "kysely";
import type { Job } from "../src/job/index.ts";
import { makeRoom, openEmbedded, openPostgres, roomApp, type Store } from "../src/server/index.ts";
import { rebase } from "../src/workroom/merge/index.ts";
import { ownPostgres } from "../test/rooms/postgres.ts";
import { type Figure, median, quantile, samplesOf } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const WORKROOMS = 10;
const WINDOWS = 50;
const CLIENTS = 20;
const EDITS_EACH = 15;
/** Edits a second over all clients: as three hundred people make who edit every five seconds. */
const EDITS_A_SECOND = 60;
const CODE = "code-of-the-bench";

/** A browser of one workroom, without the network between. */
class Browser {
  readonly #app: Hono;
  #cookie = "";

  constructor(app: Hono) {
    this.#app = app;
  }

  async ask(method: string, path: string, body?: unknown): Promise<Response> {
    const response = await this.#app.request(`http://localhost${path}`, {
      method,
      headers: {
        host: "localhost",
        origin: "http://localhost",
        "content-type": "application/json",
        cookie: this.#cookie,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    this.#cookie = response.headers.get("set-cookie")?.split(";")[0] ?? this.#cookie;
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response;
  }

  async begin(): Promise<this> {
    const signInName = `n-${randomUUID().slice(0, 8)}`;
    const signUp = {
      workroom: "Bench",
      name: "N",
      signInName,
      password: "a long enough password",
      code: CODE,
    };
    await this.ask("POST", "/api/sign-up", signUp);
    return this;
  }

  async put(job: Job): Promise<void> {
    await this.ask("POST", "/api/jobs", { request: randomUUID(), job });
  }

  /** Milliseconds of one edit, from the request to its answer. */
  async edit(jobId: string, window: number, baseVersion: number, from: string, to: string): Promise<number> {
    const path = ["rooms", { id: "room" }, "windows", { id: `window-${window}` }, "name"];
    const at = "2026-01-31T08:00:00.000Z";
    const operation = { id: randomUUID(), jobId, baseVersion, at, changes: [{ path, from, to }] };
    const start = performance.now();
    await (await this.ask("POST", `/api/jobs/${jobId}/operations`, { operations: [operation] })).json();
    return performance.now() - start;
  }
}

/** The workroom's server on PostgreSQL, or on the embedded database where none is installed. */
export async function roomFigures(): Promise<Figure[]> {
  const own = await ownPostgres();
  const store = own ? await openPostgres(own.url, { connections: 10 }) : await openEmbedded();
  try {
    const door = { isBegun: async () => true, begin: async () => {}, open: async () => store };
    const room = makeRoom(door, { setUpCode: CODE, passwordCost: 10 });
    let asked = 0;
    // From an address each, so that the limit of requests is not what is measured.
    const app = roomApp(room, { addressOf: () => `${asked++}` });
    const edits = await editsOf(app);
    const alone = median(await editsAlone(app));
    const insert = median(await insertsOf(store));
    const figures: Figure[] = [
      { name: "room.edit.p99", value: quantile(edits, 0.99), unit: "ms", goal: 150, better: "lower" },
      {
        name: "room.vs-insert",
        value: alone / insert,
        unit: "× a bare insert",
        goal: 20,
        better: "lower",
        peer: `an insert of as many bytes, ${insert.toFixed(2)} ms; an edit alone takes ${alone.toFixed(2)} ms`,
      },
      await openFigure(app),
      mergeFigure(),
    ];
    room.news.close();
    return figures;
  } finally {
    await store.close();
    await own?.stop();
  }
}

/** Many clients, several a job, each in its turn whether or not the others have their answers. */
async function editsOf(app: Hono): Promise<number[]> {
  const browsers: Browser[] = [];
  for (let n = 0; n < WORKROOMS; n++) {
    const browser = await new Browser(app).begin();
    await browser.put({ ...jobOf(WINDOWS), id: "bench" });
    browsers.push(browser);
  }
  const start = performance.now();
  const client = async (n: number) => {
    const browser = browsers[n % WORKROOMS] as Browser;
    const times: number[] = [];
    // Each has a window of its own and never asks what the others did: the server rebases every edit.
    for (let edit = 0; edit < EDITS_EACH; edit++) {
      const dueMs = start + ((edit * CLIENTS + n) * 1000) / EDITS_A_SECOND;
      await new Promise((go) => setTimeout(go, Math.max(0, dueMs - performance.now())));
      times.push(await browser.edit("bench", n, 0, nameAt(n, edit), `Name ${edit}`));
    }
    return times.slice(2);
  };
  return (await Promise.all(Array.from({ length: CLIENTS }, (_, n) => client(n)))).flat();
}

function nameAt(window: number, edit: number): string {
  return edit === 0 ? `Window ${window}` : `Name ${edit - 1}`;
}

/** One edit after the other, with nobody else there. */
async function editsAlone(app: Hono): Promise<number[]> {
  const browser = await new Browser(app).begin();
  await browser.put({ ...jobOf(WINDOWS), id: "bench" });
  const times: number[] = [];
  for (let edit = 0; edit < 40; edit++) {
    times.push(await browser.edit("bench", 0, edit, nameAt(0, edit), `Name ${edit}`));
  }
  return times.slice(5);
}

/** The least that a database does for an edit: one row, committed. */
async function insertsOf({ db }: Store): Promise<number[]> {
  await sql`create table bench_insert (id uuid primary key, changes json)`.execute(db);
  const changes = JSON.stringify([
    { path: ["rooms", { id: "room" }, "windows", { id: "w" }, "name"], from: "a", to: "b" },
  ]);
  const times: number[] = [];
  for (let n = 0; n < 200; n++) {
    const start = performance.now();
    await sql`insert into bench_insert values (${randomUUID()}, ${changes})`.execute(db);
    times.push(performance.now() - start);
  }
  return times;
}

async function openFigure(app: Hono): Promise<Figure> {
  const browser = await new Browser(app).begin();
  await browser.put({ ...jobOf(2000), id: "large" });
  const times: number[] = [];
  for (let n = 0; n < 5; n++) {
    const start = performance.now();
    await (await browser.ask("GET", "/api/jobs/large")).json();
    times.push(performance.now() - start);
  }
  return { name: "room.open.2000", value: median(times), unit: "ms", goal: 500, better: "lower" };
}

/** One edit of someone who comes back after a thousand of others. */
function mergeFigure(): Figure {
  const job = jobOf(WINDOWS);
  const change = (window: number, from: string, to: string) => ({
    path: ["rooms", { id: "room" }, "windows", { id: `window-${window}` }, "name"],
    from,
    to,
  });
  const later = Array.from({ length: 1000 }, (_, n) => ({
    version: n + 1,
    changes: [change(1, n === 0 ? "Window 1" : `Name ${n - 1}`, `Name ${n}`)],
  }));
  const rooms = job.rooms.map((one) => ({
    ...one,
    windows: one.windows.map((window, n) => (n === 1 ? { ...window, name: "Name 999" } : window)),
  }));
  const now = { ...job, rooms };
  const mine = { changes: [change(2, "Window 2", "Mine")] };
  const times = samplesOf(
    () => {
      const rebased = rebase(now, mine, later);
      if (!rebased.ok || rebased.conflicts.length > 0) throw new Error("invalid merge");
    },
    { warm: 2, times: 9 },
  );
  return { name: "room.merge.1000", value: median(times), unit: "ms", goal: 100, better: "lower" };
}
