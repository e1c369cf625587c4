import { execFileSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { existsSync, statfsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { openEmbedded, openPostgres, type Store } from "../../src/server/index.ts";
import type { News, NumberedOperation } from "../../src/workroom/protocol/index.ts";
import { PROTOCOL, PROTOCOL_HEADER } from "../../src/workroom/protocol/index.ts";
import { ownPostgres } from "./postgres.ts";
import { jobOf, nameOf, operationOf, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

describe.each(STORES)("kept on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("whatever comes", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom();
    });
    afterAll(() => here.close());

    test("an edit that the disk has no room for is not acknowledged, and goes through once there is room", async () => {
      const { id } = await owner.makeJob();
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      // SQLSTATE 53100, disk_full: PostgreSQL, appendix A, “Error Codes”.
      await sql`create function no_room() returns trigger language plpgsql as
        $$ begin raise exception 'could not extend file: No space left on device' using errcode = '53100'; end $$`.execute(
        here.store.db,
      );
      await sql`create trigger no_room before insert on operations for each row execute function no_room()`.execute(
        here.store.db,
      );
      const operation = operationOf(id, 1, [nameOf("w1", "East", "West")]);
      const sent = { params: { job: id }, body: { operations: [operation] } };
      try {
        const told = await owner.ask("sendOperations", sent);
        expect([told.status, told.body.refused]).toEqual([507, expect.stringContaining("disk")]);
        // What the database said goes into the log of the process alone.
        expect(JSON.stringify(told.body)).not.toContain("extend file");
        expect((await owner.ask("job", { params: { job: id } }, 200)).body.version).toBe(1);
      } finally {
        await sql`drop trigger no_room on operations`.execute(here.store.db);
        await sql`drop function no_room`.execute(here.store.db);
      }
      const { version } = (await owner.ask("sendOperations", sent, 200)).body;
      expect(version).toBe(2);
    });

    test("a page of another release may read and not change, and what it did is taken once it is loaded anew", async () => {
      const { id } = await owner.makeJob();
      const operation = operationOf(id, 0, [nameOf("w1", "Window 1", "East")]);
      const sent = { params: { job: id }, body: { operations: [operation] } };
      for (const [number, words] of [
        [PROTOCOL - 2, /older than the workroom’s server. Load it anew/],
        [PROTOCOL + 1, /server is older/],
      ] as const) {
        const headers = { [PROTOCOL_HEADER]: String(number) };
        const told = await owner.ask("sendOperations", { ...sent, headers });
        expect([told.status, told.body.refused]).toEqual([426, expect.stringMatching(words)]);
        const held = (await owner.ask("job", { params: { job: id }, headers }, 200)).body;
        expect([held.version, held.job.rooms[0].windows[0].name]).toEqual([0, "Window 1"]);
      }
      expect((await owner.ask("sendOperations", sent, 200)).body.version).toBe(1);
    });

    test("a job of a release that knew fewer fields is opened, and one with fields that nobody knows is told which", async () => {
      const { cutting: _, stock: __, ...fewer } = jobOf() as ReturnType<typeof jobOf> & { cutting?: unknown };
      const made = await owner.ask("makeJob", { body: { request: randomUUID(), job: fewer } });
      expect(made.status).toBe(201);
      const more = { ...jobOf(), slats: 7 };
      const told = await owner.ask("makeJob", { body: { request: randomUUID(), job: more } });
      expect([told.status, JSON.stringify(told.body.issues)]).toEqual([
        400,
        expect.stringContaining("slats"),
      ]);
      // The same in an edit: what cannot be taken is named, what came with it in other edits stands.
      const { id } = await owner.makeJob();
      const { version, answers } = await owner.sendAll(id, [
        operationOf(id, 0, [nameOf("w1", "Window 1", "East")]),
        operationOf(id, 0, [{ path: ["slats"], to: 7 }]),
        operationOf(id, 0, [nameOf("w2", "Window 2", "West")]),
      ]);
      expect([version, answers.map(({ ok }) => ok)]).toEqual([2, [true, false, true]]);
      expect(answers[1]).toMatchObject({ issues: [{ field: "slats", wanted: "a field that a job has" }] });
    });
  });
});

