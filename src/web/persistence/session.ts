import type { Job, JobIssue } from "../../job/index.ts";
import { EMPTY_HISTORY, type History } from "../state/history.ts";
import {
  clearTable,
  layOutJob,
  setAccess,
  setHistoryLost,
  setSaving,
  setTaken,
  usePlanner,
} from "../state/store.ts";
import { Autosave, troubleOf } from "./autosave.ts";
import type { StoredJob } from "./database.ts";
import { DEMO_ID, readDemo } from "./demo.ts";
import { offerDemo, putBack, readStoredJob, type Snapshot, writeJob } from "./job-shelf.ts";
import { newId } from "./new-id.ts";
import { fetchShared, mayEdit } from "./shared-jobs.ts";
import { isHistory, readableHistory, revisionOf } from "./stored-job.ts";
import { holdJob, type JobLock, takeJob } from "./tab-lock.ts";
import { hearTabs, tellTabs } from "./tab-talk.ts";

/** Jobs that could not be written: they live in this tab until they can. */
const inMemory = new Map<string, StoredJob>();

/** A job that is open in this tab: who may write it, and the writing itself. */
class Session {
  readonly jobId: string;
  #lock: JobLock | undefined;
  #autosave: Autosave | undefined;
  #revision = 0;
  #last: Snapshot | undefined;
  #closed = false;
  readonly #stops: (() => void)[] = [];

  constructor(jobId: string) {
    this.jobId = jobId;
  }

