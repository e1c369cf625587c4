import { readFileSync } from "node:fs";
import type { ClothProblem, Placement } from "../../src/cutting/cloth/index.ts";

/** A published instance of strip packing, with where it was read and under which licence. */
export interface StripInstance {
  id: string;
  W: number;
  areaOverW: number;
  guillotine: { lowerBound: number; best: number };
  items: [width: number, height: number][];
  certificate: [x: number, y: number, width: number, height: number][];
  height: number;
  source: string;
  licence: string;
  reference: string;
}

export const STRIPS: StripInstance[] = JSON.parse(
  readFileSync("test/cutting/strip-2d.json", "utf8"),
).instances;

/** The classes C1 to C7 of Hopper and Turton. */
export const HOPPER_C = STRIPS.filter(({ id }) => /^C\d_/.test(id));

/**
 * A unit is a millimetre; a millimetre of cloth costs 1, so that the cost is the height.
 * @param turns a piece may be turned by a quarter
 */
export function stripProblem(
  { id, W, items }: Pick<StripInstance, "id" | "W" | "items">,
  { turns = false }: { turns?: boolean } = {},
): ClothProblem {
  return {
    id,
    bolts: [{ id: "strip", remnant: false, widthMm: W, flaws: [], costPerMm: 1 }],
    pieces: items.map(([widthMm, lengthMm], at) => ({
      id: `p${at}`,
      shade: "any",
      part: "any",
      widthMm,
      lengthMm,
      grain: turns ? "free" : "fixed",
      nap: turns ? "either" : "one-way",
    })),
    gapMm: 0,
    cutting: { kind: "straight" },
    keep: { widthMm: 1e6, lengthMm: 1e6 },
    seed: 1,
  };
}

/** The published layout, each place given to an item of its size. */
export function certified({ items, certificate }: StripInstance): Placement[] {
  const waiting = new Map<string, number[]>();
  items.forEach(([w, h], at) => {
    const key = `${w} ${h}`;
    waiting.set(key, [...(waiting.get(key) ?? []), at]);
  });
  return certificate.map(([xMm, yMm, widthMm, lengthMm]) => {
    const at = waiting.get(`${widthMm} ${lengthMm}`)?.pop();
    return { pieceId: `p${at}`, xMm, yMm, widthMm, lengthMm, turn: 0 };
  });
}

export function meanByClass(gaps: readonly { id: string; gap: number }[]): number {
  const classes = new Map<string, { gap: number }[]>();
  for (const row of gaps) {
    const name = row.id.slice(0, 2);
    classes.set(name, [...(classes.get(name) ?? []), row]);
  }
  const means = [...classes.values()].map(
    (rows) => rows.reduce((sum, { gap }) => sum + gap, 0) / rows.length,
  );
  return means.reduce((sum, mean) => sum + mean, 0) / means.length;
}