/**
 * Puts `now()` of ours before the database's own, with a clock that can be set. Columns that are filled with the moment
 * of their row go by it as well.
 */
async function withClock(store: Store, isOneSession: boolean): Promise<(offset: string) => Promise<void>> {
  const run = (text: string) => store.runSql(text, []);
  await run(`create schema clock; grant usage on schema clock to public;
    create table clock.is_set (by interval not null); insert into clock.is_set values ('0');
    grant select on clock.is_set to public;
    create function clock.now() returns timestamptz language sql stable as
      $$ select pg_catalog.now() + (select by from clock.is_set) $$;`);
  const { rows } = await store.runSql(
    `select table_name, column_name from information_schema.columns
      where table_schema = 'public' and column_default = 'now()'`,
    [],
  );
  for (const { table_name, column_name } of rows as { table_name: string; column_name: string }[]) {
    await run(`alter table ${table_name} alter column ${column_name} set default clock.now()`);
  }
  const path = "clock, public, pg_catalog";
  await run(
    isOneSession
      ? `set search_path = ${path}`
      : `do $$ begin execute format('alter database %I set search_path = ${path}', current_database()); end $$`,
  );
  return async (offset) => {
    await store.runSql("update clock.is_set set by = $1::interval", [offset]);
  };
}

const CLOCKED = [
  { title: "embedded", isThere: true, isOneSession: true, open: () => openEmbedded() },
  {
    title: "PostgreSQL",
    isThere: inject("postgresUrl") !== "",
    isOneSession: false,
    open: async () => {
      const url = new URL(inject("postgresUrl"));
      const admin = await openPostgres(url.href);
      await admin.runSql("create database clock", []);
      await admin.close();
      url.pathname = "/clock";
      return await openPostgres(url.href);
    },
  },
];

describe.each(CLOCKED)("the server's clock set back by a day, $title", ({ isThere, isOneSession, open }) => {
  test.skipIf(!isThere)("orders nothing, hides no news, locks nobody out", async () => {
    let store = await open();
    const setClock = await withClock(store, isOneSession);
    if (!isOneSession) {
      // Connections made from now on go by it.
      const url = new URL(inject("postgresUrl"));
      url.pathname = "/clock";
      await store.close();
      store = await openPostgres(url.href);
    }
    const here = new TestWorkroom(store);
    const move = isOneSession
      ? setClock
      : async (offset: string) => {
          await store.runSql("update clock.is_set set by = $1::interval", [offset]);
        };
    try {
      const owner = await here.workroom();
      const { id } = await owner.makeJob();
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      const change = (state: string) => ({
        body: {
          changes: [{ id: randomUUID(), jobId: id, windowId: "w1", at: "2026-01-31T08:00:00.000Z", state }],
        },
      });
      await owner.ask("changeWork", change("cut"), 200);
      await owner.ask("presence", { body: { jobId: id } }, 200);
      // Wrong passwords, as many as are let.
      const signIn = {
        body: { workroom: owner.shortName, signInName: owner.signInName, password: "quite another sentence" },
      };
      for (let i = 0; i < 11; i++) await owner.ask("signIn", signIn);
      expect((await owner.ask("signIn", signIn)).status).toBe(429);
      const before = (await owner.ask("news", {}, 200)).body as News;

      await move("-1 day");
      const news = async (since: string) => (await owner.ask("news", { query: { since } }, 200)).body as News;
      const still = await news(before.now);
      await owner.send(id, 1, nameOf("w1", "East", "West"));
      await owner.ask("changeWork", change("sewn"), 200);
      const after = await news(before.now);
      expect(after.jobs).toContainEqual({ id, version: 2 });
      expect(after.isWorkChanged).toBe(true);
      expect(still.here).toEqual([]);
      expect((await owner.ask("signIn", signIn)).status).toBe(401);

      const { operations } = (await owner.ask("operations", { params: { job: id } }, 200)).body as {
        operations: NumberedOperation[];
      };
      expect(operations.map(({ version }) => version)).toEqual([1, 2]);
      // The later one bears the earlier time: what orders them is their number.
      const [one, two] = operations.map(({ at }) => Date.parse(at));
      expect(two).toBeLessThan(one ?? 0);
      const { entries } = (await owner.ask("jobHistory", { params: { job: id } }, 200)).body;
      expect(entries.map(({ toVersion }: { toVersion: number }) => toVersion)).toEqual([2, 1]);
      const { shades } = (await owner.ask("work", {}, 200)).body;
      expect(shades[0].state).toBe("sewn");
      const body = { operation: randomUUID(), version: 1 };
      await owner.ask("restoreJob", { params: { job: id }, body }, 200);
      const held = (await owner.ask("job", { params: { job: id } }, 200)).body;
      expect([held.version, held.job.rooms[0].windows[0].name]).toEqual([3, "East"]);
    } finally {
      await here.close();
    }
  });
});

