import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inWorkroom, ROOM_TABLES } from "../../src/server/index.ts";
import { nameOf, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

describe.each(STORES)("the database itself on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("keeps workrooms apart", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    let stranger: TestPerson;

    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom();
      stranger = await here.workroom();
      const { id } = await owner.makeJob();
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
    });
    afterAll(() => here.close());

    const count = async (workroomId: string, table: string) =>
      await inWorkroom(here.store, workroomId, async (trx) => {
        const { rows } = await sql<{ ids: string[] | null; count: number }>`select count(*)::int as count,
          array_agg(distinct ${sql.ref(table === "workrooms" ? "id" : "workroom_id")}::text) as ids
          from ${sql.table(table)}`.execute(trx);
        return rows[0];
      });

    test.each(ROOM_TABLES)("%s: a query without a condition sees its own rows alone", async (table) => {
      const own = await count(owner.workroomId, table);
      if (own?.count) expect(own.ids).toEqual([owner.workroomId]);
      expect((await count(randomUUID(), table))?.count).toBe(0);
    });

    test("every table that is there is fenced: a new one cannot be forgotten", async () => {
      const { rows } = await sql<{ name: string }>`select tablename as name from pg_tables
        where schemaname = 'public' and tablename <> 'store_migrations' order by 1`.execute(here.store.db);
      expect(rows.map(({ name }) => name)).toEqual([...ROOM_TABLES].sort());
    });

    test("a row for another workroom is not taken", async () => {
      const values = { workroom_id: owner.workroomId, key: "x", count: 1, until: new Date() };
      const writing = inWorkroom(here.store, stranger.workroomId, (trx) =>
        trx.insertInto("attempts").values(values).execute(),
      );
      await expect(writing).rejects.toThrow(/row-level security/);
    });

    test.each([
      ["a change of the audit log", sql`update audit set action = 'nothing'`],
      ["a removal from the audit log", sql`delete from audit`],
      ["a change of an operation", sql`update operations set changes = '[]'`],
      ["a removal of an operation", sql`delete from operations`],
      ["another workroom’s name", sql`update workrooms set name = 'x'`],
      ["a table made", sql`create table public.own (id integer)`],
    ])("requests have no right to %s", async (_what, statement) => {
      const doing = inWorkroom(here.store, owner.workroomId, (trx) => statement.execute(trx));
      await expect(doing).rejects.toThrow(/permission denied/);
    });

    test("the role ends with the transaction", async () => {
      await inWorkroom(here.store, owner.workroomId, async () => {});
      const { rows } = await sql<{ role: string; room: string }>`select current_setting('role') as role,
        coalesce(current_setting('shadewright.workroom', true), '') as room`.execute(here.store.db);
      expect(rows[0]).toEqual({ role: "none", room: "" });
    });
  });
});
