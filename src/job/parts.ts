import type * as z from "zod";
import { diameterFromTurns, frictionOfPair, stretchAt10N as stretchOf } from "./bench-formulas.ts";
import { clothSchema } from "./cloth.ts";
import {
  barSchema,
  boardSchema,
  cordLockSchema,
  cordSchema,
  driveSchema,
  eyeSchema,
  ringSchema,
  tubeSchema,
} from "./hardware.ts";

/** Kinds of part, with what one of them is made of, as far as it is known. */
export const PART_SCHEMAS = {
  cloths: clothSchema,
  locks: cordLockSchema,
  cords: cordSchema,
  bars: barSchema,
  ribs: barSchema,
  boards: boardSchema,
  rings: ringSchema,
  eyes: eyeSchema,
  tubes: tubeSchema,
  drives: driveSchema,
} as const;
export type PartKind = keyof typeof PART_SCHEMAS;
export const PART_KINDS = Object.keys(PART_SCHEMAS) as PartKind[];
/** A part as it was entered: half of it may not be known yet. */
export type PartEntry<K extends PartKind = PartKind> = z.output<(typeof PART_SCHEMAS)[K]>;

/** Fields without which a part of the kind cannot be planned with. A lock is planned with all the same, and says so. */
export const NEEDED = {
  cloths: ["usableWidthMm", "massGsm"],
  locks: [],
  cords: ["diameterMm"],
  bars: ["material", "widthMm", "thicknessMm"],
  ribs: ["material", "widthMm", "thicknessMm"],
  boards: ["depthMm", "thicknessMm"],
  rings: ["diameterMm"],
  eyes: ["outsideDiameterMm"],
  tubes: ["diameterMm"],
  drives: ["kind", "lengthMm", "heightMm", "depthMm"],
} as const satisfies { [K in PartKind]: readonly (keyof PartEntry<K>)[] };

type With<T, F extends keyof T> = Omit<T, F> & { [P in F]-?: NonNullable<T[P]> };
/** A part of which everything that the planning cannot do without is known. */
type Planned<K extends PartKind> = With<PartEntry<K>, (typeof NEEDED)[K][number] & keyof PartEntry<K>>;

export type Cloth = Planned<"cloths">;
export type Cord = Planned<"cords">;
export type Bar = Planned<"bars">;
export type Board = Planned<"boards">;
export type Ring = Planned<"rings">;
export type Eye = Planned<"eyes">;
export type Tube = Planned<"tubes">;
export type Drive = Planned<"drives">;

/** Sizes of a lock that its drawing and its seat cannot do without. */
export const LOCK_SIZES = ["housingLengthMm", "housingWidthMm", "housingHeightMm", "dividerWires"] as const;
export type LockSize = (typeof LOCK_SIZES)[number];

/** A lock as it is planned with: `unmeasured` names the sizes that were taken for the drawing alone. */
export type CordLock = With<PartEntry<"locks">, LockSize | "screws"> & { unmeasured?: readonly LockSize[] };

/**
 * A housing that nobody measured is drawn this large, mm: more than most, so that its place is not drawn too small.
 * It is no part for sale, and what it is taken for is a finding.
 */
const UNMEASURED_LOCK: Record<LockSize, number> = {
  housingLengthMm: 40,
  housingWidthMm: 40,
  housingHeightMm: 40,
  dividerWires: 0,
};
const USUAL_SCREWS = 2;

/** The lock with its slots as wires, what was measured at the bench, and a stand-in for each size that is not known. */
export function plannedLock(entry: PartEntry<"locks">): CordLock {
  const { slots } = entry;
  const dividerWires = entry.dividerWires ?? (slots === undefined ? undefined : slots - 1);
  // Counted twice and not alike: nobody knows.
  const disagree = slots !== undefined && dividerWires !== slots - 1;
  const gap = entry.tests?.gap?.gapMm ?? entry.endGapMm;
  const lock = { ...entry, dividerWires, ...(gap === undefined ? {} : { endGapMm: gap }) };
  const unmeasured = LOCK_SIZES.filter(
    (size) => lock[size] === undefined || (size === "dividerWires" && disagree),
  );
  return {
    ...lock,
    housingLengthMm: lock.housingLengthMm ?? UNMEASURED_LOCK.housingLengthMm,
    housingWidthMm: lock.housingWidthMm ?? UNMEASURED_LOCK.housingWidthMm,
    housingHeightMm: lock.housingHeightMm ?? UNMEASURED_LOCK.housingHeightMm,
    dividerWires: dividerWires ?? UNMEASURED_LOCK.dividerWires,
    screws: lock.screws ?? USUAL_SCREWS,
    ...(unmeasured.length === 0 ? {} : { unmeasured }),
  };
}

/** The part with what its tests at the bench came to: a reading at the bench goes before a word on a label. */
export function withTests<K extends PartKind>(kind: K, entry: PartEntry<K>): PartEntry<K> {
  if (kind === "cords") return cordWithTests(entry as PartEntry<"cords">) as PartEntry<K>;
  return kind === "eyes" ? (eyeWithTests(entry as PartEntry<"eyes">) as PartEntry<K>) : entry;
}

function cordWithTests(entry: PartEntry<"cords">): PartEntry<"cords"> {
  const { turns, stretch } = entry.tests ?? {};
  return {
    ...entry,
    diameterMm: (turns && diameterFromTurns(turns)) ?? entry.diameterMm,
    stretchAt10N: (stretch && stretchOf(stretch)) ?? entry.stretchAt10N,
  };
}

/** What passes on less is no pulley; the schema's own limit. */
const LEAST_PULLEY_SHARE = 0.5;

function eyeWithTests(entry: PartEntry<"eyes">): PartEntry<"eyes"> {
  const readings = entry.tests?.friction;
  const found = readings && frictionOfPair(readings);
  if (found === undefined) return entry;
  return entry.pulleyShare === undefined
    ? { ...entry, friction: found.friction }
    : { ...entry, pulleyShare: Math.max(LEAST_PULLEY_SHARE, found.pulleyShare) };
}

/** Fields of the part that must be known before it can be planned with. */
export function notYetKnown<K extends PartKind>(kind: K, entry: PartEntry<K>): string[] {
  const whole = withTests(kind, entry) as Record<string, unknown>;
  return NEEDED[kind].filter((field) => whole[field] === undefined);
}
