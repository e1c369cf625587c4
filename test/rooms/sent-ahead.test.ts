import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inWorkroom } from "../../src/server/index.ts";
import { sendAhead } from "../../src/server/store/send-ahead.ts";
import type { RoomTrx } from "../../src/server/store/store.ts";
import { STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

describe.each(STORES)("what is sent ahead to $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("is part of its transaction", () => {
    let here: TestWorkroom;
    let owner: TestPerson;

    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom();
    });
    afterAll(() => here.close());

    const inOwn = <T>(work: (trx: RoomTrx) => Promise<T>) => inWorkroom(here.store, owner.workroomId, work);
    const attempt = (trx: RoomTrx, key: string) =>
      trx
        .insertInto("attempts")
        .values({ workroom_id: owner.workroomId, key, count: 1, until: new Date("2026-02-01T00:00:00Z") });
    const attempts = () => inOwn((trx) => trx.selectFrom("attempts").select("key").execute());

    test("answers of several come each to its own question", async () => {
      const told = await inOwn(async (trx) => {
        const asked = (n: number) =>
          sendAhead(trx, { compile: () => sql<{ n: number }>`select ${n}::int as n`.compile(trx) });
        const first = await asked(1);
        const second = await asked(2);
        const { rows } = await sql<{ n: number }>`select 3 as n`.execute(trx);
        return [...(await first()), ...(await second()), ...rows].map(({ n }) => n);
      });
      expect(told).toEqual([1, 2, 3]);
    });

    test("it works in the role of requests, though nobody waited for the transaction to begin", async () => {
      const { rows } = await inOwn((trx) => sql`select current_user as role`.execute(trx));
      expect(rows).toEqual([{ role: "shadewright_app" }]);
      await expect(inOwn((trx) => sql`delete from audit`.execute(trx))).rejects.toThrow(/permission denied/);
    });

    test("what is written ahead is there once the transaction is over", async () => {
      await inOwn(async (trx) => {
        await sendAhead(trx, attempt(trx, "last word"));
      });
      expect(await attempts()).toContainEqual({ key: "last word" });
    });

    test("its fault is told by its own name, nothing of the transaction stays, and the connection is fit after", async () => {
      // Class 23, integrity constraint violation, 505: appendix A of the manual of PostgreSQL.
      const twice = inOwn(async (trx) => {
        await attempt(trx, "twice").execute();
        await sendAhead(trx, attempt(trx, "twice"));
        await sql`select 1`.execute(trx);
      });
      await expect(twice).rejects.toMatchObject({ code: "23505" });
      const atTheEnd = inOwn(async (trx) => {
        await attempt(trx, "at the end").execute();
        await sendAhead(trx, attempt(trx, "at the end"));
      });
      await expect(atTheEnd).rejects.toMatchObject({ code: "23505" });
      const keys = (await attempts()).map(({ key }) => key);
      expect(keys).not.toContain("twice");
      expect(keys).not.toContain("at the end");
      const { rows } = await inOwn((trx) => sql`select current_user as role`.execute(trx));
      expect(rows).toEqual([{ role: "shadewright_app" }]);
    });

    test("a role does not outlast its transaction", async () => {
      await inOwn((trx) => sql`select 1`.execute(trx));
      const { rows } = await sql<{ role: string }>`select current_user as role`.execute(here.store.db);
      expect(rows[0]?.role).not.toBe("shadewright_app");
    });
  });
});
