import { createContext, useContext } from "react";
import { type Working, workingOf } from "../../figures/index.ts";
import type { Job, Window } from "../../job/index.ts";
import { figuresOf, type ShadePlan } from "../../plan/index.ts";
import type { WindowIndex } from "../state/planning.ts";
import { usePlanner } from "../state/store.ts";

/** The shade on the page as the last edit left it: for what is drawn under the hand, and what edits it anew. */
export interface ShadeNow {
  plan: ShadePlan;
  window: Window;
  place: WindowIndex;
  /** JSON pointer of the window. */
  pointer: string;
}

/**
 * The shade as words and figures tell it: a frame behind its drawing, which need not wait for them. Place and pointer
 * are those of now. Nothing is edited by the job or the window that stand here.
 */
export interface ShadeTold extends ShadeNow {
  job: Job;
  /** Its workings by id. */
  workings: Workings;
}

export interface Workings {
  has(id: string): boolean;
  get(id: string): Working | undefined;
}

export const ShadeNowContext = createContext<ShadeNow | undefined>(undefined);
export const ShadeToldContext = createContext<ShadeTold | undefined>(undefined);

/** Drawn anew with every edit, before it is painted: only for what must be. */
export function useShadeNow(): ShadeNow {
  return given(useContext(ShadeNowContext));
}

export function useShade(): ShadeTold {
  return given(useContext(ShadeToldContext));
}

function given<T>(shade: T | undefined): T {
  if (!shade) throw new Error("invalid screen: no shade is open");
  return shade;
}

/** The job that is told on the page of a shade; elsewhere the open one as it is. */
export function useToldJob(): Job {
  const told = useContext(ShadeToldContext)?.job;
  const job = usePlanner((planner) => (told === undefined ? planner.job : undefined));
  return given(told ?? job);
}

const indexes = new WeakMap<ShadePlan, Workings>();

/** The workings of a shade, each put into words when it is first asked for. */
export function workingsOf(shade: ShadePlan): Workings {
  const known = indexes.get(shade);
  if (known) return known;
  const figures = figuresOf(shade);
  const written = new Map<string, Working>();
  const workings: Workings = {
    has: (id) => figures.has(id),
    get(id) {
      const figure = figures.get(id);
      const working = written.get(id) ?? (figure && workingOf(figure));
      if (working) written.set(id, working);
      return working;
    },
  };
  indexes.set(shade, workings);
  return workings;
}
