import type { Swag } from "../shade-plan/index.ts";
import type { HangingCloth } from "./hanging-cloth.ts";

/** New lines in each interval across: with the interval’s ends enough to draw half a ripple. */
const PARTS = 3;
/** Ripples lie before the cloth’s own plane rather than behind it, as against a board. */
const FORWARD = 0.7;
/** Gathers deeper than those of cloth so much longer than its place press flat against each other. */
const MOST_LONGER = 1.7;

/**
 * Cloth that is gathered across is longer than its place: what the net leaves slack between two upright lines lies in half
 * a ripple there, as deep as takes up its length. Deep under the head, it dies away where a scallop draws the cloth out.
 */
export function gathered(cloth: HangingCloth, swags: readonly Swag[]): HangingCloth {
  const { across, along, placesMm, flatMm, clothMm, strands } = cloth;
  const wide = (across - 1) * PARTS + 1;
  const places = new Float64Array(3 * wide * along);
  const flat = new Float64Array(2 * wide * along);
  const onCloth = new Float64Array(2 * wide * along);
  for (let j = 0; j < along; j++) {
    for (let i = 0; i + 1 < across; i++) {
      const [a, b] = [j * across + i, j * across + i + 1];
      const chord = distance(placesMm, a, b);
      const arcMm = clothBetween(swags, flatMm[2 * a] as number, flatMm[2 * b] as number);
      const deep = chord * halfRippleShare(arcMm / Math.max(1e-6, chord));
      for (let k = 0; k < PARTS || (k === PARTS && i + 2 === across); k++) {
        const t = k / PARTS;
        const to = j * wide + i * PARTS + k;
        const out = deep * Math.sin(Math.PI * t) * (i % 2 === 0 ? FORWARD + 1 : FORWARD - 1);
        const normal = normalAt(cloth, i, j, t);
        for (let c = 0; c < 3; c++) {
          const [from, until] = [placesMm[3 * a + c] as number, placesMm[3 * b + c] as number];
          places[3 * to + c] = from + t * (until - from) + out * (normal[c] as number);
        }
        for (let c = 0; c < 2; c++) {
          const [from, until] = [flatMm[2 * a + c] as number, flatMm[2 * b + c] as number];
          flat[2 * to + c] = from + t * (until - from);
          const [own, next] = [clothMm[2 * a + c] as number, clothMm[2 * b + c] as number];
          onCloth[2 * to + c] = own + t * (next - own);
        }
      }
    }
  }
  return { across: wide, along, placesMm: places, flatMm: flat, clothMm: onCloth, strands };
}

/** Cloth across between two uprights at these finished places, mm. */
function clothBetween(swags: readonly Swag[], fromMm: number, toMm: number): number {
  const middle = (fromMm + toMm) / 2;
  const swag = swags.find((one) => one.fromMm < middle && middle < one.toMm);
  return (toMm - fromMm) * (swag === undefined ? 1 : swag.arcMm / (swag.toMm - swag.fromMm));
}

/** Depth of half a sine wave over its chord, by how much longer it is: from s = 1 + (π·d)²/4 for small d to 2·d for deep. */
function halfRippleShare(longer: number): number {
  const most = Math.min(MOST_LONGER, Math.max(1, longer));
  let [from, to] = [0, 2];
  for (let k = 0; k < 24; k++) {
    const middle = (from + to) / 2;
    if (halfWaveLength(middle) < most) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** Length of y = d·sin(π·x) from 0 to 1, by Simpson’s rule. */
function halfWaveLength(depth: number): number {
  const steps = 16;
  let sum = 0;
  for (let k = 0; k <= steps; k++) {
    const weight = k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2;
    sum += weight * Math.hypot(1, Math.PI * depth * Math.cos((Math.PI * k) / steps));
  }
  return sum / (3 * steps);
}

function distance(places: Float64Array, a: number, b: number): number {
  return Math.hypot(...[0, 1, 2].map((c) => (places[3 * b + c] as number) - (places[3 * a + c] as number)));
}

/** Which way the cloth faces between two uprights, by its neighbours up and down. */
function normalAt({ across, along, placesMm }: HangingCloth, i: number, j: number, t: number): number[] {
  const [up, down] = [Math.max(0, j - 1), Math.min(along - 1, j + 1)];
  const at = (line: number, c: number) => {
    const a = 3 * (line * across + i) + c;
    return (placesMm[a] as number) * (1 - t) + (placesMm[a + 3] as number) * t;
  };
  const v = [0, 1, 2].map((c) => at(down, c) - at(up, c)) as [number, number, number];
  const u = [0, 1, 2].map((c) => {
    const a = 3 * (j * across + i) + c;
    return (placesMm[a + 3] as number) - (placesMm[a] as number);
  }) as [number, number, number];
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const length = Math.hypot(...n) || 1;
  return n.map((part) => part / length);
}
