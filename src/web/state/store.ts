import { create } from "zustand";
import type { Job } from "../../job/index.ts";
import type { SheetKind } from "../../shade-plan/index.ts";
import type { Replica } from "../../workroom/merge/index.ts";
import type { SavingState } from "../persistence/autosave.ts";
import type { SectionId } from "../sections/sections.ts";
import { applyEdit, type Edit, EMPTY_HISTORY, type History, redo, undo } from "./history.ts";
import { type OpenSections, openSectionsOf, rememberOpen } from "./open-sections.ts";
import { useRaise } from "./raise.ts";
import { repaintStarts } from "./repaint.ts";

/** Who may write the job that is open. */
export type Access =
  | "none"
  | "opening"
  | "mine"
  | "looking"
  | "elsewhere"
  | "taken"
  | "missing"
  | "damaged"
  /** The shelf itself cannot be read. */
  | "unreadable";

/** A figure or a field that was pressed. */
export interface Picked {
  figure?: string;
  field?: string;
}

export interface View {
  sheet: SheetKind;
  picked?: Picked;
  /** On a small screen the drawing has it all. */
  large?: boolean;
  open: OpenSections;
  /** A chapter of the job's page to come to. */
  jump?: SectionId;
}

export interface Planner {
  job?: Job;
  history: History;
  /** Of a job that a workroom shares: this device's side of it. */
  room?: Replica;
  /** Counts edits, undo and redo included: each asks to be saved. */
  edits: number;
  access: Access;
  saving: SavingState;
  /** Where in the bin the open job lies, once another tab took it off the shelf. */
  takenTo?: string;
  /** The open job's list of changes could not be read: undo begins anew. */
  isHistoryLost: boolean;
  /** Fields whose text cannot be read, so that it is not in the job. */
  unread: number;
  /** Said aloud to screen readers: what undo and redo did. */
  said: string;
  view: View;
}

const FIRST_VIEW: View = { sheet: "front", open: {} };

export const usePlanner = create<Planner>()(() => ({
  history: EMPTY_HISTORY,
  edits: 0,
  access: "none",
  saving: { state: "saved" },
  isHistoryLost: false,
  unread: 0,
  said: "",
  view: FIRST_VIEW,
}));

const { setState: set, getState: get } = usePlanner;

/** Puts a job on the table, with the history it was left with; `unwritten` where it is in this tab alone. */
export function layOutJob(
  job: Job,
  history: History,
  access: Access,
  unwritten = false,
  room?: Replica,
): void {
  const same = get().job?.id === job.id;
  if (!same) useRaise.setState(0, true);
  const view: View = { ...FIRST_VIEW, open: openSectionsOf(job.id) };
  set({
    job,
    history,
    room,
    access,
    takenTo: undefined,
    ...(same ? {} : { saving: { state: unwritten ? "saving" : "saved" }, view }),
  });
}

export function clearTable(access: Access = "none"): void {
  const { saving } = get();
  // What could not be written is still not written when another page is looked at.
  set({
    job: undefined,
    history: EMPTY_HISTORY,
    room: undefined,
    access,
    saving: saving.state === "failed" ? saving : { state: "saved" },
    said: "",
  });
}

export function canEdit(): boolean {
  return get().access === "mine";
}

export function edit(change: Edit): void {
  const { job, history, edits } = get();
  if (!job || !canEdit() || change.patch.length === 0) return;
  repaintStarts();
  const edited = applyEdit(job, history, change);
  set({ job: edited.document, history: edited.history, edits: edits + 1, said: "" });
}

/** Lays what a workroom made of the open job on the table; it is saved as an edit is. */
export function layOutShared(room: Replica, job: Job, history: History): void {
  const { edits } = get();
  repaintStarts();
  set({ job, history, room, edits: edits + 1 });
}

/** Goes back, or forward again, to the state in which so many of the known changes were done, as one step. */
export function goToChange(done: number): void {
  const { job, history, edits } = get();
  if (!job || !canEdit()) return;
  let moved = { document: job, history };
  while (moved.history.past.length > done && moved.history.past.length > 0)
    moved = undo(moved.document, moved.history);
  while (moved.history.past.length < done && moved.history.future.length > 0)
    moved = redo(moved.document, moved.history);
  if (moved.history === history) return;
  repaintStarts();
  const last = moved.history.past.at(-1)?.label;
  const said = last === undefined ? "Back to the first state" : `As it was after: ${last}`;
  set({ job: moved.document, history: moved.history, edits: edits + 1, said });
}

export function undoEdit(): void {
  step(undo, `Undone: ${get().history.past.at(-1)?.label ?? "nothing"}`);
}

export function redoEdit(): void {
  step(redo, `Redone: ${get().history.future[0]?.label ?? "nothing"}`);
}

function step(move: typeof undo, said: string): void {
  const { job, history, edits } = get();
  if (!job || !canEdit()) return;
  repaintStarts();
  const moved = move(job, history);
  if (moved.history === history) return;
  set({ job: moved.document, history: moved.history, edits: edits + 1, said });
}

export function look(change: Partial<View>): void {
  const { view } = get();
  set({ view: { ...view, ...change } });
}

export function pick(picked: Picked | undefined): void {
  look({ picked });
}

export function openSection(name: string, open: boolean): void {
  const { job, view } = get();
  const next = { ...view.open, [name]: open };
  look({ open: next });
  if (job) rememberOpen(job.id, next);
}

/** Another tab took the open job off the shelf, to a place in the bin. */
export function setTaken(takenTo: string): void {
  set({ access: "taken", takenTo });
}

/** A field begins, or ceases, to hold text that cannot be read. */
export function countUnread(change: 1 | -1): void {
  set({ unread: get().unread + change });
}

export function setHistoryLost(isHistoryLost: boolean): void {
  set({ isHistoryLost });
}

export function setAccess(access: Access): void {
  set({ access });
}

export function setSaving(saving: SavingState): void {
  set({ saving });
}
