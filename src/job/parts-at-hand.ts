import { CATALOGUE, type Catalogue } from "./catalogue.ts";
import type { Job } from "./job.ts";
import {
  type CordLock,
  notYetKnown,
  type PartEntry,
  type PartKind,
  plannedLock,
  withTests,
} from "./parts.ts";

/** A part of the maker's own that cannot be planned with yet, and the fields that must be known first. */
export interface HalfKnownPart {
  kind: PartKind;
  id: string;
  name: string;
  unknown: string[];
}

/** All parts to choose from: the maker's own before those of the catalogue. */
export interface PartsAtHand extends Catalogue {
  halfKnown?: readonly HalfKnownPart[];
}

/** All parts to choose from: the maker's own before the catalogue's, each id once. */
export function partsOf({ cloths, hardware }: Pick<Job, "cloths" | "hardware">): PartsAtHand {
  const halfKnown: HalfKnownPart[] = [];
  const merge = <K extends PartKind>(kind: K, own: readonly PartEntry<K>[] | undefined): Catalogue[K] => {
    if (own === undefined || own.length === 0) return CATALOGUE[kind] as Catalogue[K];
    const ids = new Set(own.map(({ id }) => id));
    const known: unknown[] = [];
    for (const entry of own) {
      const unknown = notYetKnown(kind, entry);
      if (unknown.length > 0) halfKnown.push({ kind, id: entry.id, name: entry.name, unknown });
      else known.push(kind === "locks" ? plannedLock(entry as PartEntry<"locks">) : withTests(kind, entry));
    }
    return [...known, ...CATALOGUE[kind].filter(({ id }) => !ids.has(id))] as Catalogue[K];
  };
  return {
    cloths: merge("cloths", cloths),
    locks: merge("locks", hardware.locks),
    cords: merge("cords", hardware.cords),
    bars: merge("bars", hardware.bars),
    ribs: merge("ribs", hardware.ribs),
    boards: merge("boards", hardware.boards),
    rings: merge("rings", hardware.rings),
    eyes: merge("eyes", hardware.eyes),
    tubes: merge("tubes", hardware.tubes),
    drives: merge("drives", hardware.drives),
    halfKnown,
  };
}

/** Settings that take one part of a kind, and the kind. */
const ONE_OF = { cord: "cords", eye: "eyes", ring: "rings", tube: "tubes" } as const;
export type PartSetting = keyof typeof ONE_OF;
export const PART_SETTINGS = Object.keys(ONE_OF) as PartSetting[];

/**
 * Id of the part that is taken where the maker chose none: the first of his or her own, so that no example stands in for
 * what is in hand, and a plain eye before a pulley. Undefined for who has none.
 */
export function ownUsualPart(parts: Catalogue, setting: PartSetting): string | undefined {
  const own: readonly { id: string; demo?: boolean; pulleyShare?: number }[] = parts[ONE_OF[setting]].filter(
    ({ demo }) => demo !== true,
  );
  return (own.find(({ pulleyShare }) => pulleyShare === undefined) ?? own[0])?.id;
}

/**
 * Locks that may be planned with: the maker's own where there is one, else those of the catalogue. Who has a lock in
 * hand is never planned another that nobody sells.
 */
export function locksToChoose(locks: readonly CordLock[]): CordLock[] {
  const own = locks.filter(({ demo }) => demo !== true);
  return own.length > 0 ? own : [...locks];
}
