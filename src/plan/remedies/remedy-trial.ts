import { parseJSONPointer } from "immutable-json-patch";
import type { Finding, PatchOperation, Remedy } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import { comesToText } from "../../safety/index.ts";
import type { SafetyReview } from "../../shade-plan/index.ts";
import { JobPlanner } from "../job-planner.ts";
import { patched } from "../patched.ts";
import type { ShadePlan } from "../plan-types.ts";
import { isCured } from "./is-cured.ts";

interface WindowIndex {
  room: number;
  window: number;
}

/** What is found of a shade, a room or the job, and the reviews of the shades that it is about. */
interface Found {
  findings: readonly Finding[];
  reviews: readonly SafetyReview[];
}

/**
 * Tries remedies of one job by planning the job as it would be. A change is planned once for a shade, however many
 * findings it stands beside.
 */
export class RemedyTrial {
  readonly #job: Job;
  readonly #shadeAt: (room: number, window: number) => ShadePlan | undefined;
  readonly #places = new Map<string, WindowIndex>();
  /** A change leaves most of the job as it is, so that little is planned anew. */
  readonly #planner = new JobPlanner();
  readonly #found = new Map<string, Found>();

  /** `shadeAt` gives a window's plan as the job stands, where that is at hand already. */
  constructor(
    job: Job,
    shadeAt: (room: number, window: number) => ShadePlan | undefined = (room, window) =>
      this.#planner.shade(job, room, window),
  ) {
    this.#job = job;
    this.#shadeAt = shadeAt;
    for (const [room, { windows }] of job.rooms.entries())
      for (const [window, { id }] of windows.entries()) this.#places.set(id, { room, window });
  }

  /** Whether the finding is cured once the remedy is pressed. */
  cures(finding: Finding, { patch }: Remedy): boolean {
    const after = this.#after(finding, patch);
    return after !== undefined && isCured(finding, this.#before(finding).findings, after.findings);
  }

  /** The remedy as it may be offered, with what it comes to; undefined where it does not cure. */
  proven(finding: Finding, remedy: Remedy): Remedy | undefined {
    if (!this.cures(finding, remedy)) return undefined;
    const [review] = this.#after(finding, remedy.patch)?.reviews ?? [];
    const comesTo = finding.stage === "safety" && review !== undefined && comesToText(finding, review);
    if (!comesTo) return remedy;
    return { ...remedy, changes: remedy.changes === undefined ? comesTo : `${remedy.changes} ${comesTo}` };
  }

  #before(finding: Finding): Found {
    const place = this.#placeOf(finding);
    return this.#once(aboutOf(finding), () =>
      place === undefined
        ? this.#ofJob(this.#job, finding)
        : foundIn([this.#shadeAt(place.room, place.window)]),
    );
  }

  /** Undefined where the change gives no job: the field is gone, or two windows would share an id. */
  #after(finding: Finding, patch: readonly PatchOperation[]): Found | undefined {
    const changed = changedBy(this.#job, patch);
    if (changed === undefined || (addsWindows(patch) && hasSharedIds(changed))) return undefined;
    const place = this.#placeOf(finding);
    return this.#once(`${aboutOf(finding)} ${JSON.stringify(patch)}`, () =>
      place === undefined
        ? this.#ofJob(changed, finding)
        : foundIn(
            windowsAfter(this.#job, changed, place).map((window) =>
              this.#planner.shade(changed, place.room, window),
            ),
          ),
    );
  }

  /** Findings beside those of the shades: of the room that one names, else of the job. */
  #ofJob(job: Job, { path }: Finding): Found {
    const room = roomOf(path);
    const { findings = [] } =
      (room === undefined ? this.#planner.plan(job, { only: [] }) : this.#planner.room(job, room)) ?? {};
    return { findings, reviews: [] };
  }

  #placeOf({ shadeId }: Finding): WindowIndex | undefined {
    return shadeId === undefined ? undefined : this.#places.get(shadeId);
  }

  #once(key: string, find: () => Found): Found {
    const known = this.#found.get(key);
    if (known !== undefined) return known;
    const found = find();
    this.#found.set(key, found);
    return found;
  }
}

function foundIn(shades: readonly (ShadePlan | undefined)[]): Found {
  const planned = shades.filter((shade) => shade !== undefined);
  return {
    findings: planned.flatMap(({ findings }) => findings),
    reviews: planned.map(({ safety }) => safety),
  };
}

/** A finding can be older than the job, so that what its remedy changes is no longer there. */
function changedBy(job: Job, patch: readonly PatchOperation[]): Job | undefined {
  try {
    return patched(job, patch);
  } catch {
    return undefined;
  }
}

/** What a finding is about: a shade, a room or the job. */
function aboutOf({ shadeId, path }: Finding): string {
  return shadeId ?? `/${roomOf(path) ?? ""}`;
}

function roomOf(path: string | undefined): number | undefined {
  const [rooms, room] = parseJSONPointer(path ?? "");
  return rooms === "rooms" && room !== undefined ? Number(room) : undefined;
}

/** The same window after the change, or those that came in its place. */
function windowsAfter(job: Job, changed: Job, { room, window }: WindowIndex): number[] {
  const before = job.rooms[room]?.windows ?? [];
  const after = changed.rooms[room]?.windows ?? [];
  const same = after.findIndex(({ id }) => id === before[window]?.id);
  if (same >= 0) return [same];
  const old = new Set(before.map(({ id }) => id));
  return [...after.keys()].filter((index) => !old.has(after[index]?.id ?? ""));
}

function addsWindows(patch: readonly PatchOperation[]): boolean {
  return patch.some(({ path }) => /^\/rooms\/\d+\/windows\/\d+$/.test(path));
}

function hasSharedIds({ rooms }: Job): boolean {
  const ids = rooms.flatMap(({ windows }) => windows.map(({ id }) => id));
  return new Set(ids).size < ids.length;
}
