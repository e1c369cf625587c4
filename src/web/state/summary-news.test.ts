import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import type { Job } from "../../job/index.ts";
import { JobPlanner } from "../../plan/index.ts";
import { type JobSummary, summaryOf } from "./job-summary.ts";
import { heardSummary, SummaryTeller } from "./summary-news.ts";

const job = jobWith({ id: "east", name: "East window" });
const wider = jobWith({
  id: "east",
  name: "East window",
  opening: { widthsMm: [1900], heightsMm: [1500], sillAboveFloorMm: 800 },
});
// As the worker does it: what did not change is not planned again.
const planner = new JobPlanner();
const plan = (planned: Job) => planner.plan(planned);
const asSent = <V>(value: V): V => structuredClone(value);

test("of a job planned anew only what is another is sent, and the asker has all of it", () => {
  const teller = new SummaryTeller();
  let known: string | undefined;
  let own: JobSummary | undefined;
  const ask = (asked: Job) => {
    const news = asSent(teller.tell(summaryOf(plan(asked)), known));
    known = news.id;
    const before = own;
    own = heardSummary(own, news);
    expect(own).toEqual(asSent(summaryOf(plan(asked))));
    return { news, before, after: own };
  };
  const { after: first } = ask(job);
  const renamed = ask({ ...job, name: "Another name" });
  expect(renamed.news).toMatchObject({ changed: {}, changedFindings: [] });
  expect(renamed.after).toBe(first);
  const changed = ask(wider);
  expect(Object.keys(changed.news.changed)).toContain("cost");
  expect(changed.news.changedFindings.length).toBeGreaterThan(0);
  // A list that gets shorter, and longer again.
  ask({ ...wider, rooms: [] });
  ask(wider);
});

test("who asks a worker that was begun anew gets all of it", () => {
  const first = new SummaryTeller().tell(summaryOf(plan(job)), undefined);
  const anew = new SummaryTeller().tell(summaryOf(plan(job)), first.id);
  expect(Object.keys(anew.changed).sort()).toEqual(["cost", "jobId", "rooms"]);
  expect(anew.changedFindings.length).toBe(anew.findings);
});
