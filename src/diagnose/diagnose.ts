import type { Remedy } from "../figures/index.ts";
import { type Job, partsOf, resolveShade } from "../job/index.ts";
import { patched, planWindow, type ShadePlan } from "../plan/index.ts";
import { forceText, lengthText, smallLengthText } from "../units/index.ts";
import type { Cause, CauseOf, Evidence, Facts } from "./cause.ts";
import { CLOTH_CAUSES } from "./causes/cloth-causes.ts";
import { CORD_CAUSES } from "./causes/cord-causes.ts";
import { LOCK_CAUSES } from "./causes/lock-causes.ts";
import type { Symptom } from "./symptoms.ts";

export const CAUSES: readonly CauseOf[] = [...CORD_CAUSES, ...LOCK_CAUSES, ...CLOTH_CAUSES];

const ORDER: readonly Evidence[] = ["points-to-it", "cannot-tell", "speaks-against"];

/**
 * What can be behind a symptom of one shade, what its own numbers point to first. Empty where there is no such window.
 * `shade` is its `planWindow`, where that is at hand already.
 */
export function diagnose(
  job: Job,
  roomIndex: number,
  windowIndex: number,
  symptom: Symptom,
  shade = planWindow(job, roomIndex, windowIndex),
): Cause[] {
  const facts = shade && factsOf(job, roomIndex, windowIndex, shade);
  if (facts === undefined) return [];
  return CAUSES.filter(({ symptoms }) => symptoms.includes(symptom))
    .flatMap(({ judge }) => judge(facts) ?? [])
    .sort((a, b) => ORDER.indexOf(a.evidence) - ORDER.indexOf(b.evidence));
}

/**
 * Whether a remedy answers a cause of this shade: planned as it would be, the numbers point to it less, or not at all.
 */
export function answersCause(
  job: Job,
  roomIndex: number,
  windowIndex: number,
  { id, evidence }: Cause,
  { patch }: Remedy,
): boolean {
  const changed = patched(job, patch);
  const shade = planWindow(changed, roomIndex, windowIndex);
  const facts = shade && factsOf(changed, roomIndex, windowIndex, shade);
  if (facts === undefined) return false;
  const after = CAUSES.flatMap(({ judge }) => judge(facts) ?? []).find((cause) => cause.id === id);
  return after === undefined || ORDER.indexOf(after.evidence) > ORDER.indexOf(evidence);
}

function factsOf(job: Job, roomIndex: number, windowIndex: number, shade: ShadePlan): Facts | undefined {
  const room = job.rooms[roomIndex];
  const window = room?.windows[windowIndex];
  if (room === undefined || window === undefined) return undefined;
  const parts = partsOf(job);
  const resolved = resolveShade(job, parts, room, window, `/rooms/${roomIndex}/windows/${windowIndex}`);
  const { lift } = shade;
  const lock = lift.takeUp === "lock" ? parts.locks.find(({ id }) => id === lift.lockId) : undefined;
  return {
    resolved,
    shade,
    cord: resolved.cord,
    ...(lock === undefined ? {} : { lock }),
    len: (mm) => lengthText(mm, job.units),
    small: (mm) => smallLengthText(mm, job.units),
    force: (n) => forceText(n, job.units),
  };
}
