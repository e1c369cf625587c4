import { closeStrip } from "./close-strip.ts";
import { DROP_SHARES, type PressedDrops, pressDrops } from "./pressed-drop.ts";

/** Drops of every weight between those that were solved. */
export interface DropFamily {
  weight: number;
  /** Half the angle of a drop that nothing presses. */
  freeRad: number;
  /** Half the angle that a moment presses it to. */
  halfRad(moment: number): number;
  /** Slopes of the drop at this half angle; its axis hangs straight down. */
  slope(halfRad: number): Float64Array;
}

/** Weights are solved in steps of two and interpolated by their logarithm: angles are 3 % off at worst, tested. */
const LOWEST = 1;
const LEVELS = 11;
/** What has been solved: the same for every shade, so it is solved once, when it is first asked for. */
const solved = new Map<number, PressedDrops>();

/**
 * Below λ = 1 weight hardly counts and λ = 1 is taken; above 1024 the loop at the bottom keeps its size in bending lengths:
 * angles go with λ^(−1/3) and moments with λ^(2/3) (dimensional analysis of a boundary layer). Undefined where a drop could
 * not be solved.
 */
export function dropFamily(weight: number): DropFamily | undefined {
  if (!(weight >= 0)) throw new Error(`invalid weight: ${weight}`);
  const place = Math.min(LEVELS - 1, Math.max(0, Math.log2(weight / LOWEST)));
  const low = Math.min(LEVELS - 2, Math.floor(place));
  const [below, above] = [dropsAt(low), dropsAt(low + 1)];
  if (!below.converged || !above.converged) return undefined;
  const part = place - low;
  const over = Math.cbrt(Math.max(1, weight / (LOWEST * 2 ** (LEVELS - 1))));
  const presses = DROP_SHARES.map((_, k) => {
    const [a, b] = [below.presses[k], above.presses[k]];
    if (a === undefined || b === undefined) throw new Error("invalid drops: a press is missing");
    return {
      halfRad: between(a.halfAngleRad, b.halfAngleRad, part) / over,
      moment: between(a.moment, b.moment, part) * over * over,
      slopes: [a.slope, b.slope] as const,
    };
  });
  const freeRad = presses[0]?.halfRad ?? 0;
  return {
    weight,
    freeRad,
    halfRad: (moment) => pressedTo(presses, moment),
    slope: (halfRad) => slopeAt(presses, part, halfRad),
  };
}

function dropsAt(level: number): PressedDrops {
  const known = solved.get(level);
  if (known !== undefined) return known;
  const drops = pressDrops(LOWEST * 2 ** level);
  solved.set(level, drops);
  return drops;
}

interface Press {
  halfRad: number;
  moment: number;
  slopes: readonly [Float64Array, Float64Array];
}

/** Between values of one sign on a logarithmic scale. */
function between(a: number, b: number, part: number): number {
  return a === 0 && b === 0 ? 0 : Math.exp(Math.log(a) * (1 - part) + Math.log(b) * part);
}

/** Straight between the first two; from there on by logarithm, and past the tightest as 1/ψ², the loop between two plates. */
function pressedTo(presses: readonly Press[], moment: number): number {
  const at = (k: number) => presses[k] as Press;
  if (!(moment > 0)) return at(0).halfRad;
  let k = 1;
  while (k < presses.length && at(k).moment < moment) k++;
  if (k === 1) return at(0).halfRad + (at(1).halfRad - at(0).halfRad) * (moment / at(1).moment);
  if (k === presses.length) return at(k - 1).halfRad * Math.sqrt(at(k - 1).moment / moment);
  const part = Math.log(moment / at(k - 1).moment) / Math.log(at(k).moment / at(k - 1).moment);
  return between(at(k - 1).halfRad, at(k).halfRad, part);
}

function slopeAt(presses: readonly Press[], part: number, halfRad: number): Float64Array {
  let k = 1;
  while (k + 1 < presses.length && (presses[k] as Press).halfRad > halfRad) k++;
  const [wide, tight] = [presses[k - 1] as Press, presses[k] as Press];
  const share = Math.min(1, Math.max(0, (wide.halfRad - halfRad) / (wide.halfRad - tight.halfRad)));
  const mixed = (slopes: Press["slopes"], i: number) =>
    (slopes[0][i] as number) * (1 - part) + (slopes[1][i] as number) * part;
  const slope = wide.slopes[0].map(
    (_, i) => mixed(wide.slopes, i) * (1 - share) + mixed(tight.slopes, i) * share,
  );
  return closeStrip(slope, 0);
}
