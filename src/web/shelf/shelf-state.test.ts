import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, expect, test, vi } from "vitest";
import { newJob } from "../../job/index.ts";
import { closeShelfDatabase } from "../persistence/database.ts";
import * as jobShelf from "../persistence/job-shelf.ts";
import { EMPTY_HISTORY } from "../state/history.ts";
import { loadShelf, useShelf } from "./shelf-state.ts";

vi.mock("../persistence/job-shelf.ts", { spy: true });

beforeEach(() => {
  closeShelfDatabase();
  globalThis.indexedDB = new IDBFactory();
  vi.restoreAllMocks();
});

test("the shelf stands whether or not its bin can be read", async () => {
  const job = newJob({ id: "job", name: "Job", system: "metric" });
  await jobShelf.writeJob({ job, history: EMPTY_HISTORY }, 0);
  vi.mocked(jobShelf.listBin).mockRejectedValueOnce(new Error("damaged"));
  await loadShelf();
  const { cards, bin, trouble } = useShelf.getState();
  expect(cards?.map(({ id }) => id)).toEqual(["job"]);
  expect({ bin, trouble }).toEqual({ bin: [], trouble: undefined });
});
