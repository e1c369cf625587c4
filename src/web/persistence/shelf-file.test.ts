import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newJob, openJobText } from "../../job/index.ts";
import { EMPTY_HISTORY } from "../state/history.ts";
import type { StoredJob } from "./database.ts";
import { isShelfText, openShelfText, shelfParts } from "./shelf-file.ts";

const stored = (name: string, at: number): StoredJob => ({
  id: `job-${at}`,
  revision: 1,
  savedAt: 0,
  job: newJob({ id: `job-${at}`, name, system: "metric" }),
  history: EMPTY_HISTORY,
});

describe("the file of a whole shelf", () => {
  it("gives back every job as it was, whatever their names hold", () => {
    const names = fc.array(fc.string({ minLength: 1, maxLength: 40, unit: "grapheme" }), { maxLength: 8 });
    fc.assert(
      fc.property(names, (given) => {
        const shelf = given.map((name) => name.replace(/\p{Cc}/gu, " ")).map(stored);
        const text = shelfParts(shelf).join("");
        expect(isShelfText(text)).toBe(true);
        const { jobs, missing } = openShelfText(text, openJobText);
        expect(missing).toBe(0);
        const readable = shelf.filter(({ job }) => openJobText(JSON.stringify(job)).ok);
        expect(jobs.flatMap((one) => (one.ok ? [one.job] : []))).toEqual(readable.map(({ job }) => job));
      }),
    );
  });

  it("gives what it can of a file that was cut short, and says how many are missing", () => {
    const text = shelfParts([stored("a", 0), stored("b", 1), stored("c", 2)]).join("");
    const { jobs, missing } = openShelfText(text.slice(0, text.lastIndexOf("job-1") + 10), openJobText);
    expect(jobs.map(({ ok }) => ok)).toEqual([true, false]);
    expect(missing).toBe(1);
  });

  it("is not taken for the file of a job, nor the other way round", () => {
    expect(isShelfText(JSON.stringify(stored("a", 0).job))).toBe(false);
    expect(openJobText(shelfParts([stored("a", 0)]).join("")).ok).toBe(false);
  });
});
