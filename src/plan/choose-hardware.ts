import type { PatchOperation } from "../account/index.ts";
import { type Catalogue, DEFAULTS, type Job, partsOf, type Window } from "../job/index.ts";
import {
  HARD_PULL,
  type HardwareNeed,
  type HardwareSearch,
  type HardwareSet,
  searchHardware,
} from "../lift/index.ts";
import type { RuleOutcome } from "../shade/index.ts";
import { planWindow } from "./plan.ts";
import type { ShadePlan } from "./plan-types.ts";

/** One set of parts with the shade planned for it in full. */
export interface HardwareChoice {
  set: HardwareSet;
  /** As the shade has it now. */
  chosen: boolean;
  /** From the whole plan with this set: pull at the hand, N, where the raised hem hangs, mm, findings by weight, child-safety rules by outcome. */
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
    const other = withSet(job, roomIndex, windowIndex, set);
    const planned = planWindow(other, roomIndex, windowIndex);
    if (planned === undefined) return [];
    return [choiceOf(set, shade, planned, patchOf(window, roomIndex, windowIndex, set))];
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
  const weighing = (weight: "stop" | "fix") =>
    planned.findings.filter((finding) => finding.weight === weight).length;
  return {
    set,
    chosen: partsIn(now) === partsIn(planned),
    pullN: planned.lift.pullN,
    raisedHeightMm: planned.grid.raisedHeightMm,
    stops: weighing("stop"),
    fixes: weighing("fix"),
    safety: planned.safety.counts,
    materials: planned.cost.materials,
    patch,
  };
}

/** The parts of a planned lift in one line, to tell whether two are the same. */
function partsIn({ lift, cost }: ShadePlan): string {
  const eyes = cost.shopping.filter(({ id }) => id.startsWith("eye-")).map(({ id }) => id);
  const gear = lift.kind === "cord-lock" ? [lift.lockId, ...eyes] : [lift.tube.id, lift.drive.id];
  return [lift.kind, lift.cordId, ...gear].join(" ");
}

function needOf(job: Job, shade: ShadePlan, window: Window): HardwareNeed {
  const { size, grid, lift, board, mass } = shade;
  const making = { ...job.workshop?.lift, ...window.shade.making?.lift };
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
    straightRunMm: making.straightRunMm ?? DEFAULTS.lift.straightRunMm.value,
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

function withSet(job: Job, room: number, at: number, set: HardwareSet): Job {
  const rooms = job.rooms.map((one, r) =>
    r !== room
      ? one
      : {
          ...one,
          windows: one.windows.map((window, w) => {
            if (w !== at) return window;
            const { making } = window.shade;
            const lift = { ...making?.lift, ...settingsOf(set) };
            return { ...window, shade: { ...window.shade, making: { ...making, lift } } };
          }),
        },
  );
  return { ...job, rooms };
}

/** RFC 6902 adds only into objects that exist: the whole of what is missing is added at once. */
function patchOf({ shade }: Window, room: number, window: number, set: HardwareSet): PatchOperation[] {
  const making = `/rooms/${room}/windows/${window}/shade/making`;
  const lift = { ...shade.making?.lift, ...settingsOf(set) };
  return shade.making === undefined
    ? [{ op: "add", path: making, value: { lift } }]
    : [{ op: "add", path: `${making}/lift`, value: lift }];
}
