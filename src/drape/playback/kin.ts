/** A net of the cloth: so many lines along, nodes across, and which of those are held. */
interface Net {
  across: number;
  along: number;
  held: Uint8Array;
}

/** Which uprights of a net have the shape of one before them. */
export interface Kin {
  /** Of each upright the first that is shaped as it is; itself where none is. */
  first: Int32Array;
  /** Of each upright how it lies to that one: the same way, turned over, or either, where it is plane. */
  ways: Uint8Array;
}

export const SAME_WAY = 1;
export const TURNED_OVER = 2;

/** Places that nobody could tell apart, mm: a bar that sags by less makes no other shape of an upright. */
const ALIKE_MM = 0.005;

/** Uprights that hang alike beside different columns: cells that are alike were solved once. */
export function kinOf(net: Net, placesMm: Float64Array): Kin {
  const { across } = net;
  const first = new Int32Array(across);
  const ways = new Uint8Array(across).fill(SAME_WAY | TURNED_OVER);
  const known: number[] = [];
  for (let i = 0; i < across; i++) {
    first[i] = i;
    for (const one of known) {
      const found = waysBetween(net, placesMm, i, one);
      if (found === 0) continue;
      first[i] = one;
      ways[i] = found;
      break;
    }
    if (first[i] === i) known.push(i);
  }
  return { first, ways };
}

/** How one upright lies to another of its shape; 0 where it has another. */
function waysBetween({ across, along, held }: Net, placesMm: Float64Array, i: number, one: number): number {
  let ways = SAME_WAY | TURNED_OVER;
  const [x, oneX] = [placesMm[3 * i] as number, placesMm[3 * one] as number];
  for (let j = 0; j < along && ways !== 0; j++) {
    const [own, other] = [j * across + i, j * across + one];
    if (held[own] !== held[other]) return 0;
    for (let c = 1; c < 3; c++)
      if (Math.abs((placesMm[3 * own + c] as number) - (placesMm[3 * other + c] as number)) > ALIKE_MM)
        return 0;
    const out = (placesMm[3 * own] as number) - x;
    const oneOut = (placesMm[3 * other] as number) - oneX;
    if (Math.abs(out - oneOut) > ALIKE_MM) ways &= ~SAME_WAY;
    if (Math.abs(out + oneOut) > ALIKE_MM) ways &= ~TURNED_OVER;
  }
  return ways;
}
