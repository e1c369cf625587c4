import fc from "fast-check";
import { immutableJSONPatch, type JSONPatchDocument } from "immutable-json-patch";
import { describe, expect, it } from "vitest";
import { answersCause, diagnose, SYMPTOMS } from "../../src/diagnose/index.ts";
import { type Finding, SEVERITIES } from "../../src/figures/index.ts";
import { type Job, newJob, newWindow, openJob } from "../../src/job/index.ts";
import { isWithinFields, type Plan, plan, proveRemedies, RemedyTrial } from "../../src/plan/index.ts";
import { anyJob } from "../arbitrary-job.ts";
import { jobWith } from "../job-with.ts";
import { pinned } from "../pinned.ts";
import { workroomJob } from "../workroom-job.ts";

/** The whole job with the remedy pressed, opened and planned anew, as a stranger to the planner would do it. */
function pressed(job: Job, patch: Finding["remedies"][number]["patch"]): Plan {
  const changed = immutableJSONPatch(JSON.parse(JSON.stringify(job)), patch as JSONPatchDocument);
  const opened = openJob(changed);
  if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
  return plan(opened.job);
}

/** Findings of the shade that one is about, of those that came in its place, or of the job. */
function beside(finding: Finding, planned: Plan, before: Plan): Finding[] {
  const { shadeId } = finding;
  if (shadeId === undefined) return planned.findings;
  const old = new Set(before.shades.map((shade) => shade.shadeId));
  const same = planned.shades.filter((shade) => shade.shadeId === shadeId);
  const now = same.length > 0 ? same : planned.shades.filter((shade) => !old.has(shade.shadeId));
  return now.flatMap(({ findings }) => findings);
}

/** How bad a finding is: a heavier one outweighs any number of lighter ones. */
const badness = (id: string, findings: readonly Finding[]) =>
  findings
    .filter((one) => one.id === id)
    .reduce(
      (sum, { severity, cases = 1 }) =>
        sum + 1000 ** (SEVERITIES.length - SEVERITIES.indexOf(severity)) + cases,
      0,
    );

type Offer = { finding: Finding; remedy: Finding["remedies"][number] };

const offered = (planned: Plan): Offer[] =>
  [...planned.findings, ...planned.shades.flatMap(({ findings }) => findings)].flatMap((finding) =>
    finding.remedies.map((remedy) => ({ finding, remedy })),
  );

describe("a remedy that is offered", () => {
  it.each([
    ["any job", anyJob, 12],
    ["jobs as a workroom has them", workroomJob, 25],
  ] as const)("cures what it stands beside, pressed on the whole job: %s", (_, jobs, numRuns) => {
    let tried = 0;
    fc.assert(
      fc.property(jobs, (job: Job) => {
        const before = plan(job);
        const trial = new RemedyTrial(job);
        const all = offered(before);
        // A few of each job keep the work within bounds.
        for (const at of [0, 0.25, 0.5, 0.75]) {
          const { finding, remedy }: Partial<Offer> = all[Math.floor(at * all.length)] ?? {};
          if (finding === undefined || remedy === undefined || !isWithinFields(remedy)) continue;
          if (!trial.cures(finding, remedy)) continue;
          const after = beside(finding, pressed(job, remedy.patch), before);
          const said = `${finding.id}: ${remedy.label}`;
          if (finding.isChoice) {
            expect(
              after.map(({ text }) => text),
              said,
            ).not.toContain(finding.text);
          } else {
            const was = badness(finding.id, beside(finding, before, before));
            expect(badness(finding.id, after), said).toBeLessThan(was);
          }
          tried++;
        }
      }),
      { numRuns, examples: pinned(import.meta.url, `a remedy that is offered > cures: ${_}`) },
    );
    expect(tried).toBeGreaterThan(numRuns);
  });

  it("is left out where it does not cure: a shade made narrower still shows its wedge of light", () => {
    const job = jobWith({
      opening: { widthsMm: [900], heightsMm: [1500], diagonalsMm: [1740, 1759] },
      shade: { mount: "inside" },
    });
    const labels = (planned: Plan) =>
      offered(planned).flatMap(({ finding, remedy }) =>
        finding.id === "measure.out-of-square" ? remedy.label : [],
      );
    const before = plan(job);
    expect(labels(before)).toHaveLength(2);
    expect(labels(proveRemedies(job, before))).toEqual(["Mount it outside the opening"]);
  });

  it("is left out where a stop would come in place of something lighter", () => {
    const job = newJob({ id: "narrow", name: "Narrow", system: "metric" });
    const window = newWindow({ id: "slit", name: "Slit", widthMm: 100, heightMm: 1200, mount: "to-size" });
    job.rooms[0]?.windows.push(window);
    const before = plan(job);
    const cordLock = (planned: Plan) =>
      offered(planned).filter(({ finding }) => finding.id === "lift.proposed");
    expect(cordLock(before).length).toBe(1);
    const [{ remedy } = { remedy: undefined }] = cordLock(before);
    const after = pressed(job, remedy?.patch ?? []);
    expect(after.shades[0]?.findings.some(({ severity }) => severity === "stop")).toBe(true);
    expect(cordLock(proveRemedies(job, before))).toEqual([]);
  });
});

it("of a cause that a symptom can have, a remedy answers only where the numbers then point to it less", () => {
  const job = jobWith(
    {
      opening: { widthsMm: [1100], heightsMm: [1500] },
      shade: { mount: "outside", making: { fold: { headrailMm: 20 } } },
    },
    { units: { system: "metric", ruler: "1 mm" } },
  );
  const causes = SYMPTOMS.flatMap((symptom) => diagnose(job, 0, 0, symptom));
  const cause = causes.find(({ id }) => id === "headrail-short");
  const [remedy] = cause?.remedies ?? [];
  if (cause === undefined || remedy === undefined) throw new Error("invalid test: no remedy");
  expect(answersCause(job, 0, 0, cause, remedy)).toBe(true);
  expect(answersCause(job, 0, 0, cause, { ...remedy, patch: [] })).toBe(false);
});
