import { keepLengths } from "../../mechanics/index.ts";
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
 * @throws where no height is known
 */
export function playedAt(net: CommonNet, frames: readonly HangingFrame[], raise: number): PlayedCloth {
  const [from, to, share] = around(frames, raise);
  const coarse = from.coarse || to.coarse;
  const near = share < 0.5 ? from : to;
  if (share === 0 || share === 1)
    return {
      placesMm: near.placesMm.slice(),
      clothMm: near.clothMm,
      strands: near.strands,
      ringsMm: near.ringsMm,
      coarse,
    };
  return {
    placesMm: drawnToLength(net, from, to, share),
    clothMm: blended(from.clothMm, to.clothMm, share),
    strands: near.strands,
    ringsMm: blended(from.ringsMm, to.ringsMm, share),
    coarse,
  };
}

/** The places of two frames blended, every upright as long as it is between theirs. */
function drawnToLength(net: CommonNet, from: HangingFrame, to: HangingFrame, share: number): Float64Array {
  const { across, along, held } = net;
  const straight = blended(from.placesMm, to.placesMm, share);
  const placesMm = straight.slice();
  const points = new Int32Array(along);
  const restMm = new Float64Array(along - 1);
  const heldHere = new Uint8Array(along);
  const done = new Map<number, number[]>();
  for (let i = 0; i < across; i++) {
    const kin = kinOf(i);
    if (kin !== undefined) {
      follow(i, kin);
      continue;
    }
    for (let j = 0; j < along; j++) {
      points[j] = j * across + i;
      heldHere[j] = held[j * across + i] as number;
      if (j === 0) continue;
      const lower = linkMm(from, across, i, j);
      restMm[j - 1] = lower + share * (linkMm(to, across, i, j) - lower);
    }
    keepLengths({ x: placesMm, points, restMm, held: heldHere });
  }
  return placesMm;

  /** An upright that hangs like this one beside another column, turned over or not, and was drawn to its length. */
  function kinOf(i: number): Kin | undefined {
    let sum = 0;
    for (let j = 0; j < along; j++) {
      const at = 3 * (j * across + i);
      sum += (j + 1) * (straight[at + 2] as number) + (straight[at + 1] as number);
    }
    const about = Math.round(sum * 1e5);
    const likely = done.get(about) ?? [];
    for (const upright of likely)
      for (const sign of [1, -1] as const) if (isKin(i, { upright, sign })) return { upright, sign };
    done.set(about, [...likely, i]);
    return undefined;
  }

  function isKin(i: number, { upright, sign }: Kin): boolean {
    const over = [from.placesMm, to.placesMm].map(
      (places) => (places[3 * i] as number) - sign * (places[3 * upright] as number),
    );
    for (let j = 0; j < along; j++) {
      const [own, other] = [j * across + i, j * across + upright];
      if (held[own] !== held[other]) return false;
      for (const [k, { placesMm: places }] of [from, to].entries()) {
        const apart = (places[3 * own] as number) - sign * (places[3 * other] as number);
        if (Math.abs(apart - (over[k] as number)) > ALIKE_MM) return false;
        for (const c of [1, 2])
          if (Math.abs((places[3 * own + c] as number) - (places[3 * other + c] as number)) > ALIKE_MM)
            return false;
      }
    }
    return true;
  }

  function follow(i: number, { upright, sign }: Kin): void {
    for (let j = 0; j < along; j++) {
      const [own, other] = [3 * (j * across + i), 3 * (j * across + upright)];
      const moved = (placesMm[other] as number) - (straight[other] as number);
      placesMm[own] = (straight[own] as number) + sign * moved;
      placesMm[own + 1] = placesMm[other + 1] as number;
      placesMm[own + 2] = placesMm[other + 2] as number;
    }
  }
}

/** An upright of the same shape, and whether it is turned over: -1. */
interface Kin {
  upright: number;
  sign: 1 | -1;
}

/** Places that differ by rounding alone, mm. */
const ALIKE_MM = 1e-9;

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

function blended(from: Float64Array, to: Float64Array, share: number): Float64Array {
  const places = from.slice();
  for (let k = 0; k < places.length; k++) {
    const value = places[k] as number;
    places[k] = value + share * ((to[k] as number) - value);
  }
  return places;
}

function linkMm({ placesMm }: HangingFrame, across: number, i: number, j: number): number {
  const a = 3 * ((j - 1) * across + i);
  const b = 3 * (j * across + i);
  const dx = (placesMm[b] as number) - (placesMm[a] as number);
  const dy = (placesMm[b + 1] as number) - (placesMm[a + 1] as number);
  const dz = (placesMm[b + 2] as number) - (placesMm[a + 2] as number);
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}
