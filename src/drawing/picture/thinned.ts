import type { HangingCloth } from "../../drape/index.ts";

/**
 * The same cloth with no more nodes than a page shows faces: of more folds or gathers than can be seen apart, every so
 * manieth line stays, the first and the last among them.
 */
export function thinned(cloth: HangingCloth, mostNodes: number): HangingCloth {
  const { across, along, placesMm, flatMm, clothMm, strands } = cloth;
  if (across * along <= mostNodes) return cloth;
  const fewer = Math.sqrt(mostNodes / (across * along));
  const down = kept(along, Math.max(Math.floor(along * fewer), Math.floor(mostNodes / across)));
  const side = kept(across, Math.floor(mostNodes / down.length));
  const nodes = down.flatMap((j) => side.map((i) => j * across + i));
  const of = (values: Float64Array, each: number) => {
    const left = new Float64Array(each * nodes.length);
    nodes.forEach((node, n) => {
      left.set(values.subarray(each * node, each * (node + 1)), each * n);
    });
    return left;
  };
  return {
    across: side.length,
    along: down.length,
    placesMm: of(placesMm, 3),
    flatMm: of(flatMm, 2),
    clothMm: of(clothMm, 2),
    strands: Int32Array.from(down, (j) => strands[j] as number),
  };
}

/** So many of the lines from 0 to count − 1, evenly, both ends among them. */
function kept(count: number, most: number): number[] {
  const left = Math.min(count, Math.max(2, most));
  return Array.from({ length: left }, (_, k) => Math.round((k * (count - 1)) / (left - 1)));
}
