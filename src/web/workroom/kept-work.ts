import type { ShadeWork, WorkChange } from "../../workroom/protocol/index.ts";
import { askServer, TurnedDown } from "./ask-server.ts";
import { useRoom, WORK_KEYS } from "./room-state.ts";

/** Work in hand as it was read last, with what was changed here and not sent yet. */
export function keptWork(): ShadeWork[] {
  return withChanges(kept<ShadeWork>(WORK_KEYS.read), kept<WorkChange>(WORK_KEYS.waiting));
}

/** Puts a change beside those that wait for the server. */
export function keepChange(change: WorkChange): void {
  keep(WORK_KEYS.waiting, [...kept<WorkChange>(WORK_KEYS.waiting), change]);
}

/** One that hangs must not hold up those behind it for long. */
const ANSWERS_MS = 60_000;

/** The last of those that were begun. */
let meeting: Promise<unknown> = Promise.resolve();

/**
 * Sends what waits and reads what the server has, one after the other: an answer that is older would stand over a newer.
 * A change that is turned down is let go.
 * @throws where the server does not answer, or says no
 */
export function meetWork(): Promise<ShadeWork[]> {
  const next = meeting.then(sendAndRead);
  meeting = next.catch(() => {});
  return next;
}

async function sendAndRead(): Promise<ShadeWork[]> {
  for (const change of kept<WorkChange>(WORK_KEYS.waiting)) {
    try {
      await askServer("changeWork", { body: { changes: [change] }, withinMs: ANSWERS_MS });
    } catch (error) {
      if (!(error instanceof TurnedDown) || error.status === 401) throw error;
      letGo(change);
      throw error;
    }
    // Taken by the server, it is as good as read from there.
    keep(WORK_KEYS.read, withChanges(kept<ShadeWork>(WORK_KEYS.read), [change]));
    letGo(change);
  }
  const { shades } = await askServer<{ shades: ShadeWork[] }>("work", { withinMs: ANSWERS_MS });
  keep(WORK_KEYS.read, shades);
  return keptWork();
}

function letGo({ id }: WorkChange): void {
  keep(
    WORK_KEYS.waiting,
    kept<WorkChange>(WORK_KEYS.waiting).filter((one) => one.id !== id),
  );
}

/** What is left out of a change stays; null takes it away. */
function withChanges(shades: readonly ShadeWork[], changes: readonly WorkChange[]): ShadeWork[] {
  const { me } = useRoom.getState();
  const changedBy = me?.state === "signed-in" ? me.person.id : "";
  const all = [...shades];
  for (const { jobId, windowId, at, state, due, holder } of changes) {
    const index = all.findIndex((one) => one.jobId === jobId && one.windowId === windowId);
    const was = all[index] ?? { jobId, windowId };
    const set = { state, due, holder };
    const now: Record<string, unknown> = { ...was, changedBy, changedAt: at };
    for (const [key, value] of Object.entries(set)) {
      if (value === null) delete now[key];
      else if (value !== undefined) now[key] = value;
    }
    if (index < 0) all.push(now as unknown as ShadeWork);
    else all[index] = now as unknown as ShadeWork;
  }
  return all;
}

function kept<Kept>(key: string): Kept[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(found) ? (found as Kept[]) : [];
  } catch {
    return [];
  }
}

function keep(key: string, list: readonly unknown[]): void {
  try {
    localStorage.setItem(key, JSON.stringify(list));
  } catch {
    // A browser that keeps nothing sends what it can.
  }
}
