import type { ShoppingLine } from "../shade-plan/index.ts";

/** What the thing is called; made when it is read where a length stands in it. */
type NeedLabel = string | (() => string);

interface Common {
  /** Id of the shopping line that it ends in; needs of one id are bought together. */
  id: string;
  group: ShoppingLine["group"];
  label: NeedLabel;
  /** Price of one metre, one stock length, one pack or one piece, as the sort of need has it. */
  price?: number;
  /** The price is invented for demonstration. */
  demo?: boolean;
}

/** Cut off a bolt or a reel: each cut comes off in one piece, and what is bought is raised to a step. */
export interface RunningNeed extends Common {
  sort: "running";
  /** Id by which stock knows it. */
  stockId: string;
  cutsMm: number[];
  /** Width that the cuts take, for remnants narrower than the bolt. */
  widthMm?: number;
  stepMm: number;
  unit: "yd" | "ft" | "m";
  /** Extra for mistakes applies to it. */
  plain?: boolean;
}

/** A length in which a part is sold, mm, and the price of one, where it is known. */
export interface SoldLength {
  lengthMm: number;
  price?: number;
}

/** Sawn or cut from lengths as they are sold. Without a stock length every cut is bought to size. */
export interface LengthsNeed extends Common {
  sort: "lengths";
  stockId: string;
  cutsMm: number[];
  stockMm?: number;
  /** Other lengths in which it is sold, with their prices. */
  alsoSold?: readonly SoldLength[];
  kerfMm: number;
  /** What one is called: length, spool. */
  noun: string;
}

/** Counted, and bought one by one or by the pack. */
export interface CountedNeed extends Common {
  sort: "counted";
  pieces: number;
  packOf: number;
  /** What the pack is called, where there is one: pack, box. */
  packNoun?: string;
}

/** Used up by the length but bought by the reel; no cut must come off in one piece. */
export interface SpooledNeed extends Common {
  sort: "spooled";
  lengthMm: number;
  spoolMm: number;
}

/** One thing that a shade takes, before it is rounded to what is sold. */
export type Need = RunningNeed | LengthsNeed | CountedNeed | SpooledNeed;

/** What a need is called, as a shopping list says it. */
export function labelOf({ label }: Need): string {
  return typeof label === "string" ? label : label();
}

/**
 * The same at the price that was typed for its line: of one metre, one length as it is sold, one pack or one piece. A typed
 * price is the maker’s own, whatever the catalogue says.
 */
export function withTypedPrice<N extends Need>(need: N, prices: Readonly<Record<string, number>>): N {
  const price = prices[need.id];
  return price === undefined ? need : { ...need, price, demo: false };
}

const GROUPS: Record<Need["group"], number> = { cloth: 0, cord: 1, hardware: 2, board: 3, sundries: 4 };

/**
 * Needs of one id as one need, group by group as a shopping list is read. What is given stays as it is.
 *
 * @throws where two needs of one id are of different sorts: a bug
 */
export function mergeNeeds(needs: Iterable<Need>): Need[] {
  const merged = new Map<string, { need: Need; own: boolean }>();
  for (const need of needs) {
    const before = merged.get(need.id);
    if (before === undefined) {
      merged.set(need.id, { need, own: false });
      continue;
    }
    if (!before.own) Object.assign(before, { need: copied(before.need), own: true });
    addTo(before.need, need);
  }
  const all = Array.from(merged.values(), ({ need }) => need);
  return all.sort((a, b) => GROUPS[a.group] - GROUPS[b.group]);
}

function copied(need: Need): Need {
  return "cutsMm" in need ? { ...need, cutsMm: [...need.cutsMm] } : { ...need };
}

function addTo(sum: Need, need: Need): void {
  if (sum.sort === "running" && need.sort === "running") {
    for (const cutMm of need.cutsMm) sum.cutsMm.push(cutMm);
    if (need.widthMm !== undefined) sum.widthMm = Math.max(sum.widthMm ?? 0, need.widthMm);
  } else if (sum.sort === "lengths" && need.sort === "lengths") {
    for (const cutMm of need.cutsMm) sum.cutsMm.push(cutMm);
  } else if (sum.sort === "counted" && need.sort === "counted") {
    sum.pieces += need.pieces;
  } else if (sum.sort === "spooled" && need.sort === "spooled") {
    sum.lengthMm += need.lengthMm;
  } else {
    throw new Error(`invalid need ${need.id}: ${need.sort} beside ${sum.sort}`);
  }
}
