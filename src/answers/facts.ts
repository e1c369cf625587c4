import { figureText, type Working } from "../figures/index.ts";
import {
  type Cord,
  type CordLock,
  type Job,
  partsOf,
  type ResolvedShade,
  resolveShade,
  settingPatch,
  withParents,
} from "../job/index.ts";
import { patched, planWindow, type ShadePlan } from "../plan/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { clothLengthText, forceText, lengthText, trimmed, type UnitChoice } from "../units/index.ts";
import type { AnswerFigure } from "./answer-figure.ts";

export type LockedShade = ShadePlan & { lift: CordLockLift };

/** One shade, as all answers read it. */
export interface AskedShade {
  job: Job;
  place: readonly [room: number, window: number];
  resolved: ResolvedShade;
  shade: ShadePlan;
  units: UnitChoice;
  /**
   * The same shade over a cord lock, whatever raises it: questions about locks are asked by those who raise theirs
   * otherwise, too. Absent where none can be planned.
   */
  locked: () => LockedShade | undefined;
  locks: readonly CordLock[];
  cords: readonly Cord[];
  len: (mm: number) => string;
  force: (n: number) => string;
  /** A figure of the plan with its working; none where this shade has no such figure. */
  figure: (shade: ShadePlan, id: string, label?: string) => AnswerFigure[];
}

/** Everything that an answer reads of one window; undefined where there is no such window. */
export function shadeFacts(
  job: Job,
  room: number,
  window: number,
  shade: ShadePlan | undefined = planWindow(job, room, window),
): AskedShade | undefined {
  const [ofRoom, ofWindow] = [job.rooms[room], job.rooms[room]?.windows[window]];
  if (shade === undefined || ofRoom === undefined || ofWindow === undefined) return undefined;
  const parts = partsOf(job);
  const { units } = job;
  const resolved = resolveShade(job, parts, ofRoom, ofWindow, `/rooms/${room}/windows/${window}`);
  let locked: LockedShade | "none" | undefined;
  return {
    job,
    place: [room, window],
    resolved,
    shade,
    units,
    locked: () => {
      locked ??= overLock(job, room, window, resolved, shade) ?? "none";
      return locked === "none" ? undefined : locked;
    },
    locks: parts.locks,
    cords: parts.cords,
    len: (mm) => lengthText(mm, units),
    force: (n) => forceText(n, units),
    figure: (of, id, label) => {
      const working = of.workings.find((one) => one.id === id);
      return working === undefined ? [] : [figureOf(working, units, of.cost.currency, label)];
    },
  };
}

function figureOf(working: Working, units: UnitChoice, currency: string, label?: string): AnswerFigure {
  return { label: label ?? working.label, text: textOf(working, units, currency), working };
}

/** Cloth off a bolt is told as it is sold, and a ratio with as many figures as it is worth. */
function textOf({ id, value, unit }: Working, units: UnitChoice, currency: string): string {
  if (unit === "mm" && /^cloth\..+-buy$/.test(id)) return clothLengthText(value, units);
  if (unit === "ratio") return trimmed(value, value >= 10 ? 0 : 2);
  return figureText(value, unit, units, currency);
}

function isLocked(shade: ShadePlan | undefined): shade is LockedShade {
  return shade?.lift.kind === "cord-lock";
}

function overLock(
  job: Job,
  room: number,
  window: number,
  resolved: ResolvedShade,
  shade: ShadePlan,
): LockedShade | undefined {
  if (isLocked(shade)) return shade;
  const patch = withParents(settingPatch(resolved, "lift", "kind", "cord-lock"), resolved);
  const other = planWindow(patched(job, patch), room, window);
  return isLocked(other) ? other : undefined;
}
