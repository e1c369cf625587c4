import { frictionOf } from "../../job/index.ts";
import { capstanRatio } from "../../mechanics/index.ts";
import { cordLoads } from "../cord-loads.ts";
import { BestSets } from "./best-sets.ts";
import type { HardwareNeed, HardwareSearch, PartShelf } from "./need.ts";
import { cordPrice, packPrice } from "./prices.ts";
import { cordAndEye, refusals } from "./search-locks.ts";

/** From straight up to straight down, over its own eye and the last one. */
const HALF_TURN_RAD = Math.PI;

/** Every cord with every eye, over a last eye of the same kind and down to a cleat. */
export function searchCleats(need: HardwareNeed, shelf: PartShelf, most: number): HardwareSearch {
  const { cords, eyes } = shelf;
  const columns = need.columnsMm.length;
  const loads = cordLoads(need.columnsMm, need.widthMm, need.heldRaisedN).designN;
  const totalN = loads.reduce((sum, load) => sum + load, 0);
  const ratios = eyes.map((eye) => capstanRatio(frictionOf(eye).value, HALF_TURN_RAD));
  const marks = cordAndEye(need, shelf, ratios, Math.max(0, ...loads), totalN);
  const best = new BestSets(most);
  let feasible = 0;
  cords.forEach((cord, c) => {
    const money = cordPrice(cord, columns, need);
    eyes.forEach((eye, e) => {
      if (!marks.takes(c, e)) return;
      feasible++;
      const pullN = totalN * (ratios[e] ?? 1);
      if (!best.admits(pullN)) return;
      const price = money + packPrice(eye, columns + 1);
      best.add({ pullN, price, pieces: 1 + 2 * columns, first: 0, cord: c, third: e });
    });
  });
  return {
    considered: cords.length * eyes.length,
    feasible,
    sets: best.sorted.flatMap(({ cord, third, pullN, price, pieces }) => {
      const [eye, line] = [eyes[third], cords[cord]];
      if (eye === undefined || line === undefined) return [];
      return [
        {
          kind: "cleat" as const,
          eye,
          cord: line,
          pullN,
          pieces,
          ...(Number.isFinite(price) ? { price } : {}),
        },
      ];
    }),
    refusals: refusals(marks, cords, eyes, 1),
  };
}
