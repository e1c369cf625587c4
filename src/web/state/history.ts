import { immutableJSONPatch, type JSONPatchDocument, revertJSONPatch } from "immutable-json-patch";
import type { PatchOperation } from "../../figures/index.ts";

/** One thing that the maker did, and how it is taken back. */
export interface Change {
  label: string;
  forward: JSONPatchDocument;
  backward: JSONPatchDocument;
  /** Keystrokes in one field share this and become one change. */
  joins?: string;
}

export interface History {
  past: readonly Change[];
  future: readonly Change[];
}

export interface Edited<D> {
  document: D;
  history: History;
}

export const EMPTY_HISTORY: History = { past: [], future: [] };

/** Changes kept for undo. */
export const MOST_CHANGES = 200;

export interface Edit {
  label: string;
  patch: readonly PatchOperation[];
  joins?: string;
}

/** Applies an edit and remembers how to take it back. */
export function applyEdit<D>(document: D, history: History, edit: Edit): Edited<D> {
  const forward: JSONPatchDocument = [...edit.patch];
  const backward = revertJSONPatch(document, forward);
  const next = immutableJSONPatch<D, D>(document, forward);
  const last = history.past.at(-1);
  const joined = edit.joins !== undefined && last?.joins === edit.joins && history.future.length === 0;
  const change: Change = {
    label: edit.label,
    forward: joined ? [...last.forward, ...forward] : forward,
    backward: joined ? [...backward, ...last.backward] : backward,
    ...(edit.joins === undefined ? {} : { joins: edit.joins }),
  };
  const past = joined ? history.past.slice(0, -1) : history.past;
  return { document: next, history: { past: [...past, change].slice(-MOST_CHANGES), future: [] } };
}

/** Takes the last change back; the same document where there is none. */
export function undo<D>(document: D, history: History): Edited<D> {
  const change = history.past.at(-1);
  if (!change) return { document, history };
  return {
    document: immutableJSONPatch<D, D>(document, change.backward),
    history: { past: history.past.slice(0, -1), future: [sealed(change), ...history.future] },
  };
}

export function redo<D>(document: D, history: History): Edited<D> {
  const [change, ...rest] = history.future;
  if (!change) return { document, history };
  return {
    document: immutableJSONPatch<D, D>(document, change.forward),
    history: { past: [...history.past, change], future: rest },
  };
}

/** A change that no later keystroke may join. */
function sealed({ label, forward, backward }: Change): Change {
  return { label, forward, backward };
}
