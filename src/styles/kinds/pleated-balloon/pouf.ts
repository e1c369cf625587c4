import type { ResolvedMaking } from "../../../job/index.ts";
import { scallopWithin } from "../../base/scallop.ts";

/** No more of the length than this stays up in a pouf. */
const MOST_SHARE = 1 / 3;

/** Less cloth than this is no pouf. */
const LEAST_MM = 1;

/** What hangs below the lowest ring with the shade down, mm. */
export interface LowestPouf {
  /** Cloth that stays up; nothing where no marks are tied. */
  clothMm: number;
  loops: number;
  /** Lowest ring to the hem at the columns. */
  firstRingMm: number;
  /** How far the middle of each pouf hangs below its corners, by its cloth across. */
  sagsMm: number[];
  /** Lowest ring to the lowest point. */
  bottomMm: number;
}

/**
 * The bottom marks lie on each other at the lowest ring: between the columns the cloth in them sinks by as much as it
 * is wide enough for. What it takes to sink it takes from the fold, whose edge hangs at half of cloth and sag.
 */
export function lowestPouf(
  { pouf, pleat }: Pick<ResolvedMaking, "pouf" | "pleat">,
  bays: readonly { spanMm: number; arcMm: number }[],
  lengthMm: number,
): LowestPouf {
  const isTied = pouf.marks >= 2 && pouf.clothMm >= LEAST_MM;
  const clothMm = isTied ? Math.min(pouf.clothMm, lengthMm * MOST_SHARE) : 0;
  const loops = isTied ? pouf.marks - 1 : 0;
  const firstRingMm = Math.min(pleat.firstRingMm, lengthMm * MOST_SHARE);
  const sagsMm = bays.map(({ spanMm, arcMm }) => scallopWithin(spanMm, arcMm, clothMm).sagMm);
  const sagMm = Math.max(0, ...sagsMm);
  const bottomMm = Math.max(
    firstRingMm + sagMm,
    isTied ? (clothMm + sagMm) / 2 : 0,
    isTied ? clothMm / (2 * loops) : 0,
  );
  return { clothMm, loops, firstRingMm, sagsMm, bottomMm };
}

/** The same, with less of everything, for a shade that is too short for it. */
export function smaller(pouf: LowestPouf, share: number): LowestPouf {
  return {
    clothMm: pouf.clothMm * share,
    loops: pouf.loops,
    firstRingMm: pouf.firstRingMm * share,
    sagsMm: pouf.sagsMm.map((sag) => sag * share),
    bottomMm: pouf.bottomMm * share,
  };
}
