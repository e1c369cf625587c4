import type { Job } from "../../job/index.ts";
import { ORDER } from "../../workroom/merge/index.ts";
import type { FieldChange, NumberedOperation } from "../../workroom/protocol/index.ts";
import { EMPTY_HISTORY, type History } from "../state/history.ts";

/**
 * What can still be undone after others' changes came in. Undo knows fields by their places: once items came, went or
 * moved, nothing of before; else what was done after the last edit that would take a change of theirs with it.
 */
export function historyAfter(history: History, job: Job, taken: readonly NumberedOperation[]): History {
  const changes = taken.flatMap((operation) => operation.changes);
  if (changes.length === 0) return history;
  if (changes.some(movesItems)) return EMPTY_HISTORY;
  const theirs = changes.map(({ path }) => pointerOf(job, path));
  const touches = (pointer: string) =>
    theirs.some(
      (other) => other === pointer || other.startsWith(`${pointer}/`) || pointer.startsWith(`${other}/`),
    );
  const last = history.past.findLastIndex(({ backward, forward }) =>
    [...backward, ...forward].some((operation) => touches(operation.path)),
  );
  return { past: history.past.slice(last + 1), future: [] };
}

function movesItems({ path, from, to }: FieldChange): boolean {
  const last = path.at(-1);
  if (last === ORDER) return true;
  return typeof last === "object" && (from === undefined || to === undefined);
}

/** The place of a field by number, as edits of this device name it. */
function pointerOf(job: Job, path: FieldChange["path"]): string {
  let here: unknown = job;
  let pointer = "";
  for (const step of path) {
    const key = typeof step === "string" ? step : placeOf(here, step.id);
    pointer += `/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`;
    here = (here as Record<string | number, unknown> | undefined)?.[key];
  }
  return pointer;
}

function placeOf(list: unknown, id: string): number {
  if (!Array.isArray(list)) return -1;
  return list.findIndex((item) => item === id || Object.values(item as object).includes(id));
}
