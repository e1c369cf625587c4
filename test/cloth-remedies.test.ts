import fc from "fast-check";
import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { expect, it } from "vitest";
import { type Job, jobSchema, withParents } from "../src/job/index.ts";
import { anyJob } from "./arbitrary-job.ts";
import { clothsOfJob } from "./cloth-shade.ts";

/** Findings of the cloth that one edit answers: after it they are gone. Where a join comes is a preference, told either way. */
const ANSWERED = [
  "cloth.railroad-too-narrow",
  "cloth.railroad-sideways",
  "cloth.railroaded",
  "cloth.could-railroad",
  "cloth.motif-off-place",
  "cloth.motif-costs",
  "cloth.gap-centred",
  "cloth.banding-too-wide",
  "cloth.bottom-band-too-deep",
  "cloth.mitre-without-hem",
  "cloth.returns-inside",
  "cloth.open-ends",
  "cloth.bagged-unlined",
];

const textsOf = (job: Job, index: number, id: string) =>
  clothsOfJob(job)
    [index]?.findings.filter((finding) => finding.id === id)
    .map(({ text }) => text) ?? [];

it("over any job, what a remedy of the cloth promises is so once it is pressed", () => {
  const pressed = new Map<string, number>();
  fc.assert(
    fc.property(anyJob, (job) => {
      clothsOfJob(job).forEach(({ shade, findings }, index) => {
        for (const { id, text, remedies } of findings.filter((one) => ANSWERED.includes(one.id))) {
          for (const { label, patch } of remedies) {
            const changed = jobSchema.parse(
              applyPatch(JSON.parse(JSON.stringify(job)), withParents(patch, shade) as never),
            );
            expect(textsOf(changed, index, id), `${id}: ${label}`).not.toContain(text);
            pressed.set(id, (pressed.get(id) ?? 0) + 1);
          }
        }
      });
    }),
    { numRuns: 60 },
  );
  expect(pressed.size).toBeGreaterThan(5);
});
