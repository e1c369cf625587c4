import { foldLevel } from "./level-position.ts";
import { DROP_SHARES, type PressedDrops, pressDrops } from "./pressed-drop.ts";

/** Drops of every weight between those that were solved. */
export interface DropFamily {
  weight: number;
  /** Half the angle of a drop that nothing presses. */
  freeRad: number;
  /** Half the angle that a moment presses it to. */
  halfRad(moment: number): number;
  /** Slopes of the drop at this half angle; its axis hangs straight down. Undefined where it does not converge. */
  slope(halfRad: number): Float64Array | undefined;
}

/** Shapes of the drops of a level, solved when one is first drawn, and kept: they are the same for every shade. */
const shapes = new Map<number, PressedDrops>();

/**
 * Below the first level weight hardly counts and that level is taken; above the last the loop at the bottom keeps its size in
 * bending lengths: angles go with λ^(−1/3) and moments with λ^(2/3) (dimensional analysis of a boundary layer). Between
 * levels angles are 3 % off at worst.
 */
export function dropFamily(weight: number): DropFamily {
  const { low, below, next, part, above } = foldLevel(weight);
  const freeRad = (below.freeRad ** (1 - part) * next.freeRad ** part) / above;
  const scale = above * above;
  const moments = below.moments.map(
    (moment, k) => moment ** (1 - part) * (next.moments[k] ?? 0) ** part * scale,
  );
  const steepness = new Float64Array(moments.length);
  return {
    weight,
    freeRad,
    halfRad: (moment) => freeRad * pressedTo(moments, steepness, moment),
    slope: (halfRad) => slopeAt(low + Math.round(part), halfRad / freeRad),
  };
}

function dropsAt(level: number): PressedDrops {
  const known = shapes.get(level);
  if (known !== undefined) return known;
  const drops = pressDrops(2 ** level);
  shapes.set(level, drops);
  return drops;
}

/**
 * Share of the free angle: straight down to the first press, from there on by logarithm, and past the tightest as 1/ψ², as
 * the loop between two plates goes.
 */
function pressedTo(moments: readonly number[], steepness: Float64Array, moment: number): number {
  const first = moments[0] ?? 1;
  if (!(moment > 0)) return 1;
  if (moment <= first) return 1 + (DROP_SHARES[1] - 1) * (moment / first);
  let k = 1;
  while (k < moments.length && (moments[k] as number) < moment) k++;
  const before = moments[k - 1] as number;
  const share = DROP_SHARES[k] as number;
  if (k === moments.length) return share * Math.sqrt(before / moment);
  // This is asked some hundred times for each shade, mostly of one stretch: its logarithms are taken once.
  if (steepness[k] === 0) {
    steepness[k] =
      Math.log((DROP_SHARES[k + 1] as number) / share) / Math.log((moments[k] as number) / before);
  }
  return share * Math.exp((steepness[k] as number) * Math.log(moment / before));
}

/** Slopes at this share of the free angle, those of the nearest level: a drop looks alike at twice the weight. */
function slopeAt(level: number, share: number): Float64Array | undefined {
  const { presses, converged } = dropsAt(level);
  if (!converged) return undefined;
  let k = 1;
  while (k + 1 < DROP_SHARES.length && (DROP_SHARES[k] as number) > share) k++;
  const [wide, tight] = [DROP_SHARES[k - 1] as number, DROP_SHARES[k] as number];
  const closer = Math.min(1, Math.max(0, (wide - share) / (wide - tight)));
  const [a, b] = [presses[k - 1]?.slope, presses[k]?.slope];
  if (a === undefined || b === undefined) return undefined;
  const slope = new Float64Array(a.length);
  for (let i = 0; i < slope.length; i++) {
    slope[i] = (a[i] as number) * (1 - closer) + (b[i] as number) * closer;
  }
  return slope;
}
