import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, it } from "vitest";
import { newJob } from "../../job/index.ts";
import { applyEdit, EMPTY_HISTORY } from "../state/history.ts";
import { closeShelfDatabase } from "./database.ts";
import { listCards, offerDemo, putBack, readStoredJob, removeJob, writeJob } from "./job-shelf.ts";

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

  it("hands a removed job over so that it can be put back", async () => {
    await writeJob(fresh, 0);
    const removed = await removeJob("job");
    expect(await listCards()).toEqual([]);
    if (!removed) throw new Error("invalid test: nothing was removed");
    await putBack(removed);
    expect(await readStoredJob("job")).toEqual(removed);
    expect(await listCards()).toHaveLength(1);
  });

  it("offers the demonstration once, and never to a shelf that has jobs", async () => {
    const demo = { ...job, id: "demo", demo: true };
    await offerDemo(demo);
    expect((await listCards())[0]).toMatchObject({ id: "demo", demo: true });
    await removeJob("demo");
    await offerDemo(demo);
    expect(await listCards()).toEqual([]);
  });
});
