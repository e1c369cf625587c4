import { type PatchOperation, setPatch } from "../figures/index.ts";
import { type Catalogue, type Job, partsOf, resolveMaking, type Window } from "../job/index.ts";
import {
  HARD_PULL,
  type HardwareNeed,
  type HardwareSearch,
  type HardwareSet,
  searchHardware,
} from "../lift/index.ts";
import type { RuleOutcome } from "../shade-plan/index.ts";
import { patched } from "./patched.ts";
import { planWindow } from "./plan.ts";
import type { ShadePlan } from "./plan-types.ts";

/** One set of parts with the shade planned for it in full. */
export interface HardwareChoice {
  set: HardwareSet;
  /** As the shade has it now. */
  chosen: boolean;
  /** From the whole plan with this set: pull at the hand, N, where the raised hem hangs, mm, findings by severity, child-safety rules by outcome. */
  pullN: number;
  raisedHeightMm: number;
  stops: number;
  fixes: number;
  safety: Record<RuleOutcome, number>;
  materials: number;
  /** Sets the shade so. */
  patch: PatchOperation[];
}

export interface HardwareChoices {
  need: HardwareNeed;
  search: HardwareSearch;
  /** The best few sets of each kind, the fewest stops first, then the easiest pull. */
  choices: HardwareChoice[];
}

/**
 * What raises one shade of a job: every set of parts at hand, the best few of each kind planned in full.
 * Undefined where there is no such window.
 */
export function chooseHardware(
  job: Job,
  roomIndex: number,
  windowIndex: number,
  perKind = 3,
): HardwareChoices | undefined {
  const window = job.rooms[roomIndex]?.windows[windowIndex];
  const shade = planWindow(job, roomIndex, windowIndex);
  if (window === undefined || shade === undefined) return undefined;
  const shelf: Catalogue = partsOf(job);
  const need = needOf(job, shade, window);
  const search = searchHardware(need, shelf, perKind);
  const choices = search.sets.flatMap((set): HardwareChoice[] => {
    const patch = patchOf(job, roomIndex, windowIndex, set);
    const planned = planWindow(patched(job, patch), roomIndex, windowIndex);
    return planned === undefined ? [] : [choiceOf(set, shade, planned, patch)];
  });
  return { need, search, choices: choices.sort(byStanding) };
}

function byStanding(a: HardwareChoice, b: HardwareChoice): number {
  return a.stops - b.stops || a.safety.failed - b.safety.failed || a.pullN - b.pullN;
}

function choiceOf(
  set: HardwareSet,
  now: ShadePlan,
  planned: ShadePlan,
  patch: PatchOperation[],
): HardwareChoice {
  const ofSeverity = (severity: "stop" | "fix") =>
    planned.findings.filter((finding) => finding.severity === severity).length;
  return {
    set,
    chosen: partsIn(now) === partsIn(planned),
    pullN: planned.lift.pullN,
    raisedHeightMm: planned.grid.raisedHeightMm,
    stops: ofSeverity("stop"),
    fixes: ofSeverity("fix"),
    safety: planned.safety.counts,
    materials: planned.cost.materials,
    patch,
  };
}

/** The parts of a planned lift in one line, to tell whether two are the same. */
function partsIn({ lift, cost }: ShadePlan): string {
  const eyes = cost.shopping.filter(({ id }) => id.startsWith("eye-")).map(({ id }) => id);
  const partIds =
    lift.takeUp === "lock"
      ? [lift.lockId, ...eyes]
      : lift.takeUp === "cleat"
        ? eyes
        : [lift.tube.id, lift.drive.id];
  return [lift.kind, lift.cordId, ...partIds].join(" ");
}

function needOf(job: Job, shade: ShadePlan, window: Window): HardwareNeed {
  const { size, grid, lift, board, mass } = shade;
  const making = resolveMaking(window.shade.making, job.workshop, shade.style);
  return {
    units: job.units,
    controlSide: lift.controlSide,
    columnsMm: grid.columns.map(({ xMm }) => xMm),
    widthMm: size.finishedWidthMm,
    boardLengthMm: size.boardLengthMm,
    boardDepthMm: board.depthMm,
    heldLoweredN: lift.course.heights[0]?.heldN ?? lift.heldN,
    heldRaisedN: lift.heldN,
    massKg: mass.totalKg,
    riseMm: lift.cords[0]?.riseMm ?? size.finishedLengthMm,
    travelMm: grid.travelMm,
    spareMm: size.finishedLengthMm / 2 + (lift.cords[0]?.knotsMm ?? 0),
    straightRunMm: making.lift.straightRunMm,
    handMostN: HARD_PULL.value,
  };
}

function settingsOf({ kind, cord, lock, eye, tube, drive }: HardwareSet) {
  return {
    kind,
    cord: cord.id,
    ...(lock === undefined ? {} : { lock: lock.id }),
    ...(eye === undefined ? {} : { eye: eye.id }),
    ...(tube === undefined ? {} : { tube: tube.id }),
    ...(drive === undefined ? {} : { drive: drive.id }),
  };
}

function patchOf(job: Job, room: number, window: number, set: HardwareSet): PatchOperation[] {
  const lift = job.rooms[room]?.windows[window]?.shade.making?.lift;
  const pointer = `/rooms/${room}/windows/${window}/shade/making/lift`;
  return setPatch(job, pointer, { ...lift, ...settingsOf(set) });
}
