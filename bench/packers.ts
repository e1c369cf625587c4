import { createRequire } from "node:module";

const require = createRequire(import.meta.url);

interface Item {
  width: number;
  height: number;
  name: string;
}

/** A general packer: whether all items go into one bin of a size, not turned. */
export interface Packer {
  name: string;
  fits: (items: readonly Item[], width: number, height: number) => boolean;
}

interface GuillotinePacker {
  packer: (
    input: { binWidth: number; binHeight: number; items: Item[] },
    options: {
      allowRotation: boolean;
      splitStrategy?: number;
      sortStrategy?: number;
      selectionStrategy?: number;
    },
  ) => unknown[][] | null;
}

interface MaxRects {
  MaxRectsPacker: new (
    width: number,
    height: number,
    padding: number,
    options: { smart: boolean; pot: boolean; square: boolean; allowRotation: boolean; logic: number },
  ) => { bins: { rects: unknown[] }[]; addArray: (rects: Item[]) => void };
}

/** Straight cuts; without options it tries all its strategies and keeps the best. */
export function guillotinePacker(): Packer {
  const { packer } = require("guillotine-packer") as GuillotinePacker;
  return {
    name: "guillotine-packer",
    fits: (items, width, height) =>
      packer({ binWidth: width, binHeight: height, items: [...items] }, { allowRotation: false })?.length ===
      1,
  };
}

/** Not bound to straight cuts. Its package names a file that does not load as a module, so another one is taken. */
export async function maxRects(): Promise<Packer> {
  const path = "../node_modules/maxrects-packer/dist/maxrects-packer.mjs";
  const { MaxRectsPacker } = (await import(path)) as MaxRects;
  return {
    name: "maxrects-packer",
    fits: (items, width, height) =>
      [0, 1, 2].some((logic) => {
        const options = { smart: false, pot: false, square: false, allowRotation: false, logic };
        const packer = new MaxRectsPacker(width, height, 0, options);
        packer.addArray(items.map((item) => ({ ...item })));
        return packer.bins.length === 1;
      }),
  };
}

/** The least height, scanned upwards in steps, at which a packer needs one bin. */
export function scanHeight(
  { fits }: Packer,
  items: readonly Item[],
  width: number,
  from: number,
  step: number,
): number {
  for (let height = from; ; height += step) if (fits(items, width, height)) return height;
}
