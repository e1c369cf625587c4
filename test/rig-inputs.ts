import { immutableJSONPatch, type JSONPatchDocument } from "immutable-json-patch";
import type { Remedy, StageResult } from "../src/figures/index.ts";
import {
  type Job,
  jobSchema,
  partsOf,
  type ResolvedShade,
  resolveShade,
  withParents,
} from "../src/job/index.ts";
import {
  chooseLiftParts,
  type LiftInput,
  type LockInput,
  planLift,
  type TubeInput,
} from "../src/lift/index.ts";
import { measure } from "../src/measure/index.ts";
import type { CordLockLift, Mass, TubeLift } from "../src/shade-plan/index.ts";
import { STYLE_MODULES } from "../src/styles/index.ts";
import { layIn } from "./laid-shade.ts";

/** A shade of 1 kg of cloth and 0.5 kg of bar, so that loads are easy to follow. */
export const PLAIN_MASS: Mass = {
  parts: [
    { part: "face", label: "Face", massKg: 1 },
    { part: "bar", label: "Bar", massKg: 0.5 },
  ],
  totalKg: 1.5,
  clothGsm: 370,
  onBoardKg: 0,
};

/** A shade and what its lift follows from, by the stages before it; the mass is given, so that cloth has no part in it. */
export function rigInput(resolved: ResolvedShade, mass?: Mass): LockInput & { resolved: ResolvedShade } {
  const { liftParts, ...input } = liftInput({ ...resolved, liftKind: "cord-lock" }, mass);
  if (liftParts.takeUp !== "lock") throw new Error(`invalid kind of lift: ${liftParts.kind}`);
  return { ...input, resolved, liftParts };
}

/** The same for a lift with a tube. */
export function tubeInput(resolved: ResolvedShade, kind: TubeLift["kind"], mass?: Mass): TubeInput {
  const { liftParts, ...input } = liftInput({ ...resolved, liftKind: kind }, mass);
  if (liftParts.takeUp !== "tube") throw new Error(`invalid kind of lift: ${kind}`);
  return { ...input, liftParts };
}

export function plannedLock(input: LockInput): StageResult<CordLockLift> {
  const { values: lift, findings, workings } = planLift(input);
  if (lift.takeUp !== "lock") throw new Error(`invalid kind of lift: ${lift.kind}`);
  return { values: lift, findings, workings };
}

export function plannedTube(input: TubeInput): StageResult<TubeLift> {
  const { values: lift, findings, workings } = planLift(input);
  if (lift.takeUp !== "tube") throw new Error(`invalid kind of lift: ${lift.kind}`);
  return { values: lift, findings, workings };
}

function liftInput(shade: ResolvedShade, mass: Mass = PLAIN_MASS): LiftInput {
  const { values: size } = measure(shade);
  const { values: columns } = STYLE_MODULES[shade.style].columns({ shade, size });
  const { values: liftParts } = chooseLiftParts({ shade, size, columns });
  const { grid, form } = layIn(shade, size, () => liftParts);
  return { shade, size, grid, form, mass, liftParts };
}

/** ResolvedShades of all windows of a job. */
export function resolvedShadesOf(job: Job): ResolvedShade[] {
  const parts = partsOf(job);
  return job.rooms.flatMap((room, r) =>
    room.windows.map((window, w) => resolveShade(job, parts, room, window, `/rooms/${r}/windows/${w}`)),
  );
}

/** The job after a remedy of a stage was pressed; the schema has the last word on the patch. */
export function afterRemedy(job: Job, { patch }: Pick<Remedy, "patch">): Job {
  const whole = resolvedShadesOf(job).reduce<Remedy["patch"]>(
    (some, shade) => withParents(some, shade),
    patch,
  );
  return jobSchema.parse(immutableJSONPatch(job, whole as JSONPatchDocument));
}
