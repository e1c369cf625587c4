import { CATALOGUE } from "../src/job/index.ts";
import { searchHardware } from "../src/lift/index.ts";
import { HARDWARE_NEED } from "../test/hardware-need.ts";
import { type Figure, median, samplesOf } from "./figure.ts";

/** So many parts of each list, each a little other than the one that it was made from. */
function many<P extends { id: string; name: string }>(parts: readonly P[], count: number): P[] {
  return Array.from({ length: count }, (_, i) => {
    const part = parts[i % parts.length];
    if (part === undefined) throw new Error("invalid catalogue: no part");
    return { ...part, id: `${part.id}-${i}`, name: `${part.name} ${i}` };
  });
}

/** A million combinations of lock, cord and eye searched, and as many again in tubes and drives. */
export function liftSearch(): Figure {
  const shelf = {
    locks: many(CATALOGUE.locks, 100),
    cords: many(CATALOGUE.cords, 100),
    eyes: many(CATALOGUE.eyes, 100),
    tubes: many(CATALOGUE.tubes, 100),
    drives: many(CATALOGUE.drives, 100),
  };
  const value = median(samplesOf(() => searchHardware(HARDWARE_NEED, shelf), { warm: 1, times: 5 })) / 1000;
  return { name: "lift.search", value, unit: "s", goal: 1, better: "lower" };
}
