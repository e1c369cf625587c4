/** Whether so many cords go into a lock, in one word. */
export const FIT_VERDICTS = ["fits", "inner-slots", "jams", "too-thick", "too-many", "not-known"] as const;
export type FitVerdict = (typeof FIT_VERDICTS)[number];

export const FIT_WORDS: Record<FitVerdict, string> = {
  fits: "fits",
  "inner-slots": "fits in inner slots",
  jams: "jams",
  "too-thick": "too thick",
  "too-many": "too many",
  "not-known": "not known",
};

/** One lock with one cord. */
export interface FitCell {
  lockId: string;
  cordId: string;
  verdict: FitVerdict;
  /** What speaks against it or must be tested; each completes “The lock …”. */
  reasons: string[];
}

export interface FitRow {
  lock: { id: string; name: string };
  /** In the order of the cords. */
  cells: FitCell[];
}

/** Which lock goes with which cord, for so many cords. */
export interface OwnFit {
  cordCount: number;
  cords: { id: string; name: string; diameterMm: number }[];
  rows: FitRow[];
}
