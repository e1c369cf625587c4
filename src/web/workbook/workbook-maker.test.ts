import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { hang, onlyTimersFake, passUntil, stubWorkers } from "../../../test/fake-workers.ts";
import { newJob } from "../../job/index.ts";
import type { WorkbookProgress } from "../../workbook/index.ts";
import { useReplaced } from "../workers/replaced.ts";
import { makeAndDownload, stopMaking, useMaking } from "./workbook-maker.ts";

const downloads = vi.hoisted((): string[] => []);
vi.mock("../persistence/job-file.ts", async (original) => ({
  ...(await original<typeof import("../persistence/job-file.ts")>()),
  download: (_: Blob, name: string) => downloads.push(name),
}));

beforeEach(() => {
  onlyTimersFake();
  downloads.length = 0;
});
afterEach(() => {
  stopMaking();
  vi.useRealTimers();
  vi.unstubAllGlobals();
  useReplaced.setState({ isTold: false, isShown: false });
});

const job = newJob({ id: "job", name: "Job", system: "metric" });
const isOver = () => ["done", "failed"].includes(useMaking.getState().state);

test("a worker that hangs over a workbook is replaced, the workbook made all the same, and the maker told", async () => {
  const workers = stubWorkers({ workbook: hang }, { workbook: () => new Uint8Array(4) });
  const made = makeAndDownload(job, "a4", ["table"]);
  await passUntil(isOver, 1000);
  await made;
  expect(useMaking.getState()).toMatchObject({ state: "done", name: "Job.pdf" });
  expect(downloads).toEqual(["Job.pdf"]);
  expect(workers.begun).toBe(2);
  expect(useReplaced.getState()).toEqual({ isTold: true, isShown: true });
});

test("one that tells of its pages is let work on, however long that takes", async () => {
  const turn = () => new Promise((resolve) => setImmediate(resolve));
  const workers = stubWorkers({
    async workbook(...asked: unknown[]) {
      const tell = asked[4] as (progress: WorkbookProgress) => Promise<void>;
      for (let done = 0; done < 20; done++) {
        await tell({ done, total: 20, pages: done, set: "table" });
        await turn();
      }
      return new Uint8Array(4);
    },
  });
  const made = makeAndDownload(job, "a4", ["table"]);
  let told = 0;
  while (!isOver()) {
    await turn();
    const making = useMaking.getState();
    // Nearly as long as may pass in silence, after every word.
    if (making.state === "making" && making.pages > told) {
      told = making.pages;
      vi.advanceTimersByTime(50_000);
    }
  }
  await made;
  expect(useMaking.getState()).toMatchObject({ state: "done", pages: 19 });
  expect(workers.begun).toBe(1);
});
