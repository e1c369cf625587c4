import { parseJSONPointer } from "immutable-json-patch";
import type { Finding, PatchOperation, Remedy } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import { comesToText } from "../../safety/index.ts";
import type { SafetyReview } from "../../shade-plan/index.ts";
import type { FindingCard } from "../cards/finding-cards.ts";
import { JobPlanner } from "../job-planner.ts";
import { LastRead } from "../memo/last-read.ts";
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

type FoundOfShade = Pick<ShadePlan, "findings">;

/**
 * Tries remedies of one job by planning the job as it would be. A change is planned once for a shade, however many
 * findings it stands beside.
 */
export class RemedyTrial {
  readonly #job: Job;
  readonly #shadeAt: (room: number, window: number) => FoundOfShade | undefined;
  readonly #places = new Map<string, WindowIndex>();
  /** A change leaves most of the job as it is, so that little is planned anew. */
  readonly #planner = new JobPlanner();
  /** By what it is about, and by the change. */
  readonly #found = new LastRead<string, Map<string, Found>>(MOST_REMEMBERED, (about) => this.#forget(about));

  /** `shadeAt` gives what is found of a window as the job stands, where that is at hand already. */
  constructor(
    job: Job,
    shadeAt: (room: number, window: number) => FoundOfShade | undefined = (room, window) =>
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
    return after !== undefined && isCured(finding, this.#before(finding), after.findings);
  }

  /** The remedy as it may be offered, with what it comes to; undefined where it does not cure. */
  proven(finding: Finding, remedy: Remedy): Remedy | undefined {
    if (!this.cures(finding, remedy)) return undefined;
    const [review] = this.#after(finding, remedy.patch)?.reviews ?? [];
    const comesTo = finding.stage === "safety" && review !== undefined && comesToText(finding, review);
    if (!comesTo) return remedy;
    return { ...remedy, changes: remedy.changes === undefined ? comesTo : `${remedy.changes} ${comesTo}` };
  }

  /**
   * What answers a whole card, pressed once: the same remedy on every shade that has its cause, planned together, cures
   * each of its findings. In the order in which they are proposed, at most three. `accepts` tells what the fields take.
   */
  answersTo(card: FindingCard, accepts: (remedy: Remedy) => boolean): Remedy[] {
    const [first] = card.findings;
    if (first === undefined || first.isChoice) return [];
    if (card.findings.length === 1) {
      return first.remedies.flatMap((one) => (accepts(one) && this.proven(first, one)) || []);
    }
    const answers: Remedy[] = [];
    for (const [deed, remedies] of deedsOf(card)) {
      if (remedies.length < card.shadeIds.length || !remedies.every(accepts)) continue;
      const answer = together(deed, remedies);
      if (this.#answers(card, answer.patch)) answers.push(answer);
      if (answers.length === MOST_ANSWERS) break;
    }
    return answers;
  }

  /** Whether every finding of the card is cured once the job is planned with all of it. */
  #answers({ findings }: FindingCard, patch: readonly PatchOperation[]): boolean {
    const changed = addsWindows(patch) ? undefined : changedBy(this.#job, patch);
    if (changed === undefined) return false;
    // Each shade once, however many findings are on it.
    const after = new LastRead<string, readonly Finding[]>(MOST_REMEMBERED, (about) => this.#forget(about));
    return findings.every((finding) => {
      const place = this.#placeOf(finding);
      if (place === undefined) return false;
      const found = after.of(
        aboutOf(finding),
        () => this.#planner.shade(changed, place.room, place.window)?.findings ?? [],
      );
      return isCured(finding, this.#before(finding), found);
    });
  }

  #before(finding: Finding): readonly Finding[] {
    const place = this.#placeOf(finding);
    if (place !== undefined) return this.#shadeAt(place.room, place.window)?.findings ?? [];
    return this.#once(finding, [], () => this.#ofJob(this.#job, finding)).findings;
  }

  /** Undefined where the change gives no job: the field is gone, or two windows would share an id. */
  #after(finding: Finding, patch: readonly PatchOperation[]): Found | undefined {
    const changed = changedBy(this.#job, patch);
    if (changed === undefined || (addsWindows(patch) && hasSharedIds(changed))) return undefined;
    const place = this.#placeOf(finding);
    return this.#once(finding, patch, () =>
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

  #once(finding: Finding, patch: readonly PatchOperation[], find: () => Found): Found {
    const founds = this.#foundAbout(finding);
    const key = JSON.stringify(patch);
    const found = founds.get(key) ?? find();
    founds.set(key, found);
    return found;
  }

  /** What was planned of it makes room, too. */
  #forget(about: string): void {
    const place = this.#places.get(about);
    if (place !== undefined) this.#planner.forget(place.room, place.window);
  }

  #foundAbout(finding: Finding): Map<string, Found> {
    return this.#found.of(aboutOf(finding), () => new Map());
  }
}

/** Shades of which is remembered what changes come to: of a job of thousands all at once would fill the memory. */
const MOST_REMEMBERED = 32;

/** More than that are a list that nobody reads. */
const MOST_ANSWERS = 3;

/** What is proposed on the shades of a card, by what is done: at most one remedy of the kind for each shade. */
function deedsOf({ findings }: FindingCard): Map<string, Remedy[]> {
  const deeds = new Map<string, Map<string, Remedy>>();
  for (const { shadeId = "", remedies } of findings) {
    for (const remedy of remedies) {
      const deed = remedy.deed ?? remedy.label;
      const byShade = deeds.get(deed) ?? new Map<string, Remedy>();
      deeds.set(deed, byShade);
      if (!byShade.has(shadeId)) byShade.set(shadeId, remedy);
    }
  }
  return new Map([...deeds].map(([deed, byShade]) => [deed, [...byShade.values()]]));
}

/** Several remedies as one; what all of them change in the same words stands beside it. */
function together(deed: string, remedies: readonly Remedy[]): Remedy {
  const [first] = remedies;
  const same = (text: (remedy: Remedy) => string | undefined) =>
    first !== undefined && remedies.every((one) => text(one) === text(first)) ? text(first) : undefined;
  const changes = same((remedy) => remedy.changes);
  const patches = new Map(
    remedies.flatMap(({ patch }) => patch.map((operation) => [JSON.stringify(operation), operation])),
  );
  return {
    label: same((remedy) => remedy.label) ?? deed,
    ...(changes === undefined ? {} : { changes }),
    patch: [...patches.values()],
  };
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
