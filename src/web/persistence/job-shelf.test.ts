import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { newJob } from "../../job/index.ts";
import { applyEdit, EMPTY_HISTORY } from "../state/history.ts";
import { type Card, closeShelfDatabase, type StoredJob, shelfDatabase } from "./database.ts";
import {
  BIN_DAYS,
  binJob,
  daysLeft,
  listBin,
  listCards,
  offerDemo,
  putBack,
  readStoredJob,
  writeJob,
} from "./job-shelf.ts";
import { revisionOf } from "./stored-job.ts";

const job = newJob({ id: "job", name: "Job", system: "metric" });
const fresh = { job, history: EMPTY_HISTORY };

beforeEach(() => {
  closeShelfDatabase();
  globalThis.indexedDB = new IDBFactory();
});

describe("the shelf", () => {
  it("keeps a job with its history, and a card for it", async () => {
    const edited = applyEdit(job, EMPTY_HISTORY, {
      label: "Name",
      patch: [{ op: "replace", path: "/name", value: "Bay" }],
    });
    await writeJob({ job: edited.document, history: edited.history }, 0);
    expect(await readStoredJob("job")).toMatchObject({ revision: 1, job: { name: "Bay" } });
    expect((await readStoredJob("job"))?.history.past).toHaveLength(1);
    expect(await listCards()).toMatchObject([{ id: "job", name: "Bay", windows: 0, demo: false }]);
  });

  it("refuses a write from an older revision and keeps what it has", async () => {
    expect(await writeJob(fresh, 0)).toEqual({ ok: true, revision: 1 });
    expect(await writeJob({ ...fresh, job: { ...job, name: "Second" } }, 1)).toEqual({
      ok: true,
      revision: 2,
    });
    expect(await writeJob({ ...fresh, job: { ...job, name: "Late" } }, 1)).toEqual({
      ok: false,
      reason: "newer",
    });
    expect((await readStoredJob("job"))?.job.name).toBe("Second");
  });

  it("lets one of two writers from the same revision through", async () => {
    await writeJob(fresh, 0);
    const outcomes = await Promise.all([writeJob(fresh, 1), writeJob(fresh, 1)]);
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
  });

  it("keeps what is taken off in the bin, and puts it back as it was", async () => {
    await writeJob(fresh, 0);
    const before = await readStoredJob("job");
    const binned = await binJob("job");
    expect(await listCards()).toEqual([]);
    expect(await readStoredJob("job")).toBeUndefined();
    expect((await listBin()).map(({ card }) => card.name)).toEqual(["Job"]);
    expect(await putBack(binned?.binId ?? "", "other")).toBe("job");
    expect(await readStoredJob("job")).toEqual(before);
    expect(await listCards()).toHaveLength(1);
    expect(await listBin()).toEqual([]);
  });

  it("puts back beside a job that took its id meanwhile, and takes off twice without loss", async () => {
    await writeJob(fresh, 0);
    const binned = await binJob("job");
    await writeJob({ ...fresh, job: { ...job, name: "Later" } }, 0);
    expect(await putBack(binned?.binId ?? "", "other")).toBe("other");
    expect((await readStoredJob("job"))?.job.name).toBe("Later");
    expect((await readStoredJob("other"))?.job).toMatchObject({ id: "other", name: "Job" });
    expect(await binJob("nothing")).toBeUndefined();
    expect(await putBack("nothing", "x")).toBeUndefined();
  });

  it("empties the bin of what has waited thirty days, and of nothing younger", async () => {
    await writeJob(fresh, 0);
    const binned = await binJob("job");
    if (!binned) throw new Error("invalid test: nothing was taken off");
    const day = 86_400_000;
    expect(daysLeft(binned)).toBe(BIN_DAYS);
    for (let waited = 1; waited <= BIN_DAYS; waited++) {
      const [left] = await listBin(binned.removedAt + waited * day);
      expect(left && daysLeft(left)).toBe(Math.max(1, BIN_DAYS - waited));
      // Looked at twice on one day, it has waited one.
      expect(await listBin(binned.removedAt + waited * day)).toHaveLength(1);
    }
    expect(await listBin(binned.removedAt + (BIN_DAYS + 1) * day)).toEqual([]);
    expect(await listBin(binned.removedAt)).toEqual([]);
  });

  it("keeps the bin where a clock jumps ten years ahead or back: each jump is one day", async () => {
    await writeJob(fresh, 0);
    const binned = await binJob("job");
    if (!binned) throw new Error("invalid test: nothing was taken off");
    const years = 3650 * 86_400_000;
    for (const at of [years, 0, -years]) await listBin(binned.removedAt + at);
    const [left] = await listBin(binned.removedAt);
    expect(left && daysLeft(left)).toBe(BIN_DAYS - 4);
  });

  it("takes a job off twice in one moment of a clock set back, and keeps both", async () => {
    vi.spyOn(Date, "now").mockReturnValue(1_700_000_000_000);
    await writeJob(fresh, 0);
    await binJob("job");
    await writeJob({ ...fresh, job: { ...job, name: "Later" } }, 0);
    await binJob("job");
    vi.restoreAllMocks();
    expect((await listBin()).map(({ card }) => card.name).sort()).toEqual(["Job", "Later"]);
  });

  it.each([
    ["lost", undefined],
    ["spoilt", { id: "job", name: 7, windows: "two", savedAt: "never", demo: "yes" }],
    ["without a day", { id: "job", name: "Job", windows: 0, savedAt: Number.NaN, demo: false }],
  ])("has a card for a job whose own is %s", async (_, card) => {
    await writeJob(fresh, 0);
    const database = await shelfDatabase();
    if (card === undefined) await database.delete("cards", "job");
    else await database.put("cards", card as unknown as Card);
    expect(await listCards()).toMatchObject([{ id: "job", name: "Job", windows: 0, demo: false }]);
    expect((await binJob("job"))?.card.name).toBe("Job");
  });

  it("has a card for a record that holds no job at all, and takes off a card that has no job", async () => {
    await writeJob(fresh, 0);
    const database = await shelfDatabase();
    await database.delete("cards", "job");
    await database.put("jobs", { id: "job", job: { rooms: 5 } } as unknown as StoredJob);
    expect(await listCards()).toMatchObject([{ id: "job", windows: 0 }]);
    await writeJob({ ...fresh, job: { ...job, id: "other" } }, 0);
    await database.delete("jobs", "other");
    expect(await binJob("other")).toBeUndefined();
    expect((await listCards()).map(({ id }) => id)).toEqual(["job"]);
  });

  it("counts saves anew where a record does not say how many, and still lets one of two writers through", async () => {
    await writeJob(fresh, 0);
    const database = await shelfDatabase();
    for (const revision of ["seven", Number.NaN, undefined, -3, 1.5]) {
      await database.put("jobs", { ...fresh, id: "job", savedAt: 1, revision } as StoredJob);
      const base = revisionOf(await readStoredJob("job"));
      expect(base).toBe(0);
      const outcomes = await Promise.all([writeJob(fresh, base), writeJob(fresh, base)]);
      expect(outcomes.filter(({ ok }) => ok)).toEqual([{ ok: true, revision: 1 }]);
    }
  });

  it("does not read a job to save it", async () => {
    await writeJob(fresh, 0);
    const read = vi.spyOn(IDBObjectStore.prototype, "get");
    expect(await writeJob(fresh, 1)).toEqual({ ok: true, revision: 2 });
    expect(read).not.toHaveBeenCalled();
    read.mockRestore();
  });

  it("opens a shelf of the release before, with all that stood on it", async () => {
    const old = await openDB("shadewright", 1, {
      upgrade(database) {
        database.createObjectStore("jobs", { keyPath: "id" });
        database.createObjectStore("cards", { keyPath: "id" });
        database.createObjectStore("marks");
      },
    });
    await old.put("jobs", { id: "job", revision: 3, savedAt: 1, ...fresh });
    old.close();
    expect((await readStoredJob("job"))?.revision).toBe(3);
    expect(await writeJob(fresh, 2)).toEqual({ ok: false, reason: "newer" });
    expect(await writeJob(fresh, 3)).toEqual({ ok: true, revision: 4 });
    expect(await binJob("job")).toBeDefined();
  });

  it("offers the demonstration once, and never to a shelf that has jobs", async () => {
    const demo = { ...job, id: "demo", demo: true };
    await offerDemo(demo);
    expect((await listCards())[0]).toMatchObject({ id: "demo", demo: true });
    await binJob("demo");
    await offerDemo(demo);
    expect(await listCards()).toEqual([]);
  });
});
