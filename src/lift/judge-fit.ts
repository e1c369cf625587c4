import type { Finding, Remedy } from "../figures/index.ts";
import { type Brief, type CordLock, settingPatch } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import { fineText } from "../units/index.ts";
import type { LockChoice } from "./choose-lock.ts";
import type { LiftInput } from "./lift-input.ts";
import { lockRoom, type Misfit, misfits } from "./lock-fit.ts";

/** More remedies of one kind would only hide the best of them. */
const MOST_OF_A_KIND = 2;

/** Does the lock take so many cords of this diameter? */
export function judgeFit(input: LiftInput, choice: LockChoice): Finding[] {
  const { brief, lock, grid } = input;
  const findings = misfits(lock, brief.cord, grid.columns.length).map((misfit) => fitFinding(input, misfit));
  const room = lockRoom(lock, brief.cord);
  if (room.innerOnly && room.cordsMax > 0) findings.push(innerSlots(brief, lock));
  if (lock.demo === true) findings.push(demoLock(brief, lock, choice));
  return findings;
}

function base(brief: Brief) {
  return { stage: "lift", shadeId: brief.shadeId, path: `${brief.path}/shade/making/lift/lock` } as const;
}

function fitFinding(input: LiftInput, { id, weight, reason, cite: from }: Misfit): Finding {
  const { brief, lock } = input;
  const remedies =
    weight === "stop" || weight === "fix"
      ? [
          ...otherLocks(input),
          ...(id === "lift.too-many-cords" ? [] : otherCords(input)),
          ...(id === "lift.too-many-cords" ? fewerColumns(input) : []),
        ]
      : [];
  return { ...base(brief), id, weight, text: `“${lock.name}” ${reason}.`, cite: from, remedies };
}

function takes(lock: CordLock, cord: Brief["cord"], count: number): boolean {
  return misfits(lock, cord, count).every(({ weight }) => weight !== "stop" && weight !== "fix");
}

function otherLocks({ brief, lock, grid }: LiftInput): Remedy[] {
  return brief.locks
    .filter((other) => other.id !== lock.id && takes(other, brief.cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map((other) => ({
      label: `Use “${other.name}”`,
      patch: settingPatch(brief, "lift", "lock", other.id),
    }));
}

function otherCords({ brief, lock, grid }: LiftInput): Remedy[] {
  return (brief.parts?.cords ?? [])
    .filter((cord) => cord.id !== brief.cord.id && takes(lock, cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map((cord) => ({
      label: `Use “${cord.name}”`,
      patch: settingPatch(brief, "lift", "cord", cord.id),
    }));
}

/** Columns cut down to what the roomiest lock for this cord takes. */
function fewerColumns({ brief, grid }: LiftInput): Remedy[] {
  const most = brief.locks.reduce((best, lock) => {
    const { cordsMax } = lockRoom(lock, brief.cord);
    return cordsMax > best && takes(lock, brief.cord, cordsMax) ? cordsMax : best;
  }, 0);
  if (most < 2 || most >= grid.columns.length) return [];
  return [
    {
      label: `Use ${most} columns, with ribs so that the folds do not bow`,
      patch: settingPatch(brief, "columns", "count", most),
    },
  ];
}

function innerSlots(brief: Brief, lock: CordLock): Finding {
  return {
    ...base(brief),
    id: "lift.inner-slots-only",
    weight: "mind",
    text: `Cord of ${fineText(brief.cord.diameterMm)} goes in the inner slots of “${lock.name}” only: in an outer slot it can wedge between roller and housing.`,
    cite: cite("lock-instructions", "thin cord in the inner slots only"),
    remedies: [],
  };
}

function demoLock(brief: Brief, lock: CordLock, { forced }: LockChoice): Finding {
  return {
    ...base(brief),
    id: "lift.demo-lock",
    weight: "mind",
    text: `The sizes of “${lock.name}” are invented for demonstration${forced ? "" : "; it stands in until you enter the lock in your hand"}. Measure your own before the board is drilled: its length decides where it sits.`,
    cite: cite("demo"),
    remedies: [],
  };
}