  async open(): Promise<void> {
    this.#lock = await holdJob(this.jobId, () => this.#lost());
    if (this.#closed) return this.#lock?.release();
    if (!(await this.#load())) return;
    this.#stops.push(
      hearTabs((message) => {
        if (!("jobId" in message) || message.jobId !== this.jobId) return;
        if (message.kind === "yield") void this.#yield();
        else if (message.kind === "taken") this.#taken(message.binId);
        else if (!this.#lock && message.revision > this.#revision) void this.#follow();
      }),
    );
    let edits = usePlanner.getState().edits;
    this.#stops.push(
      usePlanner.subscribe((planner) => {
        if (planner.edits === edits || planner.job?.id !== this.jobId) return;
        edits = planner.edits;
        this.#save({ job: planner.job, history: planner.history, room: planner.room });
      }),
    );
  }

  /** Makes this tab the one that writes; the other saves and lets go. */
  async takeOver(): Promise<void> {
    if (this.#lock) return;
    tellTabs({ kind: "yield", jobId: this.jobId });
    this.#lock = await takeJob(this.jobId, () => this.#lost());
    await this.#load();
  }

  /** Tries once more to write what is on the table. */
  retry(): void {
    const { job, history, room } = usePlanner.getState();
    if (job?.id === this.jobId) this.#save({ job, history, room });
  }

  #save(snapshot: Snapshot): void {
    this.#last = snapshot;
    this.#autosave?.save(snapshot);
  }

  async close(): Promise<void> {
    this.#closed = true;
    for (const stop of this.#stops) stop();
    await this.#autosave?.settled();
    await this.#lock?.release();
  }

  /** Reads the job as the shelf has it. */
  async #load(): Promise<boolean> {
    let stored: StoredJob | undefined;
    try {
      stored = (await this.#read()) ?? (await this.#demo()) ?? (await this.#shared());
    } catch {
      // What is on the table stays there to be seen.
      if (!this.#closed && usePlanner.getState().job?.id !== this.jobId) setAccess("unreadable");
      return false;
    }
    if (this.#closed) return false;
    if (!stored) {
      setAccess("missing");
      return false;
    }
    const { openJob } = await import("../state/job-door.ts");
    const opened = openJob(stored.job);
    if (this.#closed) return false;
    if (!opened.ok) {
      damaged = { stored: stored.job, issues: opened.issues };
      setAccess("damaged");
      return false;
    }
    this.#revision = revisionOf(stored);
    if (this.#lock) this.#autosave = this.#newAutosave(this.#revision);
    const isUnwritten = inMemory.has(this.jobId);
    const access = this.#lock ? (mayEdit(stored) ? "mine" : "looking") : "elsewhere";
    setHistoryLost(!isHistory(stored.history));
    layOutJob(opened.job, readableHistory(stored), access, isUnwritten, stored.room);
    if (this.#lock && isUnwritten) this.retry();
    return true;
  }

  /** What was never written comes before what is on the shelf. */
  async #read(): Promise<StoredJob | undefined> {
    return inMemory.get(this.jobId) ?? readStoredJob(this.jobId);
  }

  /** A link may lead to the demonstration before the shelf was ever looked at here. */
  async #demo(): Promise<StoredJob | undefined> {
    if (this.jobId !== DEMO_ID) return undefined;
    try {
      await offerDemo(await readDemo());
      return await readStoredJob(this.jobId);
    } catch {
      return undefined;
    }
  }

  /** A job of the workroom that this device has not had yet. */
  async #shared(): Promise<StoredJob | undefined> {
    try {
      return await fetchShared(this.jobId);
    } catch {
      return undefined;
    }
  }

  #newAutosave(revision: number): Autosave {
    return new Autosave(revision, writeJob, (saving, saved) => {
      this.#revision = saved;
      if (saving.state === "failed") this.#keepInMemory();
      if (!this.#closed || saving.state === "failed") setSaving(saving);
      if (saving.state !== "saved") return;
      inMemory.delete(this.jobId);
      tellTabs({ kind: "saved", jobId: this.jobId, revision: saved });
    });
  }

  /** Shows what the writing tab saved, unless something here was never written: that stays on the table. */
  async #follow(): Promise<void> {
    if (usePlanner.getState().saving.state !== "failed") await this.#load();
  }

  #keepInMemory(): void {
    if (!this.#last) return;
    inMemory.set(this.jobId, {
      id: this.jobId,
      revision: this.#revision,
      savedAt: Date.now(),
      ...this.#last,
    });
  }

  /** Another tab asks for the job: everything is saved first. */
  async #yield(): Promise<void> {
    if (!this.#lock) return;
    setAccess("elsewhere");
    await this.#autosave?.settled();
    this.#autosave = undefined;
    const lock = this.#lock;
    this.#lock = undefined;
    await lock.release();
  }

  /** Another tab took the job off the shelf: what is on the table stays to be seen, and can be put back. */
  #taken(binId: string): void {
    this.#autosave = undefined;
    void this.#lock?.release();
    this.#lock = undefined;
    setTaken(binId);
  }

  /** The lock was taken while this tab was too busy to answer. */
  #lost(): void {
    this.#lock = undefined;
    this.#autosave = undefined;
    if (!this.#closed) setAccess("elsewhere");
  }
}

let session: Session | undefined;
/** What this tab is still letting go of: from one page of a job to another, the second waits for the first. */
let closing: Promise<void> = Promise.resolve();
let damaged: { stored: unknown; issues: JobIssue[] } | undefined;

/** Opens a job from the shelf in this tab; the one before is saved and let go. */
export async function openSession(jobId: string): Promise<void> {
  if (session?.jobId === jobId) return;
  void letGo();
  const opening = new Session(jobId);
  session = opening;
  clearTable("opening");
  await closing;
  await opening.open();
}

export async function closeSession(): Promise<void> {
  const free = letGo();
  clearTable();
  await free;
}

function letGo(): Promise<void> {
  const last = session;
  session = undefined;
  if (last) closing = Promise.all([closing, last.close()]).then(() => {});
  return closing;
}

export function takeOver(): Promise<void> {
  return session?.takeOver() ?? Promise.resolve();
}

/** Puts the open job, which another tab took off the shelf, back on it and opens it anew. */
export async function putBackOpen(): Promise<void> {
  const { takenTo, job } = usePlanner.getState();
  const id = takenTo === undefined ? undefined : await putBack(takenTo, newId("job"));
  tellTabs({ kind: "shelf" });
  await closeSession();
  if (id === undefined) return setAccess("missing");
  if (id !== job?.id) location.hash = `/job/${id}`;
  await openSession(id);
}

export function saveAgain(): void {
  session?.retry();
}

/** A job that lives in this tab alone, since it could not be written; the one that is open counts last. */
export function unwrittenJob(): Job | undefined {
  const open = usePlanner.getState().job?.id;
  const all = [...inMemory.values()].map(({ job }) => job);
  return all.findLast((job) => job.id !== open) ?? all.at(-1);
}

/** What stands on the shelf under the id of a job that cannot be read. */
export function damagedJob(): typeof damaged {
  return damaged;
}

/** Puts a new job on the shelf; false where there is no room: it stays in this tab, and the tab says so. */
export async function shelveJob(job: Job, history: History = EMPTY_HISTORY): Promise<boolean> {
  const snapshot: Snapshot = { job, history };
  try {
    await writeJob(snapshot, 0);
    tellTabs({ kind: "shelf" });
    return true;
  } catch (error) {
    inMemory.set(job.id, { id: job.id, revision: 0, savedAt: Date.now(), ...snapshot });
    setSaving({ state: "failed", trouble: troubleOf(error), detail: String(error) });
    return false;
  }
}

/** Puts what is on the table beside the job that another tab saved, and opens it. */
export async function keepCopy(): Promise<void> {
  const { job, history } = usePlanner.getState();
  if (!job) return;
  const copy: Job = { ...job, id: newId("job"), name: `${job.name} (copy)`.slice(0, 120) };
  const isKept = await shelveJob(copy, history);
  inMemory.delete(job.id);
  // A copy that could not be written lives in this tab, which goes on saying so.
  if (isKept) setSaving({ state: "saved" });
  location.hash = `/job/${copy.id}`;
}
