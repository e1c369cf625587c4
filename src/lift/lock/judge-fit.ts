import { type Finding, isGrave, type Remedy } from "../../figures/index.ts";
import { type CordLock, type LockSize, partChoice, settingPatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { fineText } from "../../units/index.ts";
import { counted, listed } from "../../words/index.ts";
import type { LiftShade, LockInput } from "../lift-input.ts";
import { lockRoom, type Misfit, misfits } from "./lock-fit.ts";

/** More remedies of one kind would only hide the best of them. */
const MOST_OF_A_KIND = 2;

/** Does the lock take so many cords of this diameter? */
export function judgeFit(input: LockInput): Finding[] {
  const { shade, grid, liftParts } = input;
  const { lock } = liftParts;
  const none = noOwnLock(input);
  const against = misfits(lock, shade.cord, grid.columns.length);
  // Where none of the maker's own locks will do, each is named with its reasons: this one with them.
  const said = none === undefined ? against : against.filter(({ severity }) => severity !== "stop");
  const findings = [
    ...(none === undefined ? [] : [none]),
    ...said.map((misfit) => fitFinding(input, misfit)),
  ];
  if (lock.unmeasured !== undefined) findings.push(unmeasured(shade, lock, lock.unmeasured));
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
  const remedies = isGrave({ severity })
    ? [
        ...otherLocks(input),
        ...(id === "lift.too-many-cords" ? [] : otherCords(input)),
        ...(id === "lift.too-many-cords" ? fewerColumns(input) : []),
      ]
    : [];
  return { ...base(shade), id, severity, text: `“${liftParts.lock.name}” ${reason}.`, cite: from, remedies };
}

/**
 * None of the maker's own locks takes these cords. No example of the catalogue stands in: the nearest is drawn, each is
 * refused with its reasons, and what would do is told.
 */
function noOwnLock({ shade, grid, liftParts }: LockInput): Finding | undefined {
  const own = shade.locks.filter(({ demo }) => demo !== true);
  if (liftParts.lock.demo === true || own.length === 0) return undefined;
  const count = grid.columns.length;
  const refused = own.map((lock) => ({ lock, stops: stopsAgainst(lock, shade.cord, count) }));
  if (refused.some(({ stops }) => stops.length === 0)) return undefined;
  const named = refused
    .slice(0, MOST_NAMED)
    .map(({ lock, stops }) => `“${lock.name}” ${stops.map(({ reason }) => reason).join("; it ")}`);
  const more = refused.length - named.length;
  const slots = Math.ceil(count / 2);
  return {
    ...base(shade),
    id: "lift.no-own-lock",
    severity: "stop",
    text: `None of your own locks takes ${counted(count, "cord")} of ${fineText(shade.cord.diameterMm)}: ${named.join(". ")}${more > 0 ? `. ${more} more are refused as well` : ""}. The first that comes near is drawn; do not rig it so. What would do: a lock for cord of ${fineText(shade.cord.diameterMm)} that takes ${counted(count, "cord")}, with ${counted(slots, "slot")} or more at two in a slot.`,
    cite: cite("lock-instructions", "capacity and cord diameters of a lock"),
    remedies: [...cordsThatGo(shade, own, count), ...fewerColumns({ shade, grid })],
  };
}

/** More would hide what would do. */
const MOST_NAMED = 4;

function stopsAgainst(lock: CordLock, cord: LiftShade["cord"], count: number): Misfit[] {
  return misfits(lock, cord, count).filter(({ severity }) => severity === "stop");
}

/** Cords that one of the maker's own locks takes: the maker's own before those of the catalogue. */
function cordsThatGo(shade: LiftShade, own: readonly CordLock[], count: number): Remedy[] {
  return shade.parts.cords
    .filter((cord) => cord.id !== shade.cord.id && own.some((lock) => takes(lock, cord, count)))
    .slice(0, MOST_OF_A_KIND)
    .map(partChoice(shade, "lift", "cord"));
}

const SIZE_WORDS: Record<LockSize, string> = {
  housingLengthMm: "length along the board",
  housingWidthMm: "width across the board",
  housingHeightMm: "height",
  dividerWires: "number of slots",
};

/** What was taken for a lock that nobody measured whole, and that nothing rests on it. */
function unmeasured(shade: LiftShade, lock: CordLock, sizes: readonly LockSize[]): Finding {
  const taken = sizes.map((size) =>
    size === "dividerWires"
      ? `the ${SIZE_WORDS[size]} (${lock.slots === undefined ? "" : `wires and slots given do not agree; `}drawn as ${lock.dividerWires + 1})`
      : `the ${SIZE_WORDS[size]} (drawn as ${fineText(lock[size])})`,
  );
  return {
    ...base(shade),
    id: "lift.lock-unmeasured",
    severity: "unproven",
    text: `Not known of “${lock.name}”: ${listed(taken)}. What is drawn in their place is no lock’s. Measure them before the board is drilled: they decide where it sits, how high the shade folds and which slot takes which cord.`,
    cite: cite("our-choice", "a housing larger than most, until it is measured"),
    remedies: [],
  };
}

function takes(lock: CordLock, cord: LiftShade["cord"], count: number): boolean {
  return misfits(lock, cord, count).every(({ severity }) => severity !== "stop" && severity !== "fix");
}

function otherLocks({ shade, liftParts: { lock }, grid }: LockInput): Remedy[] {
  return shade.locks
    .filter((other) => other.id !== lock.id && takes(other, shade.cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map(partChoice(shade, "lift", "lock"));
}

function otherCords({ shade, liftParts: { lock }, grid }: LockInput): Remedy[] {
  return shade.parts.cords
    .filter((cord) => cord.id !== shade.cord.id && takes(lock, cord, grid.columns.length))
    .slice(0, MOST_OF_A_KIND)
    .map(partChoice(shade, "lift", "cord"));
}

/** Columns cut down to what the roomiest lock for this cord takes. */
function fewerColumns({ shade, grid }: Pick<LockInput, "shade" | "grid">): Remedy[] {
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
