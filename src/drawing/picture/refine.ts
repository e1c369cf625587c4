import type { HangingCloth } from "../../drape/index.ts";
import { cubicBetween } from "../../mechanics/index.ts";

/** A turn of the cloth larger than this between two lines is divided, rad. */
const TURN_RAD = 0.14;
const MOST_PARTS = 4;

/**
 * The same cloth with more lines where it turns, for a picture without corners: between its nodes it runs along
 * interpolating cubic curves (Catmull & Rom 1974), first down the cloth, then across it.
 */
export function refined(cloth: HangingCloth, mostFaces: number): HangingCloth {
  const { across, along } = cloth;
  const count = across * along;
  const rich = (turns: number[], room: number) => {
    const parts = turns.map((turn) => Math.min(MOST_PARTS, Math.max(1, Math.ceil(turn / TURN_RAD))));
    const total = parts.reduce((sum, n) => sum + n, 0);
    const fewer = Math.min(1, room / total);
    return fewer === 1 ? parts : parts.map((n) => Math.max(1, Math.floor(n * fewer)));
  };
  const downTurns = turnsAlong(cloth, along, across, (j, i) => j * across + i);
  const sideTurns = turnsAlong(cloth, across, along, (i, j) => j * across + i);
  const square = Math.sqrt(mostFaces / Math.max(1, count));
  const down = rich(downTurns, Math.max(along, along * square));
  const side = rich(sideTurns, Math.max(across, mostFaces / down.reduce((sum, n) => sum + n, 0)));
  return dividedAcross(dividedDown(cloth, down), side);
}

/** The sharpest turn of any line at either end of each interval, rad. */
function turnsAlong(
  { placesMm }: HangingCloth,
  length: number,
  breadth: number,
  node: (k: number, other: number) => number,
): number[] {
  const at = new Float64Array(length);
  for (let k = 1; k + 1 < length; k++) {
    for (let other = 0; other < breadth; other++) {
      const [a, b, c] = [node(k - 1, other), node(k, other), node(k + 1, other)];
      let [product, first, second] = [0, 0, 0];
      for (let d = 0; d < 3; d++) {
        const u = (placesMm[3 * b + d] as number) - (placesMm[3 * a + d] as number);
        const v = (placesMm[3 * c + d] as number) - (placesMm[3 * b + d] as number);
        product += u * v;
        first += u * u;
        second += v * v;
      }
      // A line that stands twice, where cloth is folded away, is no turn.
      if (first === 0 || second === 0) continue;
      const turn = Math.acos(Math.max(-1, Math.min(1, product / Math.sqrt(first * second))));
      at[k] = Math.max(at[k] as number, turn);
    }
  }
  return Array.from({ length: length - 1 }, (_, k) => Math.max(at[k] as number, at[k + 1] as number));
}

function dividedDown(cloth: HangingCloth, parts: readonly number[]): HangingCloth {
  const { across, along, strands } = cloth;
  const rows = rowsOf(parts);
  const placesMm = new Float64Array(3 * across * rows.length);
  const flatMm = new Float64Array(2 * across * rows.length);
  const clothMm = new Float64Array(2 * across * rows.length);
  rows.forEach(({ index, share }, row) => {
    for (let i = 0; i < across; i++) {
      const nodes = [-1, 0, 1, 2].map((k) => Math.min(along - 1, Math.max(0, index + k)) * across + i);
      writeBetween(cloth, nodes, share, { placesMm, flatMm, clothMm }, row * across + i);
    }
  });
  return {
    ...{ across, along: rows.length, placesMm, flatMm, clothMm },
    strands: Int32Array.from(rows, ({ index, share }) => strands[share > 0 ? index + 1 : index] as number),
  };
}

function dividedAcross(cloth: HangingCloth, parts: readonly number[]): HangingCloth {
  const { across, along, strands } = cloth;
  const columns = rowsOf(parts);
  const placesMm = new Float64Array(3 * along * columns.length);
  const flatMm = new Float64Array(2 * along * columns.length);
  const clothMm = new Float64Array(2 * along * columns.length);
  for (let j = 0; j < along; j++) {
    columns.forEach(({ index, share }, column) => {
      const nodes = [-1, 0, 1, 2].map((k) => j * across + Math.min(across - 1, Math.max(0, index + k)));
      writeBetween(cloth, nodes, share, { placesMm, flatMm, clothMm }, j * columns.length + column);
    });
  }
  return { across: columns.length, along, placesMm, flatMm, clothMm, strands };
}

/** Old nodes, and the new ones between them. */
function rowsOf(parts: readonly number[]): { index: number; share: number }[] {
  return [
    ...parts.flatMap((count, index) =>
      Array.from({ length: count }, (_, k) => ({ index, share: k / count })),
    ),
    { index: parts.length, share: 0 },
  ];
}

/** A point between the second and the third of four nodes in a row, at a share of the way. */
function writeBetween(
  cloth: HangingCloth,
  nodes: readonly number[],
  t: number,
  { placesMm, flatMm, clothMm }: Pick<HangingCloth, "placesMm" | "flatMm" | "clothMm">,
  to: number,
): void {
  const [p, q, r, s] = nodes as [number, number, number, number];
  for (let d = 0; d < 3; d++) {
    const of = (n: number) => cloth.placesMm[3 * n + d] as number;
    placesMm[3 * to + d] =
      t === 0 ? of(q) : cubicBetween([of(p), of(q), of(r), of(s)], spacing(cloth, nodes), t);
  }
  for (let d = 0; d < 2; d++) {
    const between = (of: Float64Array) =>
      (of[2 * q + d] as number) + t * ((of[2 * r + d] as number) - (of[2 * q + d] as number));
    flatMm[2 * to + d] = between(cloth.flatMm);
    clothMm[2 * to + d] = between(cloth.clothMm);
  }
}

/** Cloth between four nodes in a row, mm: what the curves are drawn over, since lines lie unevenly. */
function spacing({ flatMm }: HangingCloth, nodes: readonly number[]): [number, number, number] {
  const between = (a: number, b: number) =>
    Math.hypot(
      (flatMm[2 * b] as number) - (flatMm[2 * a] as number),
      (flatMm[2 * b + 1] as number) - (flatMm[2 * a + 1] as number),
    );
  const [p, q, r, s] = nodes as [number, number, number, number];
  const middle = between(q, r) || 1;
  return [between(p, q) || middle, middle, between(r, s) || middle];
}
