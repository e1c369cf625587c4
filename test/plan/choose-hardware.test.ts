import fc from "fast-check";
import { immutableJSONPatch, type JSONPatchDocument } from "immutable-json-patch";
import { expect, test } from "vitest";
import { jobSchema } from "../../src/job/index.ts";
import { chooseHardware, planWindow } from "../../src/plan/index.ts";
import { anyJob } from "../arbitrary-job.ts";
import { jobWith } from "../job-with.ts";

const job = jobWith({ opening: { widthsMm: [1100], heightsMm: [1500], sillAboveFloorMm: 800 } });

test("each choice, pressed, plans the shade with just these parts and the pull that it was offered with", () => {
  const found = chooseHardware(job, 0, 0);
  expect(found?.choices.length).toBeGreaterThan(4);
  for (const { patch, set, pullN } of found?.choices ?? []) {
    const after = jobSchema.parse(immutableJSONPatch(job, patch as JSONPatchDocument));
    const lift = planWindow(after, 0, 0)?.lift;
    expect(lift?.kind).toBe(set.kind);
    expect(lift?.cordId).toBe(set.cord.id);
    expect(lift?.pullN).toBe(pullN);
    if (lift?.kind === "cord-lock") expect(lift.lockId).toBe(set.lock?.id);
    else if (lift?.kind === "cleat") expect(lift.turn.id).toBe(set.eye?.id);
    else expect([lift?.tube.id, lift?.drive.id]).toEqual([set.tube?.id, set.drive?.id]);
  }
});

test("every kind of lift is offered for a plain shade, and the parts that it has now are marked", () => {
  const found = chooseHardware(job, 0, 0);
  const kinds = new Set(found?.choices.map(({ set }) => set.kind));
  expect(kinds).toEqual(new Set(["cord-lock", "cleat", "spring", "tube-wand", "tube-loop", "motor"]));
  const chosen = found?.choices.filter(({ chosen }) => chosen);
  expect(chosen?.length).toBeLessThanOrEqual(1);
});

test("any job: choices are finite and none is lost to a throw; there is none where there is no window", () => {
  fc.assert(
    fc.property(anyJob, (one) => {
      const found = chooseHardware(one, 0, 0, 1);
      for (const { pullN, materials } of found?.choices ?? []) {
        expect(Number.isFinite(pullN)).toBe(true);
        expect(Number.isFinite(materials)).toBe(true);
      }
    }),
    { numRuns: 25 },
  );
  expect(chooseHardware(job, 0, 7)).toBeUndefined();
});
