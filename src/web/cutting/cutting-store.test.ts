import { expose } from "comlink";
import { afterEach, expect, test, vi } from "vitest";
import { newJob } from "../../job/index.ts";
import { withLife } from "../workers/worker-life.ts";
import { findSavings, leaveCutting, startCutting, useCuttingStore } from "./cutting-store.ts";

afterEach(() => {
  leaveCutting();
  vi.unstubAllGlobals();
});

/** Every worker from here on does what it is told to do here. */
function workersDo(service: object): void {
  vi.stubGlobal("Worker", function begun() {
    const { port1, port2 } = new MessageChannel();
    expose(withLife(service), port2);
    port2.start();
    port1.start();
    return Object.assign(port1, { terminate: () => port1.close() });
  });
}

const job = newJob({ id: "job", name: "Job", system: "metric" });

test("a search for savings that came to grief does not say that nothing saves cloth", async () => {
  workersDo({
    savings: () => {
      throw new Error("out of memory");
    },
  });
  await findSavings(job);
  expect(useCuttingStore.getState().savings).toEqual({ state: "failed", found: [], of: job });
});

test("one that is through says so", async () => {
  workersDo({ savings: () => undefined });
  await findSavings(job);
  expect(useCuttingStore.getState().savings).toEqual({ state: "done", found: [], of: job });
});

test("one that a change of the job ended has not failed", async () => {
  workersDo({ savings: () => new Promise(() => {}), search: () => undefined });
  const ended = findSavings(job);
  await startCutting({ ...job, name: "Changed" }, false);
  await ended;
  expect(useCuttingStore.getState().savings).toEqual({ state: "idle", found: [] });
});

test("one that was asked for before the plan of this very job was begun goes on", async () => {
  let done = () => {};
  workersDo({ savings: () => new Promise<void>((resolve) => (done = resolve)), search: () => undefined });
  const found = findSavings(job);
  await startCutting(job, false);
  expect(useCuttingStore.getState().savings.state).toBe("looking");
  done();
  await found;
  expect(useCuttingStore.getState().savings.state).toBe("done");
});