const SMALL_DISK_MB = 96;

describe("a disk that is full indeed", () => {
  /** A file system of its own can only be made by who may mount one. */
  const mayMount = process.getuid?.() === 0 && existsSync("/bin/mount");

  test.skipIf(inject("postgresUrl") === "" || !mayMount)(
    "PostgreSQL: what was acknowledged is there afterwards, what was not is taken when it is sent again",
    async () => {
      let mounted = "";
      const own = await ownPostgres((folder) => {
        const options = ["-t", "tmpfs", "-o", `size=${SMALL_DISK_MB}m`, "tmpfs", folder];
        try {
          execFileSync("mount", options, { stdio: "ignore" });
        } catch {
          // In a container that may not: the test above stands alone.
          return () => {};
        }
        mounted = folder;
        return () => execFileSync("umount", ["--lazy", folder]);
      });
      if (own === undefined) throw new Error("no PostgreSQL");
      try {
        if (mounted === "") return;
        const here = new TestWorkroom(await openPostgres(own.url));
        const owner = await here.workroom();
        const { id } = await owner.makeJob();
        const acknowledged: string[] = [];
        const ballast = join(mounted, "ballast");
        let from = "Window 1";
        let refused = 0;
        let kept: ReturnType<typeof operationOf> | undefined;
        for (let edit = 0; edit < 400 && refused === 0; edit++) {
          // The rest of the disk is taken by something else, after a few edits.
          if (edit === 5) fill(ballast, mounted);
          const to = `${edit} ${"x".repeat(100)}`;
          const operation = operationOf(id, acknowledged.length, [
            nameOf("w1", from, to),
            { path: ["note"], ...(edit === 0 ? {} : { from: noteOf(edit - 1) }), to: noteOf(edit) },
          ]);
          const told = await owner.ask("sendOperations", {
            params: { job: id },
            body: { operations: [operation] },
          });
          if (told.status === 200) {
            expect(told.body.answers[0].ok).toBe(true);
            acknowledged.push(operation.id);
            from = to;
          } else {
            refused = told.status;
            kept = operation;
          }
        }
        expect([500, 507]).toContain(refused);
        writeFileSync(ballast, "");
        await own.restart();
        const again = await insisted(() =>
          owner.ask("sendOperations", { params: { job: id }, body: { operations: [kept] } }, 200),
        );
        expect(again.body.answers[0].ok).toBe(true);
        const ids: string[] = [];
        for (let more = true; more; ) {
          const page = (
            await owner.ask("operations", { params: { job: id }, query: { after: String(ids.length) } }, 200)
          ).body;
          ids.push(...page.operations.map((one: NumberedOperation) => one.id));
          more = page.more;
        }
        expect(ids).toEqual([...acknowledged, kept?.id]);
        await here.close();
      } finally {
        await own.stop();
      }
    },
  );
});

/** Long, and not to be packed: the log of the database grows by it. */
function noteOf(edit: number): string {
  let seed = edit + 1;
  return Array.from({ length: 300 }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return seed.toString(36);
  }).join("");
}

function fill(file: string, folder: string): void {
  const { bavail, bsize } = statfsSync(folder);
  writeFileSync(file, Buffer.alloc(Math.max(0, bavail * bsize - 64 * 1024)));
}

async function insisted<T>(ask: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await ask();
    } catch (error) {
      if (tries === 30) throw error;
      await new Promise((go) => setTimeout(go, 200));
    }
  }
}
