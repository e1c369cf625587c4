import type { Job } from "../../job/index.ts";
import type { Replica } from "../../workroom/merge/index.ts";
import { type Change, EMPTY_HISTORY, type History } from "../state/history.ts";
import type { Card, StoredJob } from "./database.ts";

/** Whether a record's list of changes is one, to its last patch: a device may have spoilt it, or another program. */
export function isHistory(value: unknown): value is History {
  const { past, future } = (value ?? {}) as Partial<Record<keyof History, unknown>>;
  return [past, future].every((list) => Array.isArray(list) && list.every(isChange));
}

function isChange(value: unknown): value is Change {
  const { label, forward, backward } = (value ?? {}) as Partial<Record<keyof Change, unknown>>;
  return typeof label === "string" && [forward, backward].every(isPatch);
}

function isPatch(value: unknown): boolean {
  return (
    Array.isArray(value) && value.every((one) => typeof one?.op === "string" && typeof one.path === "string")
  );
}

/** The list of changes as far as it can be relied on: all of it or none, since each change builds on the one before. */
export function readableHistory({ history }: StoredJob): History {
  return isHistory(history) ? history : EMPTY_HISTORY;
}

/** How often a job was saved; none where the record does not say so. */
export function revisionOf(stored: StoredJob | undefined): number {
  const revision = stored?.revision;
  return Number.isSafeInteger(revision) ? Math.max(0, revision ?? 0) : 0;
}

export function cardOf(job: Job, savedAt: number, room?: Replica): Card {
  return {
    id: job.id,
    name: job.name,
    ...(job.client === undefined ? {} : { client: job.client }),
    demo: job.demo === true,
    ...(room === undefined ? {} : { inRoom: true as const }),
    windows: job.rooms.reduce((sum, room) => sum + room.windows.length, 0),
    savedAt,
  };
}

/** Whether a card can be shown. */
export function isCard(value: unknown): value is Card {
  const { id, name, client, windows, savedAt } = (value ?? {}) as Partial<Record<keyof Card, unknown>>;
  return (
    typeof id === "string" &&
    typeof name === "string" &&
    (client === undefined || typeof client === "string") &&
    [windows, savedAt].every((number) => Number.isFinite(number))
  );
}

/** A card from a record of which nothing is sure but its id. */
export function cardOfRecord({ id, job, savedAt, room }: StoredJob): Card {
  const at = Number.isFinite(savedAt) ? savedAt : 0;
  try {
    const card = { ...cardOf(job, at, room), id };
    if (isCard(card)) return card;
  } catch {
    // Rooms or windows are not what they should be: opening the job says so.
  }
  return { id, name: "A job that cannot be read", demo: false, windows: 0, savedAt: at };
}
