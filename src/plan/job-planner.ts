import type { RoomWindow } from "../align/index.ts";
import { CostSum } from "../cost/index.ts";
import { bySeverity, type Finding, lazy, sameItems, workingOf } from "../figures/index.ts";
import {
  type Catalogue,
  englishOf,
  type Job,
  partsOf,
  type ResolvedRates,
  type ResolvedShade,
  type Room,
  resolveRates,
  resolveShade,
  type Window,
} from "../job/index.ts";
import { askPlace, type CarefulLift, carefulLift, judgeRoomCords } from "../safety/index.ts";
import { type AlignedRoom, type AlignedShade, alignRoom, roomByItself } from "./align-room.ts";
import { madeAgain } from "./made-again.ts";
import { LastRead } from "./memo/last-read.ts";
import { remember } from "./memo/remember.ts";
import { shareEqual } from "./memo/share-equal.ts";
import { PLAN_FORMAT, PLAN_VERSION, type Plan, type ShadePlan } from "./plan-types.ts";
import { type PlannedShade, ShadePlanner } from "./shade-planner.ts";

export interface PlanOptions {
  /** Ids of the windows to plan; all of them unless given. Those of one room still follow their neighbours. */
  only?: readonly string[];
}

/** What the shades of a job share. */
interface Shared {
  parts: Catalogue;
  rates: ResolvedRates;
  careful: CarefulLift;
}

/** One window where it stands in its job. */
interface WindowOfJob {
  job: Job;
  shared: Shared;
  room: Room;
  window: Window;
  r: number;
  w: number;
}

/** What the plan of one window follows from. */
interface PlanRead {
  resolved: ResolvedShade;
  rates: ResolvedRates;
  careful: CarefulLift;
  aligned: AlignedShade | undefined;
}

/** Of a job that is planned once the plans of so many windows are kept; of more each is made again when it is read. */
const MOST_KEPT = 64;

/** One window, and what was last planned of it. */
class WindowPlanner {
  readonly #planner = new ShadePlanner();
  #resolved: ResolvedShade | undefined;
  readonly #resolve = remember((input: ResolveRead) => {
    this.#resolved = shareEqual(this.#resolved, resolveFrom(input));
    return this.#resolved;
  });

  readonly #plan = remember(
    ({ resolved, rates, careful, aligned }: PlanRead): PlannedShade =>
      this.#planner.plan(resolved, rates, careful, aligned),
  );
  #last: { at: WindowOfJob; aligned: AlignedRoom; planned: PlannedShade } | undefined;

  ask(at: WindowOfJob): RoomWindow {
    return this.#planner.ask(this.#resolvedAt(at));
  }

  plan(at: WindowOfJob, aligned: AlignedRoom): PlannedShade {
    // Of thousands of windows one has changed: the others are known at a glance.
    if (this.#last === undefined || !standsAlike(this.#last.at, at) || this.#last.aligned !== aligned) {
      this.#last = { at, aligned, planned: this.#planAt(at, aligned) };
    }
    return this.#last.planned;
  }

  #planAt(at: WindowOfJob, aligned: AlignedRoom): PlannedShade {
    const resolved = this.#resolvedAt(at);
    const { rates, careful } = at.shared;
    return this.#plan({
      ...{ resolved, rates, careful },
      aligned: aligned.shades.get(resolved.shadeId),
    });
  }

  #resolvedAt(at: WindowOfJob): ResolvedShade {
    const { job, shared, room, window } = at;
    const { units, place, purpose, goods, workshop } = job;
    const { parts, careful } = shared;
    const { id: roomId, name: roomName } = room;
    return this.#resolve({
      units,
      place,
      purpose,
      goods,
      workshop,
      parts,
      careful,
      roomId,
      roomName,
      window,
      path: pathOf(at),
    });
  }
}

/** The same window, in a room and a job of which it reads the same. */
function standsAlike(a: WindowOfJob, b: WindowOfJob): boolean {
  return (
    a.window === b.window &&
    a.shared === b.shared &&
    a.r === b.r &&
    a.w === b.w &&
    (a.room === b.room ||
      (b.room.inLine === undefined && a.room.id === b.room.id && a.room.name === b.room.name)) &&
    (a.job === b.job ||
      (a.job.units === b.job.units && a.job.goods === b.job.goods && a.job.workshop === b.job.workshop))
  );
}

