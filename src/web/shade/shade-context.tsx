import { createContext, useContext } from "react";
import { type Working, workingOf } from "../../figures/index.ts";
import type { Window } from "../../job/index.ts";
import { figuresOf, type ShadePlan } from "../../plan/index.ts";
import type { WindowIndex } from "../state/planning.ts";

/** The shade on the page: its plan, its window and where that stands in the job. */
export interface ShadeOnPage {
  plan: ShadePlan;
  window: Window;
  place: WindowIndex;
  /** JSON pointer of the window. */
  pointer: string;
  /**
   * The plan whose findings, steps and workings are told: a moment behind `plan` while one types, so that the drawing
   * and the figures need not wait for them.
   */
  told: ShadePlan;
  /** Its workings by id. */
  workings: Workings;
}

export interface Workings {
  has(id: string): boolean;
  get(id: string): Working | undefined;
}

export const ShadeOnPageContext = createContext<ShadeOnPage | undefined>(undefined);

export function useShade(): ShadeOnPage {
  const shade = useContext(ShadeOnPageContext);
  if (!shade) throw new Error("invalid screen: no shade is open");
  return shade;
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
