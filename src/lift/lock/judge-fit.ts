import type { Finding, Remedy } from "../../figures/index.ts";
import { type CordLock, settingPatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { fineText } from "../../units/index.ts";
import type { LiftShade, LockInput } from "../lift-input.ts";
import { lockRoom, type Misfit, misfits } from "./lock-fit.ts";

/** More remedies of one kind would only hide the best of them. */
const MOST_OF_A_KIND = 2;

/** Does the lock take so many cords of this diameter? */
export function judgeFit(input: LockInput): Finding[] {
  const { shade, grid, liftParts } = input;
  const { lock } = liftParts;
  const findings = misfits(lock, shade.cord, grid.columns.length).map((misfit) => fitFinding(input, misfit));
  const room = lockRoom(lock, shade.cord);
  if (room.innerOnly && room.cordsMax > 0) findings.push(innerSlots(shade, lock));
  if (lock.demo === true) findings.push(demoLock(shade, liftParts));
  return findings;
}

function base(shade: LiftShade) {
  return {
    stage: "lift",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/lock`,
  } as const;
}

function fitFinding(input: LockInput, { id, severity, reason, cite: from }: Misfit): Finding {
  const { shade, liftParts } = input;
  const remedies =
    severity === "stop" || severity === "fix"
      ? [
          ...otherLocks(input),
          ...(id === "lift.too-many-cords" ? [] : otherCords(input)),
          ...(id === "lift.too-many-cords" ? fewerColumns(input) : []),
        ]
      : [];
  return { ...base(shade), id, severity, text: `“${liftParts.lock.name}” ${reason}.`, cite: from, remedies };
}

function takes(lock: CordLock, cord: LiftShade["cord"], count: number): boolean {
  return misfits(lock, cord, count).every(({ severity }) => severity !== "stop" && severity !== "fix");
}

function otherLocks({ shade, liftParts: { lock }, grid }: LockInput): Remedy[] {
  return shade.locks
    .filter((other) => other.id !== lock.id && takes(other, shade.cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map((other) => ({
      label: `Use “${other.name}”`,
      patch: settingPatch(shade, "lift", "lock", other.id),
    }));
}

function otherCords({ shade, liftParts: { lock }, grid }: LockInput): Remedy[] {
  return (shade.parts?.cords ?? [])
    .filter((cord) => cord.id !== shade.cord.id && takes(lock, cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map((cord) => ({
      label: `Use “${cord.name}”`,
      patch: settingPatch(shade, "lift", "cord", cord.id),
    }));
}

/** Columns cut down to what the roomiest lock for this cord takes. */
function fewerColumns({ shade, grid }: LockInput): Remedy[] {
  const most = shade.locks.reduce((best, lock) => {
    const { cordsMax } = lockRoom(lock, shade.cord);
    return cordsMax > best && takes(lock, shade.cord, cordsMax) ? cordsMax : best;
  }, 0);
  if (most < 2 || most >= grid.columns.length) return [];
  return [
    {
      label: `Use ${most} columns, with ribs so that the folds do not bow`,
      patch: settingPatch(shade, "columns", "count", most),
    },
  ];
}

function innerSlots(shade: LiftShade, lock: CordLock): Finding {
  return {
    ...base(shade),
    id: "lift.inner-slots-only",
    severity: "note",
    text: `Cord of ${fineText(shade.cord.diameterMm)} goes in the inner slots of “${lock.name}” only: in an outer slot it can wedge between roller and housing${lock.endGapMm === undefined ? "" : `, whose gap is ${fineText(lock.endGapMm)} there`}.`,
    cite: cite("lock-instructions", "thin cord in the inner slots only"),
    remedies: [],
  };
}

function demoLock(shade: LiftShade, { lock, forced }: LockInput["liftParts"]): Finding {
  return {
    ...base(shade),
    id: "lift.demo-lock",
    severity: "note",
    text: `The sizes of “${lock.name}” are invented for demonstration${forced ? "" : "; it stands in until you enter the lock in your hand"}. Measure your own before the board is drilled: its length decides where it sits.`,
    cite: cite("demo"),
    remedies: [],
  };
}