function planAgain(at: WindowOfJob, aligned: AlignedRoom): PlannedShade {
  return new WindowPlanner().plan(at, aligned);
}

function countWanted({ rooms }: Job, isWanted: (window: Window) => boolean): number {
  return rooms.reduce((sum, { windows }) => sum + windows.filter(isWanted).length, 0);
}

function pathOf({ r, w }: Pick<WindowOfJob, "r" | "w">): string {
  return `/rooms/${r}/windows/${w}`;
}

/** What answers every question of one window. */
interface ResolveRead extends Pick<Job, "units" | "place" | "purpose" | "goods" | "workshop"> {
  parts: Catalogue;
  careful: CarefulLift;
  roomId: string;
  roomName: string;
  window: Window;
  path: string;
}

function resolveFrom({ parts, careful, roomId, roomName, window, path, ...job }: ResolveRead): ResolvedShade {
  return resolveShade(job, parts, { id: roomId, name: roomName }, window, path, careful);
}

/** One room: its windows, each with a planner of its own, and the line that they share. */
class RoomPlanner {
  readonly #windows: (WindowPlanner | undefined)[] = [];
  readonly #align = remember(alignRoom);
  readonly #byItself = remember(({ id, name }: Pick<Room, "id" | "name">) => roomByItself(id, name));
  #asks: readonly RoomWindow[] = [];

  window(w: number): WindowPlanner {
    this.#windows[w] ??= new WindowPlanner();
    return this.#windows[w];
  }

  /** Of a window that is not planned again for now nothing is remembered. Its place stays: a list with holes in it is slow. */
  forget(w: number): void {
    this.#windows[w] = undefined;
  }

