import { beforeEach, describe, expect, it } from "vitest";
import { type Job, newJob } from "../../job/index.ts";
import { addToList, editField, removeFromList } from "./fields.ts";
import { EMPTY_HISTORY } from "./history.ts";
import {
  clearTable,
  edit,
  goToChange,
  layOutJob,
  redoEdit,
  setSaving,
  undoEdit,
  usePlanner,
} from "./store.ts";

const job = newJob({ id: "job", name: "Job", system: "metric" });
const table = () => usePlanner.getState();
const name = () => table().job?.name;

beforeEach(() => {
  clearTable();
  layOutJob(job, EMPTY_HISTORY, "mine");
});

describe("the job on the table", () => {
  it("is edited, undone and done again, each of which asks to be saved", () => {
    const before = table().edits;
    editField("/name", "Bay", "Name");
    expect(name()).toBe("Bay");
    undoEdit();
    expect(name()).toBe("Job");
    expect(table().said).toBe("Undone: Name");
    redoEdit();
    expect(name()).toBe("Bay");
    expect(table().edits).toBe(before + 3);
  });

  it("shares what an edit leaves alone", () => {
    editField("/name", "Bay", "Name");
    expect(table().job?.rooms).toBe(job.rooms);
  });

  it("sets a setting whose parents are missing, and leaves no empty ones behind when it is taken back", () => {
    editField("/workshop/fold/rows", 6, "Rows");
    expect(table().job?.workshop).toEqual({ fold: { rows: 6 } });
    editField("/workshop/fold/rows", undefined, "Rows");
    expect(table().job).not.toHaveProperty("workshop");
  });

  it("puts one at the end of a list that may not be there, and drops the list with its last", () => {
    const at = "/hardware/eyes";
    addToList(at, "a", "Add");
    addToList(at, "b", "Add");
    expect(table().job?.hardware).toEqual({ eyes: ["a", "b"] });
    removeFromList(at, 0, "Remove");
    expect(table().job?.hardware).toEqual({ eyes: ["b"] });
    removeFromList(at, 0, "Remove");
    expect(table().job?.hardware).toEqual({});
  });

  it("changes nothing in a tab that only reads", () => {
    layOutJob(job, EMPTY_HISTORY, "elsewhere");
    editField("/name", "Bay", "Name");
    undoEdit();
    redoEdit();
    expect(table().job).toBe(job);
  });

  it("ignores an edit that sets what is there already, and an undo of nothing", () => {
    const before = table().edits;
    editField("/name", "Job", "Name");
    edit({ label: "Nothing", patch: [] });
    undoEdit();
    expect(table().edits).toBe(before);
  });

  it("goes back to any change of its history and forward again, as one step each", () => {
    editField("/name", "A", "Name");
    editField("/client", "B", "For");
    editField("/name", "C", "Name");
    const before = table().edits;
    goToChange(1);
    expect(table().job).toMatchObject({ name: "A" });
    expect(table().job?.client).toBeUndefined();
    expect(table().edits).toBe(before + 1);
    goToChange(3);
    expect(table().job).toMatchObject({ name: "C", client: "B" });
    goToChange(0);
    expect(table().job).toEqual(job);
    goToChange(0);
    expect(table().edits).toBe(before + 3);
  });

  it("does not call saved what was never written", () => {
    layOutJob({ ...job, id: "unwritten" } as Job, EMPTY_HISTORY, "mine", true);
    expect(table().saving.state).toBe("saving");
  });

  it("still says that something was not saved when another page is looked at, not when another job is", () => {
    setSaving({ state: "failed", trouble: "full", detail: "" });
    clearTable();
    expect(table().saving.state).toBe("failed");
    layOutJob({ ...job, id: "other" } as Job, EMPTY_HISTORY, "mine");
    expect(table().saving.state).toBe("saved");
  });
});
