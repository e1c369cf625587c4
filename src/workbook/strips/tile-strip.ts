/** One mark of a strip, at its absolute position from the start: never counted from the mark before. */
export interface StripMark {
  atMm: number;
  name: string;
  /** The position as the ruler has it. */
  text: string;
  /** An end of the strip: an edge, not a mark between. */
  end?: boolean;
}

/** A strip of paper as long as the thing to be marked. */
export interface Strip {
  /** `A`, `B` …: first letter of its page keys. */
  key: string;
  /** One word for the piece itself. */
  name: string;
  title: string;
  /** Where it is laid and which way it runs. */
  use: string;
  lengthMm: number;
  marks: readonly StripMark[];
}

/** One page-high piece of a strip. Joins lie at absolute positions; what is near a join is on both pieces. */
export interface Tile {
  /** `A1`: strip and place in it. */
  key: string;
  index: number;
  of: number;
  /** From join to join (or end). */
  fromMm: number;
  toMm: number;
  /** What is printed: the same and the overlap beyond each join. */
  printedFromMm: number;
  printedToMm: number;
  marks: StripMark[];
}

/** Cuts a strip into tiles of `tileMm` with `overlapMm` printed again beyond every join. */
export function tileStrip(strip: Strip, tileMm: number, overlapMm: number): Tile[] {
  if (!(tileMm > 0)) throw new Error(`invalid tileMm: ${tileMm}`);
  // A last sliver shorter than the overlap is printed on the tile before it.
  const count = Math.max(1, Math.ceil((strip.lengthMm - overlapMm) / tileMm));
  return Array.from({ length: count }, (_, i) => {
    const first = i === 0;
    const last = i === count - 1;
    const fromMm = i * tileMm;
    const toMm = last ? strip.lengthMm : (i + 1) * tileMm;
    const printedFromMm = first ? fromMm : fromMm - overlapMm;
    const printedToMm = last ? toMm : toMm + overlapMm;
    return {
      key: `${strip.key}${i + 1}`,
      index: i + 1,
      of: count,
      fromMm,
      toMm,
      printedFromMm,
      printedToMm,
      marks: strip.marks.filter(({ atMm }) => atMm >= printedFromMm && atMm <= printedToMm),
    };
  });
}
