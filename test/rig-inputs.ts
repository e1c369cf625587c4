import { immutableJSONPatch, type JSONPatchDocument } from "immutable-json-patch";
import type { Remedy } from "../src/figures/index.ts";
import { WorkingBook } from "../src/figures/index.ts";
import {
  type Job,
  jobSchema,
  type LiftKind,
  partsOf,
  type ResolvedShade,
  resolveShade,
} from "../src/job/index.ts";
import {
  chooseLiftParts,
  chooseLock,
  type LiftInput,
  liftPartsInput,
  type TubeInput,
} from "../src/lift/index.ts";
import { measure } from "../src/measure/index.ts";
import type { Mass } from "../src/shade-plan/index.ts";
import { STYLE_MODULES } from "../src/styles/index.ts";

/** A shade of 1 kg of cloth and 0.5 kg of bar, so that loads are easy to follow. */
export const PLAIN_MASS: Mass = {
  parts: [
    { part: "face", label: "Face", massKg: 1 },
    { part: "bar", label: "Bar", massKg: 0.5 },
  ],
  totalKg: 1.5,
  clothGsm: 370,
};

/** What the lift follows from, by the stages before it; the mass is given, so that cloth has no part in it. */
export function rigInput(resolved: ResolvedShade, mass: Mass = PLAIN_MASS): LiftInput {
  const book = new WorkingBook();
  const { values: size } = measure(resolved);
  const style = STYLE_MODULES[resolved.style];
  const { columns } = style.columns(resolved, size, book);
  const { lock } = chooseLock(resolved, columns.length);
  const liftParts = { heightMm: lock.housingHeightMm, label: "lock height" };
  const { grid, form } = style.grid(resolved, size, columns, liftParts, book);
  return { resolved, size, grid, form, mass, lock };
}

/** The same for a lift with a tube. */
export function tubeInput(
  resolved: ResolvedShade,
  kind: Exclude<LiftKind, "cord-lock">,
  mass: Mass = PLAIN_MASS,
): TubeInput {
  const book = new WorkingBook();
  const { values: size } = measure(resolved);
  const style = STYLE_MODULES[resolved.style];
  const { columns } = style.columns(resolved, size, book);
  const liftParts = chooseLiftParts({ ...resolved, liftKind: kind }, size, columns, book);
  const { grid, form } = style.grid(resolved, size, columns, liftParts, book);
  const chosen = liftPartsInput(liftParts);
  if (!("liftParts" in chosen)) throw new Error(`invalid kind of lift: ${kind}`);
  return { resolved: { ...resolved, liftKind: kind }, size, grid, form, mass, ...chosen };
}

/** ResolvedShades of all windows of a job. */
export function resolvedShadesOf(job: Job): ResolvedShade[] {
  const parts = partsOf(job);
  return job.rooms.flatMap((room, r) =>
    room.windows.map((window, w) => resolveShade(job, parts, room, window, `/rooms/${r}/windows/${w}`)),
  );
}

/** The job after a remedy was pressed; the schema has the last word on the patch. */
export function afterRemedy(job: Job, remedy: Remedy): Job {
  return jobSchema.parse(immutableJSONPatch(job, remedy.patch as JSONPatchDocument));
}
