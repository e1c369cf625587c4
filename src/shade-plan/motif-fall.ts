/** Where the maker wants a repeat along the length: it ends at the hem, lies in the middle, begins at the top or as fixed. */
interface Placing {
  place: "hem" | "centre" | "top" | "free";
  /** Placed freely: from the top line down, mm. */
  offsetMm: number;
}

/** From the top line of a shade so long down to where a repeat begins, mm. */
export function motifFallMm({ place, offsetMm }: Placing, lengthMm: number, repeatMm: number): number {
  return { hem: lengthMm, centre: lengthMm / 2 - repeatMm / 2, top: 0, free: offsetMm }[place];
}
