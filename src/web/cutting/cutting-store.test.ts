import { afterEach, expect, test, vi } from "vitest";
import { hang, onlyTimersFake, passUntil, stubWorkers } from "../../../test/fake-workers.ts";
import { newJob } from "../../job/index.ts";
import { useReplaced } from "../workers/replaced.ts";
import { findSavings, leaveCutting, startCutting, useCuttingStore } from "./cutting-store.ts";
import type { CuttingProgress } from "./cutting-worker.ts";

afterEach(() => {
  leaveCutting();
  vi.useRealTimers();
  vi.unstubAllGlobals();
  useReplaced.setState({ isTold: false, isShown: false });
});

const job = newJob({ id: "job", name: "Job", system: "metric" });

test("a search for savings that came to grief does not say that nothing saves cloth", async () => {
  stubWorkers({
    savings: () => {
      throw new Error("out of memory");
    },
  });
  await findSavings(job);
  expect(useCuttingStore.getState().savings).toEqual({ state: "failed", found: [], of: job });
});

test("one that is through says so", async () => {
  stubWorkers({ savings: () => undefined });
  await findSavings(job);
  expect(useCuttingStore.getState().savings).toEqual({ state: "done", found: [], of: job });
});

test("one that a change of the job ended has not failed", async () => {
  stubWorkers({ savings: () => new Promise(() => {}), search: () => undefined });
  const ended = findSavings(job);
  await startCutting({ ...job, name: "Changed" }, false);
  await ended;
  expect(useCuttingStore.getState().savings).toEqual({ state: "idle", found: [] });
});

test("one that was asked for before the plan of this very job was begun goes on", async () => {
  let done = () => {};
  stubWorkers({ savings: () => new Promise<void>((resolve) => (done = resolve)), search: () => undefined });
  const found = findSavings(job);
  await startCutting(job, false);
  expect(useCuttingStore.getState().savings.state).toBe("looking");
  done();
  await found;
  expect(useCuttingStore.getState().savings.state).toBe("done");
});

test("a search whose worker hangs goes on in another, and the best plan so far stays", async () => {
  onlyTimersFake();
  const planAt = (cost: number, ended?: CuttingProgress["ended"]) =>
    ({
      cutting: { cloths: [{ answer: { bolts: [], cost } }] },
      tries: 1,
      ended,
    }) as unknown as CuttingProgress;
  const searching =
    (news: CuttingProgress, then: () => Promise<void>) =>
    async (...asked: unknown[]) => {
      await (asked[3] as (progress: CuttingProgress) => Promise<void>)(news);
      await then();
    };
  const workers = stubWorkers(
    { search: searching(planAt(10), hang) },
    { search: searching(planAt(20, "spent"), async () => {}) },
  );
  const cut = startCutting(job, true);
  await passUntil(() => useCuttingStore.getState().state === "ended", 1000);
  await cut;
  expect(useCuttingStore.getState().progress).toMatchObject({
    ended: "spent",
    cutting: planAt(10).cutting,
  });
  expect(workers.begun).toBe(2);
  expect(useReplaced.getState()).toEqual({ isTold: true, isShown: true });
});

test("a look for savings whose worker hangs is begun anew", async () => {
  onlyTimersFake();
  const workers = stubWorkers({ savings: hang }, { savings: () => undefined });
  const found = findSavings(job);
  await passUntil(() => useCuttingStore.getState().savings.state !== "looking", 1000);
  await found;
  expect(useCuttingStore.getState().savings).toEqual({ state: "done", found: [], of: job });
  expect(workers.begun).toBe(2);
});
