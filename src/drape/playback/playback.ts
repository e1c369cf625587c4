import { keepLengths } from "../../mechanics/index.ts";
import { SAME_WAY } from "./kin.ts";
import type { CommonNet, HangingFrame } from "./one-net.ts";

/** The cloth somewhere between two heights that were worked out. */
export interface PlayedCloth {
  placesMm: Float64Array;
  clothMm: Float64Array;
  strands: Int32Array;
  ringsMm: Float64Array;
  /** One of the two heights was only looked at coarsely. */
  coarse: boolean;
}

/**
 * Any height between those that were worked out: places blended, then every upright drawn back to its length between board
 * and rings, so that cloth never shortens on its way.
 *
 * @param into cloth of the same net that was played before and is no longer needed
 * @throws where no height is known
 */
export function playedAt(
  net: CommonNet,
  frames: readonly HangingFrame[],
  raise: number,
  into: PlayedCloth = emptyCloth(net, frames[0]),
): PlayedCloth {
  const [from, to, share] = around(frames, raise);
  const near = share < 0.5 ? from : to;
  into.coarse = from.coarse || to.coarse;
  into.strands = near.strands;
  for (const part of ["placesMm", "clothMm", "ringsMm"] as const)
    blend(from[part], to[part], share, into[part]);
  if (share > 0 && share < 1) drawToLength(net, from, to, share, into.placesMm);
  return into;
}

/** Cloth keeps its length to this share as it is played. */
const LENGTH_SHARE = 1e-6;

function emptyCloth({ across, along }: CommonNet, frame: HangingFrame | undefined): PlayedCloth {
  return {
    placesMm: new Float64Array(3 * across * along),
    clothMm: new Float64Array(2 * across * along),
    strands: new Int32Array(0),
    ringsMm: new Float64Array(frame?.ringsMm.length ?? 0),
    coarse: false,
  };
}

/** Blended places: every upright is made as long as it is between the two frames, the first of those alike for them all. */
function drawToLength(
  { across, along, held }: CommonNet,
  from: HangingFrame,
  to: HangingFrame,
  share: number,
  placesMm: Float64Array,
): void {
  const points = new Int32Array(along);
  const restMm = new Float64Array(along - 1);
  const heldHere = new Uint8Array(along);
  for (let i = 0; i < across; i++) {
    const first = from.kin.first[i] as number;
    const ways = (from.kin.ways[i] as number) & (to.kin.ways[i] as number);
    if (first !== i && first === to.kin.first[i] && ways !== 0) {
      follow(i, first, (ways & SAME_WAY) === 0 ? -1 : 1);
      continue;
    }
    for (let j = 0; j < along; j++) {
      points[j] = j * across + i;
      heldHere[j] = held[j * across + i] as number;
      if (j === 0) continue;
      const above = (j - 1) * across + i;
      restMm[j - 1] = between(from.linksMm[above] as number, to.linksMm[above] as number, share);
    }
    keepLengths({ x: placesMm, points, restMm, held: heldHere, toShare: LENGTH_SHARE });
  }

  /** Moves an upright as one of its shape was moved, which lies as it does or turned over. */
  function follow(i: number, first: number, way: 1 | -1): void {
    for (let j = 0; j < along; j++) {
      const [own, other] = [3 * (j * across + i), 3 * (j * across + first)];
      placesMm[own] = (placesMm[own] as number) + way * moved(other);
      placesMm[own + 1] = (placesMm[own + 1] as number) + moved(other + 1);
      placesMm[own + 2] = (placesMm[own + 2] as number) + moved(other + 2);
    }
  }

  function moved(place: number): number {
    const blended = between(from.placesMm[place] as number, to.placesMm[place] as number, share);
    return (placesMm[place] as number) - blended;
  }
}

/** The frames below and above a height, and how far it lies between them. */
function around(frames: readonly HangingFrame[], raise: number): [HangingFrame, HangingFrame, number] {
  const [first] = frames;
  if (first === undefined) throw new Error("invalid playback: no height is known");
  let from = first;
  for (const frame of frames) {
    if (frame.raise >= raise) {
      const share = frame === from ? 0 : (raise - from.raise) / (frame.raise - from.raise);
      return [from, frame, Math.min(1, Math.max(0, share))];
    }
    from = frame;
  }
  return [from, from, 0];
}

function between(from: number, to: number, share: number): number {
  return from + share * (to - from);
}

function blend(from: Float64Array, to: Float64Array, share: number, into: Float64Array): void {
  if (share === 0) into.set(from);
  else if (share === 1) into.set(to);
  else for (let k = 0; k < into.length; k++) into[k] = between(from[k] as number, to[k] as number, share);
}
