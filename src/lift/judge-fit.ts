import type { Finding, Remedy } from "../figures/index.ts";
import { type CordLock, type ResolvedShade, settingPatch } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import { fineText } from "../units/index.ts";
import type { LockChoice } from "./choose-lock.ts";
import type { LiftInput } from "./lift-input.ts";
import { lockRoom, type Misfit, misfits } from "./lock-fit.ts";

/** More remedies of one kind would only hide the best of them. */
const MOST_OF_A_KIND = 2;

/** Does the lock take so many cords of this diameter? */
export function judgeFit(input: LiftInput, choice: LockChoice): Finding[] {
  const { resolved, lock, grid } = input;
  const findings = misfits(lock, resolved.cord, grid.columns.length).map((misfit) =>
    fitFinding(input, misfit),
  );
  const room = lockRoom(lock, resolved.cord);
  if (room.innerOnly && room.cordsMax > 0) findings.push(innerSlots(resolved, lock));
  if (lock.demo === true) findings.push(demoLock(resolved, lock, choice));
  return findings;
}

function base(resolved: ResolvedShade) {
  return {
    stage: "lift",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/shade/making/lift/lock`,
  } as const;
}

function fitFinding(input: LiftInput, { id, severity, reason, cite: from }: Misfit): Finding {
  const { resolved, lock } = input;
  const remedies =
    severity === "stop" || severity === "fix"
      ? [
          ...otherLocks(input),
          ...(id === "lift.too-many-cords" ? [] : otherCords(input)),
          ...(id === "lift.too-many-cords" ? fewerColumns(input) : []),
        ]
      : [];
  return { ...base(resolved), id, severity, text: `“${lock.name}” ${reason}.`, cite: from, remedies };
}

function takes(lock: CordLock, cord: ResolvedShade["cord"], count: number): boolean {
  return misfits(lock, cord, count).every(({ severity }) => severity !== "stop" && severity !== "fix");
}

function otherLocks({ resolved, lock, grid }: LiftInput): Remedy[] {
  return resolved.locks
    .filter((other) => other.id !== lock.id && takes(other, resolved.cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map((other) => ({
      label: `Use “${other.name}”`,
      patch: settingPatch(resolved, "lift", "lock", other.id),
    }));
}

function otherCords({ resolved, lock, grid }: LiftInput): Remedy[] {
  return (resolved.parts?.cords ?? [])
    .filter((cord) => cord.id !== resolved.cord.id && takes(lock, cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map((cord) => ({
      label: `Use “${cord.name}”`,
      patch: settingPatch(resolved, "lift", "cord", cord.id),
    }));
}

/** Columns cut down to what the roomiest lock for this cord takes. */
function fewerColumns({ resolved, grid }: LiftInput): Remedy[] {
  const most = resolved.locks.reduce((best, lock) => {
    const { cordsMax } = lockRoom(lock, resolved.cord);
    return cordsMax > best && takes(lock, resolved.cord, cordsMax) ? cordsMax : best;
  }, 0);
  if (most < 2 || most >= grid.columns.length) return [];
  return [
    {
      label: `Use ${most} columns, with ribs so that the folds do not bow`,
      patch: settingPatch(resolved, "columns", "count", most),
    },
  ];
}

function innerSlots(resolved: ResolvedShade, lock: CordLock): Finding {
  return {
    ...base(resolved),
    id: "lift.inner-slots-only",
    severity: "note",
    text: `Cord of ${fineText(resolved.cord.diameterMm)} goes in the inner slots of “${lock.name}” only: in an outer slot it can wedge between roller and housing.`,
    cite: cite("lock-instructions", "thin cord in the inner slots only"),
    remedies: [],
  };
}

function demoLock(resolved: ResolvedShade, lock: CordLock, { forced }: LockChoice): Finding {
  return {
    ...base(resolved),
    id: "lift.demo-lock",
    severity: "note",
    text: `The sizes of “${lock.name}” are invented for demonstration${forced ? "" : "; it stands in until you enter the lock in your hand"}. Measure your own before the board is drilled: its length decides where it sits.`,
    cite: cite("demo"),
    remedies: [],
  };
}
