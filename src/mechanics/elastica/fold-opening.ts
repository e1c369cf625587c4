import type { Solved } from "../solve/outcome.ts";
import { follow } from "./follow.ts";
import { hangFromNothing } from "./hang-strip.ts";
import { type LeaningState, leaningPoints, leanStrip } from "./leaning-strip.ts";
import { foldLevel } from "./level-position.ts";

/** How a fold goes from flat to gathered in front of a flat wall, in shares of its own measures. */
export interface FoldOpening {
  /** What its lower row must push up with so that it gives way, as a share of the fold's whole weight. */
  startShare: number;
  /** How far it stands out at most on its way, as a share of its cloth. */
  outShare: number;
}

/** Closings looked at; the first is the start. */
const CLOSINGS = [0.02, 0.06, 0.12, 0.18, 0.24, 0.3, 0.4, 0.5, 0.6];
const NODES = 48;
/** No slope turns further than this between two of them, rad. */
const REACH_RAD = 1.2;

/** Interpolated by the logarithm of λ = w a³/B between the first and the last of the table, and taken as there outside. */
export function foldOpening(weight: number): FoldOpening {
  const { below, next, part, above } = foldLevel(weight);
  const mix = (from: number, to: number) => from ** (1 - part) * to ** part;
  // Lighter than the first, cloth only bends: the push is that of a strip without weight, whatever its weight.
  const light = Math.max(1, 1 / Math.max(weight, 1e-6));
  return {
    startShare: mix(below.startShare, next.startShare) * light,
    // Limper than the last, it stands out by a number of bending lengths.
    outShare: mix(below.outShare, next.outShare) / above,
  };
}

/** The same from nothing, as the table was made. Undefined where it does not converge. */
export function solveOpening(weight: number): FoldOpening | undefined {
  const at = (closing: number) => ({ weight, gap: 2 * (1 - closing), tiltRad: 0 });
  const [start = 0] = CLOSINGS;
  const free = hangFromNothing({ weight, gap: 1.8, planes: [] }, NODES);
  if (free.kind === "notConverged") return undefined;
  const begin: LeaningState = { ...free.value, length: 2 };
  let state = walk(begin, (part) => at(0.1 + part * (start - 0.1)));
  if (state.kind === "notConverged") return undefined;
  const startShare = 1 - state.value.up / (2 * weight);
  let out = 0;
  for (let k = 1; k < CLOSINGS.length; k++) {
    const [from, to] = [CLOSINGS[k - 1] as number, CLOSINGS[k] as number];
    state = walk(state.value, (part) => at(from + part * (to - from)));
    if (state.kind === "notConverged") return undefined;
    out = Math.max(out, ...leaningPoints(state.value, at(to)).x);
  }
  return { startShare, outShare: out / 2 };
}

function walk(
  from: LeaningState,
  at: (part: number) => { weight: number; gap: number; tiltRad: number },
): Solved<LeaningState> {
  return follow(from, (part, near) => leanStrip(at(part), near, REACH_RAD));
}
