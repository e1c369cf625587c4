import type { Remedy } from "../figures/index.ts";
import type { Cord, CordLock, ResolvedShade } from "../job/index.ts";
import type { ShadePlan } from "../plan/index.ts";
import type { Cite } from "../sources/index.ts";
import type { Symptom } from "./symptoms.ts";

/**
 * What this shade's own numbers say of a cause: that it is there, that they cannot tell, or that it is not likely.
 */
export type Evidence = "points-to-it" | "cannot-tell" | "speaks-against";

/** One thing that can be behind a symptom, with the test that tells it from the others and its cure. */
export interface Cause {
  id: string;
  title: string;
  evidence: Evidence;
  /** Its own numbers, in a sentence. */
  why: string;
  /** What to do at the window to be sure. */
  test: string;
  cure: string;
  remedies: Remedy[];
  cite: Cite;
  /** Ids of the workings behind the numbers. */
  figures?: string[];
}

/** What a cause is judged by. */
export interface Facts {
  resolved: ResolvedShade;
  shade: ShadePlan;
  cord: Cord;
  lock?: CordLock;
  /** A length and a force in the maker's units. */
  len: (mm: number) => string;
  /** What is smaller than a ruler shows. */
  small: (mm: number) => string;
  force: (n: number) => string;
}

/** A cause as it is written down once: the symptoms that it can show as, and how it is judged for one shade. */
export interface CauseOf {
  symptoms: readonly Symptom[];
  /** Nothing where it cannot be, for this kind of lift or style. */
  judge: (facts: Facts) => Cause | undefined;
}
