import { createContext, useContext } from "react";
import type { Working } from "../../figures/index.ts";
import type { Window } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { WindowIndex } from "../state/planning.ts";

/** The shade on the page: its plan, its window and where that stands in the job. */
export interface ShadeOnPage {
  plan: ShadePlan;
  window: Window;
  place: WindowIndex;
  /** JSON pointer of the window. */
  pointer: string;
  /** The plan's workings by id. */
  workings: ReadonlyMap<string, Working>;
}

export const ShadeOnPageContext = createContext<ShadeOnPage | undefined>(undefined);

export function useShade(): ShadeOnPage {
  const shade = useContext(ShadeOnPageContext);
  if (!shade) throw new Error("invalid screen: no shade is open");
  return shade;
}

const indexes = new WeakMap<readonly Working[], ReadonlyMap<string, Working>>();

export function workingsById(workings: readonly Working[]): ReadonlyMap<string, Working> {
  const known = indexes.get(workings);
  if (known) return known;
  const index = new Map(workings.map((working) => [working.id, working]));
  indexes.set(workings, index);
  return index;
}
