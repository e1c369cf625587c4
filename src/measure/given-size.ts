/** Where the finished size is given outright, nothing is worked out: these fields stand for it. */
export const GIVEN_SIZE = {
  "measure.finished-width": ["opening/widthsMm", "shade/mount"],
  "measure.finished-length": ["opening/heightsMm", "shade/mount"],
} as const satisfies Record<string, readonly string[]>;
