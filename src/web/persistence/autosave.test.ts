import { describe, expect, it } from "vitest";
import { type Job, newJob } from "../../job/index.ts";
import { EMPTY_HISTORY } from "../state/history.ts";
import { Autosave, type SavingState } from "./autosave.ts";
import type { Snapshot, Written } from "./job-shelf.ts";

const job = newJob({ id: "job", name: "Job", system: "metric" });
const named = (name: string): Snapshot => ({ job: { ...job, name } as Job, history: EMPTY_HISTORY });
const now = (run: () => void) => run();

/** A writer whose writes end when the test says so. */
function slowWriter() {
  const written: { name: string; base: number }[] = [];
  const ends: ((outcome: Written | Error) => void)[] = [];
  const write = ({ job: { name } }: Snapshot, base: number) =>
    new Promise<Written>((resolve, reject) => {
      written.push({ name, base });
      ends.push((outcome) => (outcome instanceof Error ? reject(outcome) : resolve(outcome)));
    });
  const end = async (outcome: Written | Error) => {
    ends.shift()?.(outcome);
    for (let turn = 0; turn < 10; turn++) await Promise.resolve();
  };
  return { written, write, end };
}

async function begun(): Promise<void> {
  for (let turn = 0; turn < 10; turn++) await Promise.resolve();
}

describe("autosave", () => {
  it("says saved only once the newest edit is on disk, and writes the newest of those that waited", async () => {
    const said: string[] = [];
    const { written, write, end } = slowWriter();
    const autosave = new Autosave(4, write, (saving) => said.push(saving.state), now);
    autosave.save(named("a"));
    await begun();
    autosave.save(named("b"));
    autosave.save(named("c"));
    expect(said).toEqual(["saving"]);
    await end({ ok: true, revision: 5 });
    expect(said).toEqual(["saving"]);
    expect(written).toEqual([
      { name: "a", base: 4 },
      { name: "c", base: 5 },
    ]);
    await end({ ok: true, revision: 6 });
    expect(said).toEqual(["saving", "saved"]);
  });

  it("tells a full disk, and tries a later edit all the same", async () => {
    const said: SavingState[] = [];
    const { write, end } = slowWriter();
    const autosave = new Autosave(0, write, (saving) => said.push(saving), now);
    autosave.save(named("a"));
    await begun();
    await end(new DOMException("full", "QuotaExceededError"));
    expect(said.at(-1)).toMatchObject({ state: "failed", trouble: "full" });
    autosave.save(named("b"));
    await begun();
    await end({ ok: true, revision: 1 });
    expect(said.at(-1)).toEqual({ state: "saved" });
  });

  it("tells that another tab saved later, and keeps its own revision", async () => {
    const said: SavingState[] = [];
    const { written, write, end } = slowWriter();
    const autosave = new Autosave(2, write, (saving) => said.push(saving), now);
    autosave.save(named("a"));
    await begun();
    await end({ ok: false, reason: "newer" });
    expect(said.at(-1)).toMatchObject({ state: "failed", trouble: "newer" });
    autosave.save(named("b"));
    await begun();
    expect(written.at(-1)).toEqual({ name: "b", base: 2 });
    await end({ ok: false, reason: "newer" });
    await autosave.settled();
  });
});
