import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  BackupUnfit,
  backupLines,
  examine,
  openEmbedded,
  restoreLines,
  type Store,
} from "../../src/server/index.ts";
import { jobOf, nameOf, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

async function* linesOf(text: string): AsyncGenerator<string> {
  yield* text.split("\n");
}

async function backupOf(store: Store): Promise<string> {
  let text = "";
  for await (const part of backupLines(store)) text += part;
  return text;
}

describe.each(STORES)("a backup of $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("put back into an embedded database", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom("Nähstube „Ost“");
      await here.joined(owner, "fitter");
      const { id } = await owner.makeJob({ ...jobOf(), note: "Zwei\nZeilen\t„“ \\ 10⁻⁷" });
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      await owner.send(id, 0, nameOf("w1", "Window 1", "Left"));
      const at = "2026-01-31T08:00:00.000Z";
      const change = { id: randomUUID(), jobId: id, windowId: "w1", at, state: "cut" };
      await owner.ask("changeWork", { body: { changes: [change] } }, 200);
    });
    afterAll(() => here.close());

    test("has every row, to the last digit; goes on from there; and lets nobody in who was not", async () => {
      const text = await backupOf(here.store);
      const there = new TestWorkroom(await openEmbedded());
      try {
        const rows = await restoreLines(there.store, linesOf(text));
        expect(rows).toBe(text.trim().split("\n").length - 2);
        expect(await there.dump(owner.workroomId)).toEqual(await here.dump(owner.workroomId));
        expect((await backupOf(there.store)).split("\n").sort()).toEqual(text.split("\n").sort());
        const again = owner.from(there);
        const { jobs } = (await again.ask("shelf", {}, 200)).body;
        expect((await again.send(jobs[0].id, 2, nameOf("w2", "Window 2", "West"))).version).toBe(3);
        await expect(restoreLines(there.store, linesOf(text))).rejects.toThrow(BackupUnfit);
        for await (const { isWell, what } of examine(there.store))
          expect([what, isWell]).toEqual([what, true]);
      } finally {
        await there.close();
      }
    });

    test("cut short, damaged, or no backup at all, it leaves the database empty", async () => {
      const text = await backupOf(here.store);
      const lines = text.trimEnd().split("\n");
      const store = await openEmbedded();
      try {
        for (const unfit of [
          "",
          "{}",
          lines.slice(0, -1).join("\n"),
          [...lines.slice(0, 4), ...lines.slice(5)].join("\n"),
          text.slice(0, text.length * 0.7),
          text.replace('"step":', '"step":9'),
          text.replace('["people"', '["pg_authid"'),
        ]) {
          await expect(restoreLines(store, linesOf(unfit))).rejects.toThrow(BackupUnfit);
          expect(await store.db.selectFrom("workrooms").selectAll().execute()).toEqual([]);
        }
      } finally {
        await store.close();
      }
    });

    test("the doctor sees a lost operation and a table without its fence", async () => {
      const troubles = async () => {
        const found: string[] = [];
        for await (const { what, isWell } of examine(here.store)) if (!isWell) found.push(what);
        return found;
      };
      expect(await troubles()).toEqual([]);
      const { sql } = await import("kysely");
      await sql`alter table work disable row level security`.execute(here.store.db);
      await here.store.db.deleteFrom("operations").where("version", "=", 1).execute();
      expect(await troubles()).toEqual([
        "rows of workrooms kept apart by the database",
        "operations numbered without a gap",
        "every job opens",
      ]);
      await sql`alter table work enable row level security`.execute(here.store.db);
    });
  });
});
