import { expect, test } from "vitest";
import { type Job, newJob } from "../../job/index.ts";
import { applyEdit, EMPTY_HISTORY, undo } from "../state/history.ts";
import { isHistory, readableHistory } from "./stored-job.ts";

const job = newJob({ id: "job", name: "Job", system: "metric" });
const { history } = applyEdit<Job>(job, EMPTY_HISTORY, {
  label: "Name",
  patch: [{ op: "replace", path: "/name", value: "Bay" }],
});
const [change] = history.past;

test("a list of changes is taken as it was kept, done and undone ones", () => {
  const back = undo(job, history).history;
  for (const known of [EMPTY_HISTORY, history, back]) {
    const kept = structuredClone(known);
    expect(isHistory(kept)).toBe(true);
    expect(readableHistory({ id: "job", revision: 1, savedAt: 1, job, history: kept })).toBe(kept);
  }
});

test.each([
  ["gone", undefined],
  ["a text", "gone"],
  ["half of one", { past: [] }],
  ["a change without words", { past: [{ ...change, label: 5 }], future: [] }],
  ["a change with no way back", { past: [{ ...change, backward: undefined }], future: [] }],
  ["an undone change that is nothing", { past: [], future: [null] }],
  ["a patch without a place", { past: [{ ...change, forward: [{ op: "remove" }] }], future: [] }],
  ["a patch that is nothing", { past: [{ ...change, backward: [null] }], future: [] }],
])("a list of changes that is spoilt is none: %s", (_, spoilt) => {
  const stored = { id: "job", revision: 1, savedAt: 1, job, history: spoilt };
  expect(readableHistory(stored as never)).toEqual(EMPTY_HISTORY);
});