  /** @param standing the windows of the room, asked for only where they are lined up */
  align(
    { units }: Job,
    { id, name, inLine, windows }: Room,
    path: string,
    standing: () => readonly WindowOfJob[],
  ): AlignedRoom {
    this.#windows.length = Math.min(this.#windows.length, windows.length);
    if (inLine === undefined) return this.#byItself({ id, name });
    const asks = standing().map((at, w) => this.window(w).ask(at));
    if (!sameItems(this.#asks, asks)) this.#asks = asks;
    return this.#align({ roomId: id, roomName: name, path, units, inLine, windows: this.#asks });
  }
}

/**
 * Plans a job again and again while it is edited, and runs only what is behind the change: stages, shades and rooms are
 * known by the identity of what they read, so a job must be changed by copies that share what did not change.
 *
 * Each plan is as `plan(job)` would give it from scratch: pure, deterministic and total.
 */
export class JobPlanner {
  readonly #rooms: RoomPlanner[] = [];
  readonly #once: boolean;
  readonly #shared = remember(({ cloths, hardware, rates, ...read }: SharedRead): Shared => {
    return {
      parts: partsOf({ cloths, hardware }),
      rates: resolveRates(rates),
      careful: carefulLift(read),
    };
  });
  readonly #costs = new CostSum();
  readonly #sum = remember(({ planned, ...read }: SumRead) =>
    this.#costs.of({ shades: planned.map(({ cost }) => cost()), ...read }),
  );
  #planned: readonly PlannedShade[] = [];

  /** @param once it plans one job once: what would only serve to plan it again is not kept */
  constructor(once = false) {
    this.#once = once;
  }

  plan(job: Job, { only }: PlanOptions = {}): Plan {
    const shared = this.#sharedBy(job);
    const isWanted = ({ id }: Window) => only === undefined || only.includes(id);
    const rooms: AlignedRoom[] = [];
    const planned: PlannedShade[] = [];
    const isMany = this.#once && countWanted(job, isWanted) > MOST_KEPT;
    const kept = new LastRead<WindowOfJob, PlannedShade>(MOST_KEPT);
    job.rooms.forEach((room, r) => {
      if (only !== undefined && !room.windows.some(isWanted)) return;
      const standing = this.#standing(job, room, r);
      const aligned = this.#room(r).align(job, room, `/rooms/${r}`, () => standing);
      rooms.push(aligned);
      standing.forEach((at, w) => {
        if (!isWanted(at.window)) return;
        const one = this.#room(r).window(w).plan(at, aligned);
        planned.push(isMany ? madeAgain(one, () => kept.of(at, () => planAgain(at, aligned))) : one);
        if (this.#once) this.#room(r).forget(w);
      });
    });
    this.#rooms.length = Math.min(this.#rooms.length, job.rooms.length);
    if (!sameItems(this.#planned, planned)) this.#planned = planned;
    const { rates } = shared;
    const { units, stock } = job;
    const sum = lazy(() => this.#sum({ planned: this.#planned, rates, units, stock }));
    const workings = lazy(() => sum().workings.map(workingOf));
    const findings = lazy(() =>
      [
        ...askPlace(job),
        ...rooms.flatMap((one) => one.findings),
        ...(only === undefined ? cordsOfRooms(job, planned) : []),
        ...sum().findings,
      ].sort(bySeverity),
    );
    return {
      format: PLAN_FORMAT,
      version: PLAN_VERSION,
      jobId: job.id,
      jobName: job.name,
      ...(job.client === undefined ? {} : { client: job.client }),
      demo: job.demo ?? false,
      ...(job.place === undefined ? {} : { place: job.place }),
      ...(job.purpose === undefined ? {} : { purpose: job.purpose }),
      ...(job.goods === undefined ? {} : { goods: job.goods }),
      ...(job.offer === undefined ? {} : { offer: job.offer }),
      units: job.units,
      get english() {
        return englishOf(job);
      },
      shades: planned.map((one) => one.shade),
      rooms: rooms.map(({ room }) => room),
      get findings() {
        return findings();
      },
      get cost() {
        return sum().values;
      },
      get workings() {
        return workings();
      },
    };
  }

  /** What the windows of one room share; undefined where there is no such room. */
  room(job: Job, r: number): AlignedRoom | undefined {
    const room = job.rooms[r];
    if (room === undefined) return undefined;
    return this.#room(r).align(job, room, `/rooms/${r}`, () => this.#standing(job, room, r));
  }

  /** One window's part of the plan alone; undefined where there is no such window. */
  shade(job: Job, r: number, w: number): ShadePlan | undefined {
    const room = job.rooms[r];
    const window = room?.windows[w];
    const aligned = this.room(job, r);
    if (room === undefined || window === undefined || aligned === undefined) return undefined;
    const at = { job, shared: this.#sharedBy(job), room, window, r, w };
    return this.#room(r).window(w).plan(at, aligned).shade;
  }

  /** Of this window nothing is remembered: where it is planned again, it is from scratch. */
  forget(r: number, w: number): void {
    this.#rooms[r]?.forget(w);
  }

  #standing(job: Job, room: Room, r: number): WindowOfJob[] {
    const shared = this.#sharedBy(job);
    return room.windows.map((window, w) => ({ job, shared, room, window, r, w }));
  }

  #room(r: number): RoomPlanner {
    this.#rooms[r] ??= new RoomPlanner();
    return this.#rooms[r];
  }

  #sharedBy({ cloths, hardware, rates, place, purpose, units }: Job): Shared {
    return this.#shared({ cloths, hardware, rates, place, purpose, units });
  }
}

/** Cords of several windows of one room, which the review of one shade does not see together. */
function cordsOfRooms({ rooms, units }: Job, planned: readonly PlannedShade[]): Finding[] {
  let from = 0;
  return rooms.flatMap(({ name, windows }, r) => {
    const shades = planned.slice(from, from + windows.length).map(({ shade }) => shade);
    from += windows.length;
    return judgeRoomCords({ name, units, path: `/rooms/${r}`, shades });
  });
}

type SharedRead = Pick<Job, "cloths" | "hardware" | "rates" | "place" | "purpose" | "units">;

interface SumRead extends Pick<Job, "units" | "stock"> {
  planned: readonly PlannedShade[];
  rates: ResolvedRates;
}
