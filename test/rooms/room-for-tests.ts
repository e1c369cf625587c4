import { randomUUID } from "node:crypto";
import type { Hono } from "hono";
import { sql } from "kysely";
import { inject } from "vitest";
import { type Job, newJob, newWindow } from "../../src/job/index.ts";
import {
  makeRoom,
  openEmbedded,
  openPostgres,
  ROOM_TABLES,
  roomApp,
  type Store,
  type Workroom,
} from "../../src/server/index.ts";
import type {
  FieldChange,
  Operation,
  OperationAnswers,
  PersonRole,
  RouteName,
} from "../../src/workroom/protocol/index.ts";
import { ROUTES } from "../../src/workroom/protocol/index.ts";

export const SET_UP_CODE = "code-of-the-tests";
export const PASSWORD = "a long enough password";

/** Both databases; the second is left out, and says so, where there is no PostgreSQL. */
export const STORES: { title: string; isThere: boolean; open: () => Promise<Store> }[] = [
  { title: "embedded", isThere: true, open: () => openEmbedded() },
  inject("postgresUrl") === ""
    ? { title: "PostgreSQL: LEFT OUT, none is installed", isThere: false, open: () => Promise.reject() }
    : { title: "PostgreSQL", isThere: true, open: () => openPostgres(inject("postgresUrl")) },
];

export interface Told {
  status: number;
  // biome-ignore lint/suspicious/noExplicitAny: answers of all routes
  body: any;
  headers: Headers;
}

/** A server's process on a store. */
export class TestWorkroom {
  readonly room: Workroom;
  readonly app: Hono;
  readonly store: Store;
  /** Where requests come from; each from somewhere else, unless it is set, so that tests do not wait for each other. */
  address: string | undefined;

  constructor(store: Store) {
    this.store = store;
    const door = { isBegun: async () => true, begin: async () => {}, open: async () => store };
    this.room = makeRoom(door, { setUpCode: SET_UP_CODE, passwordCost: 10 });
    this.app = roomApp(this.room, { addressOf: () => this.address ?? randomUUID() });
  }

  /** A browser that has not been here before. */
  async nobody(): Promise<TestPerson> {
    return new TestPerson(this);
  }

  /** Every row of a workroom, as text. */
  async dump(workroomId: string): Promise<string[]> {
    const rows: string[] = [];
    for (const table of ROOM_TABLES) {
      // Asking notes when someone was seen last, which is no matter of what they asked for.
      if (table === "sessions" || table === "presence" || table === "attempts") continue;
      const column = table === "workrooms" ? "id" : "workroom_id";
      const { rows: found } = await sql<{
        row: string;
      }>`select row_to_json(t)::text as row from ${sql.table(table)} t
        where ${sql.ref(column)} = ${workroomId} order by 1`.execute(this.store.db);
      rows.push(...found.map(({ row }) => `${table} ${row}`));
    }
    return rows;
  }

  async close(): Promise<void> {
    this.room.news.close();
    await this.store.close();
  }

  /** A workroom of its own, by its owner. */
  async workroom(name = "Workroom"): Promise<TestPerson> {
    const owner = new TestPerson(this);
    const signInName = `owner-${randomUUID().slice(0, 8)}`;
    const body = { workroom: name, name: "Owner", signInName, password: PASSWORD, code: SET_UP_CODE };
    await owner.ask("signUp", { body }, 201);
    await owner.learn();
    return owner;
  }

  /** Someone who came by an invitation. */
  async joined(owner: TestPerson, role: PersonRole): Promise<TestPerson> {
    const { body } = await owner.ask("invite", { body: { role } }, 201);
    const person = new TestPerson(this);
    const signInName = `${role}-${randomUUID().slice(0, 8)}`;
    await person.ask(
      "join",
      { body: { token: body.token, name: role, signInName, password: PASSWORD } },
      201,
    );
    await person.learn();
    return person;
  }
}

export interface Asking {
  params?: Record<string, string>;
  query?: Record<string, string>;
  body?: unknown;
  headers?: Record<string, string>;
}

/** A browser of one person. */
export class TestPerson {
  readonly at: TestWorkroom;
  cookie = "";
  id = "";
  session = "";
  workroomId = "";
  shortName = "";
  signInName = "";

  constructor(at: TestWorkroom) {
    this.at = at;
  }

  async learn(): Promise<void> {
    const { body } = await this.ask("me", {}, 200);
    this.id = body.person.id;
    this.signInName = body.person.signInName;
    this.session = body.session;
    this.workroomId = body.workroom.id;
    this.shortName = body.workroom.shortName;
  }

  /** Another server process on the same database, with this person's cookie. */
  from(other: TestWorkroom): TestPerson {
    return Object.assign(new TestPerson(other), { ...this, at: other });
  }

  /**
   * @param wanted status; another fails the test, with what was answered
   */
  async ask(
    route: RouteName,
    { params = {}, query = {}, body, headers = {} }: Asking = {},
    wanted?: number,
  ): Promise<Told> {
    const { method, path } = ROUTES[route];
    const filled = path.replace(/:(\w+)/g, (_all, name: string) => encodeURIComponent(params[name] ?? name));
    const search = new URLSearchParams(query).toString();
    const response = await this.at.app.request(`http://localhost${filled}${search && `?${search}`}`, {
      method,
      headers: {
        host: "localhost",
        ...(method === "GET" ? {} : { origin: "http://localhost" }),
        ...(body === undefined ? {} : { "content-type": "application/json" }),
        ...(this.cookie === "" ? {} : { cookie: this.cookie }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === "string" ? body : JSON.stringify(body) }),
    });
    const set = response.headers.get("set-cookie");
    if (set !== null) this.cookie = set.split(";")[0] ?? "";
    const isJson = response.headers.get("content-type")?.split(";")[0] === "application/json";
    const told = {
      status: response.status,
      body: isJson ? await response.json() : await response.text(),
      headers: response.headers,
    };
    if (wanted !== undefined && told.status !== wanted) {
      throw new Error(`${route} answered ${told.status}: ${JSON.stringify(told.body).slice(0, 500)}`);
    }
    return told;
  }

  async makeJob(job: Job = jobOf()): Promise<Job> {
    await this.ask("makeJob", { body: { request: randomUUID(), job } }, 201);
    return job;
  }

  async send(jobId: string, baseVersion: number, ...changes: FieldChange[]): Promise<OperationAnswers> {
    return await this.sendAll(jobId, [operationOf(jobId, baseVersion, changes)]);
  }

  async sendAll(jobId: string, operations: readonly Operation[]): Promise<OperationAnswers> {
    return (await this.ask("sendOperations", { params: { job: jobId }, body: { operations } }, 200)).body;
  }
}

export function operationOf(jobId: string, baseVersion: number, changes: FieldChange[]): Operation {
  return { id: randomUUID(), jobId, baseVersion, at: "2026-01-31T08:00:00.000Z", changes };
}

/** A job with windows, of an id of its own. */
export function jobOf(windows = 2): Job {
  const job = newJob({ id: `job-${randomUUID().slice(0, 8)}`, name: "Bay", system: "metric" });
  const made = Array.from({ length: windows }, (_, i) =>
    newWindow({ id: `w${i + 1}`, name: `Window ${i + 1}`, widthMm: 900 + i, heightMm: 1400 }),
  );
  return { ...job, rooms: job.rooms.map((room) => ({ ...room, windows: made })) };
}

/** The change of a window's name. */
export function nameOf(windowId: string, from: string, to: string): FieldChange {
  return { path: ["rooms", { id: "room-1" }, "windows", { id: windowId }, "name"], from, to };
}
