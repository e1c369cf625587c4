import type { Figure } from "../../../figures/index.ts";
import type { CordPlace, PhysicalTestId } from "../../../shade-plan/index.ts";
import type { Check } from "../../rules/rule.ts";
import type { CordGeometry } from "../cord-geometry.ts";

/** The parts of a check that change what a quantity comes to. */
export type CheckedAgainst = Pick<Check, "pullN" | "belowFloorMm">;

/** A length that changes with the height of the shade. */
export interface Sweep {
  kind: "sweep";
  worse: "high" | "low";
  /** Why the shade has nothing of the kind; undefined where it has. */
  absent: (geometry: CordGeometry) => string | undefined;
  /** Heights above the floor enter, so that nothing is known without the window's height. */
  needsFloor?: (geometry: CordGeometry) => boolean;
  /**
   * Raises at which it can be worst: between two neighbours it is monotone, so that the extremum over all
   * heights is among them. A test holds that against a dense sweep.
   */
  states: (geometry: CordGeometry, ask: CheckedAgainst) => number[];
  at: (geometry: CordGeometry, raise: number, ask: CheckedAgainst) => number;
  /** The same under the pull, where cord can be drawn out. Never below `at`. */
  pulledAt?: (geometry: CordGeometry, raise: number, ask: CheckedAgainst) => number;
  /** Cord slides out under the pull, so that no geometry bounds it. */
  feeds?: (geometry: CordGeometry, ask: CheckedAgainst) => boolean;
  /** What a good value leans on that no plan shows: a sleeve sewn by hand, rings that grip, a device on the wall. */
  leansOn?: (geometry: CordGeometry, ask: CheckedAgainst) => LeansOn | undefined;
  /** What it is that comes to the value in that state. */
  what: (geometry: CordGeometry, raise: number, ask: CheckedAgainst) => NamedCord;
  /** How the value is computed, for the workings, where it is more than one length. */
  working?: (geometry: CordGeometry, raise: number, ask: CheckedAgainst) => Figure | undefined;
}

/** A cord, span or loop in words, and which cords it is of. */
export interface NamedCord {
  text: string;
  cords: CordPlace;
}

/** Workmanship or a device that a good value leans on, and the test of it. */
export interface LeansOn {
  why: string;
  test: PhysicalTestId;
  /** Tests that are asked for besides. */
  alsoTests?: readonly PhysicalTestId[];
}

/** Heights of letters on the tag that is printed with the plan, mm. */
export interface TagHeights {
  signalMm: number;
  textMm: number;
}

/** What a fact is read from. */
export interface Situation {
  geometry: CordGeometry;
  tag: TagHeights;
}

export type FactReading = { absent: string } | Reading;

/** What was read, and what follows where it is over its limit and where it is within: not all of it decides. */
export interface Reading {
  value?: number;
  raise: number;
  why: string;
  over: "failed" | "not-proven";
  within: "not-shown-to-fail" | "not-proven";
  /** The cords that it is of. */
  cords?: CordPlace;
  /** Where another test than the rule’s own decides, and those that are asked for besides. */
  test?: PhysicalTestId;
  alsoTests?: readonly PhysicalTestId[];
}

/** What no sweep is needed for: counts, labels, what only a test can tell. */
export interface QuantityFact {
  kind: "fact";
  of: (situation: Situation, ask: CheckedAgainst) => FactReading;
}

export type QuantityDefinition = Sweep | QuantityFact;
