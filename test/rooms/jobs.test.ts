import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openJob } from "../../src/job/index.ts";
import { applyChanges } from "../../src/workroom/merge/index.ts";
import type { NumberedOperation } from "../../src/workroom/protocol/index.ts";
import { jobOf, nameOf, operationOf, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

describe.each(STORES)("jobs on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("the contract", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    let maker: TestPerson;

    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom();
      maker = await here.joined(owner, "maker");
    });

    afterAll(() => here.close());

    const heldBy = async (person: TestPerson, id: string) =>
      (await person.ask("job", { params: { job: id } }, 200)).body;

    test("a job comes on the shelf and back as it was given", async () => {
      const job = await owner.makeJob();
      const { version, job: held, conflicts } = await heldBy(maker, job.id);
      expect({ version, held, conflicts }).toEqual({ version: 0, held: job, conflicts: [] });
      const { jobs } = (await maker.ask("shelf")).body;
      expect(jobs.find(({ id }: { id: string }) => id === job.id)).toMatchObject({
        name: "Bay",
        windows: 2,
        version: 0,
        madeBy: owner.id,
        openConflicts: 0,
      });
    });

    test("the same request twice makes one job; another request with its id is refused", async () => {
      const job = jobOf();
      const request = randomUUID();
      const first = await owner.ask("makeJob", { body: { request, job } }, 201);
      const again = await owner.ask("makeJob", { body: { request, job } }, 201);
      expect(again.body).toEqual(first.body);
      const other = await owner.ask("makeJob", { body: { request: randomUUID(), job } });
      expect([other.status, other.body.issues[0].field]).toEqual([409, "job.id"]);
    });

    test("a job that does not open is refused with its fields", async () => {
      const job = { ...jobOf(), name: "" };
      const { status, body } = await owner.ask("makeJob", { body: { request: randomUUID(), job } });
      expect(status).toBe(400);
      expect(body.issues[0]).toMatchObject({ field: "name", given: '""' });
    });

    test("edits of different fields from one base all stand, numbered one after the other", async () => {
      const { id } = await owner.makeJob();
      const mine = await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      const theirs = await maker.send(id, 0, nameOf("w2", "Window 2", "West"));
      expect([mine.version, theirs.version]).toEqual([1, 2]);
      const { job, conflicts } = await heldBy(owner, id);
      expect(job.rooms[0].windows.map(({ name }: { name: string }) => name)).toEqual(["East", "West"]);
      expect(conflicts).toEqual([]);
    });

    test("an edit of a field that another changed keeps both values until someone settles it", async () => {
      const { id } = await owner.makeJob();
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      await maker.send(id, 0, nameOf("w1", "Window 1", "Left"));
      const held = await heldBy(owner, id);
      expect(held.job.rooms[0].windows[0].name).toBe("Left");
      expect(held.conflicts).toMatchObject([
        {
          ...{ base: "Window 1", mine: "Left", theirs: "East", version: 2 },
          ...{ person: maker.id, theirPerson: owner.id },
        },
      ]);
      const settling = {
        ...operationOf(id, 2, [nameOf("w1", "Left", "East")]),
        settles: [held.conflicts[0].id],
      };
      await owner.sendAll(id, [settling]);
      const after = await heldBy(maker, id);
      expect([after.job.rooms[0].windows[0].name, after.conflicts]).toEqual(["East", []]);
      const { jobs } = (await maker.ask("shelf")).body;
      expect(jobs.find((one: { id: string }) => one.id === id).openConflicts).toBe(0);
    });

    test("an operation sent again, alone or among others, is done once and answered as before", async () => {
      const { id } = await owner.makeJob();
      const one = operationOf(id, 0, [nameOf("w1", "Window 1", "East")]);
      const two = operationOf(id, 0, [nameOf("w2", "Window 2", "West")]);
      const first = await owner.sendAll(id, [one]);
      const again = await owner.sendAll(id, [one, two, one]);
      expect(again.answers[0]).toEqual(first.answers[0]);
      expect(again.answers[2]).toEqual(first.answers[0]);
      expect(again.version).toBe(2);
    });

    test("an edit of a stale client, with hundreds between, meets the job as it is now", async () => {
      const { id } = await owner.makeJob();
      for (let i = 0; i < 120; i += 40) {
        const names = Array.from({ length: 40 }, (_, n) =>
          operationOf(id, i + n, [nameOf("w1", i + n === 0 ? "Window 1" : `${i + n}`, `${i + n + 1}`)]),
        );
        await maker.sendAll(id, names);
      }
      await owner.send(id, 0, nameOf("w2", "Window 2", "West"));
      const { version, job } = await heldBy(owner, id);
      expect(version).toBe(121);
      expect(job.rooms[0].windows.map(({ name }: { name: string }) => name)).toEqual(["120", "West"]);
    });

    test("what would break the job is refused by field, and nothing of it is kept", async () => {
      const { id } = await owner.makeJob();
      const { answers } = await owner.send(id, 0, {
        path: ["rooms", { id: "room-1" }, "windows", { id: "w1" }, "opening", "widthsMm"],
        from: [900],
        to: [-3],
      });
      expect(answers[0]).toMatchObject({ ok: false });
      expect(JSON.stringify(answers[0])).toContain("widthsMm");
      expect((await heldBy(owner, id)).version).toBe(0);
    });

    test("a version from the future, and an operation of another job, are refused", async () => {
      const { id } = await owner.makeJob();
      const future = await owner.send(id, 7, nameOf("w1", "Window 1", "East"));
      expect(future.answers[0]).toMatchObject({ ok: false, issues: [{ field: "baseVersion", given: "7" }] });
      const strange = await owner.sendAll(id, [
        operationOf("another", 0, [nameOf("w1", "Window 1", "East")]),
      ]);
      expect(strange.answers[0]).toMatchObject({ ok: false, issues: [{ field: "jobId" }] });
    });

    test("operations in pages make the job again from its beginning", async () => {
      const job = await owner.makeJob();
      await owner.send(job.id, 0, nameOf("w1", "Window 1", "East"));
      await maker.send(job.id, 1, nameOf("w1", "East", "Left"));
      const { body } = await owner.ask("operations", { params: { job: job.id }, query: { after: "0" } }, 200);
      const made = body.operations.reduce(
        (state: typeof job, { changes }: NumberedOperation) => applyChanges(state, changes),
        job,
      );
      expect(made).toEqual((await heldBy(owner, job.id)).job);
      expect(body.operations.map(({ version, person }: NumberedOperation) => [version, person])).toEqual([
        [1, owner.id],
        [2, maker.id],
      ]);
    });

    test("history by day and person, and any state restored by an operation that can be undone", async () => {
      const job = await owner.makeJob();
      await owner.send(job.id, 0, nameOf("w1", "Window 1", "East"));
      await owner.send(job.id, 1, nameOf("w2", "Window 2", "West"));
      await maker.send(job.id, 2, nameOf("w1", "East", "Left"));
      const { entries } = (
        await owner.ask("jobHistory", { params: { job: job.id }, query: { zone: "Asia/Tokyo" } }, 200)
      ).body;
      const day = new Intl.DateTimeFormat("sv-SE", { timeZone: "Asia/Tokyo" }).format(new Date());
      expect(entries).toEqual([
        { day, person: maker.id, fromVersion: 3, toVersion: 3, changes: 1 },
        { day, person: owner.id, fromVersion: 1, toVersion: 2, changes: 2 },
      ]);
      await owner.ask(
        "restoreJob",
        { params: { job: job.id }, body: { operation: randomUUID(), version: 0 } },
        200,
      );
      const back = await heldBy(maker, job.id);
      expect([back.version, back.job]).toEqual([4, job]);
      const before = (await owner.ask("jobAt", { params: { job: job.id, version: "3" } }, 200)).body;
      expect(before.job.rooms[0].windows[0].name).toBe("Left");
      expect((await owner.ask("jobAt", { params: { job: job.id, version: "5" } })).status).toBe(404);
    });

    test("the bin holds a job, unchanged and unchangeable, until it is put back", async () => {
      const job = await owner.makeJob();
      await maker.ask("binJob", { params: { job: job.id } }, 200);
      const onShelf = (await owner.ask("shelf")).body.jobs.map(({ id }: { id: string }) => id);
      expect(onShelf).not.toContain(job.id);
      expect((await owner.ask("bin")).body.jobs.map(({ id }: { id: string }) => id)).toContain(job.id);
      const body = { operations: [operationOf(job.id, 0, [nameOf("w1", "Window 1", "East")])] };
      expect((await owner.ask("sendOperations", { params: { job: job.id }, body })).status).toBe(410);
      await owner.ask("putBackJob", { params: { job: job.id } }, 200);
      expect((await heldBy(owner, job.id)).job).toEqual(job);
    });

    test("the whole shelf in one file opens again, job by job", async () => {
      const job = await owner.makeJob();
      await owner.send(job.id, 0, nameOf("w1", "Window 1", "East"));
      const { body } = await owner.ask("wholeShelf", {}, 200);
      const [head, ...lines] = body
        .trim()
        .split("\n")
        .map((line: string) => JSON.parse(line));
      expect(head.jobs).toBe(lines.length);
      expect(lines.every((line: unknown) => openJob(line).ok)).toBe(true);
      expect(lines).toContainEqual((await heldBy(owner, job.id)).job);
    });

    test("every other process on the database sees what one wrote, whatever it had seen before", async () => {
      const other = new TestWorkroom(here.store);
      const there = maker.from(other);
      const { id } = await owner.makeJob();
      await heldBy(there, id);
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      await there.send(id, 0, nameOf("w2", "Window 2", "West"));
      await owner.send(id, 1, nameOf("w1", "East", "Left"));
      const names = (held: { job: ReturnType<typeof jobOf> }) =>
        held.job.rooms[0]?.windows.map(({ name }) => name);
      expect(names(await heldBy(there, id))).toEqual(["Left", "West"]);
      expect(names(await heldBy(owner, id))).toEqual(["Left", "West"]);
    });

    test("edits that come at once all stand, each with a number of its own", async () => {
      const { id } = await owner.makeJob(jobOf(12));
      const other = maker.from(new TestWorkroom(here.store));
      const sent = await Promise.all(
        Array.from({ length: 12 }, (_, i) =>
          (i % 2 === 0 ? owner : other).send(id, 0, nameOf(`w${i + 1}`, `Window ${i + 1}`, `Sash ${i + 1}`)),
        ),
      );
      const numbers = sent.flatMap(({ answers }) =>
        answers.map((one) => (one.ok ? one.operation.version : -1)),
      );
      expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
      const { job } = await heldBy(owner, id);
      expect(job.rooms[0].windows.map(({ name }: { name: string }) => name)).toEqual(
        Array.from({ length: 12 }, (_, i) => `Sash ${i + 1}`),
      );
    });
  });
});
