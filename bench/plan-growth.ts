import { plan } from "../src/plan/index.ts";
import { type Figure, least, ran } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const SHADES = 2000;
const FEW = 20;
const ROUNDS = 7;

/**
 * Time per shade in a job of 2,000 over that in jobs of 20: 1 where the work grows in step.
 *
 * Both sides plan the same 2,000 shades, since some sizes take more work than others and what is planned again and again
 * is known already; and both keep every plan until the last is made. Plans that are dropped at once cost
 * the collector almost nothing, and the figure would tell of memory, not of the work. The two take turns, and the
 * quickest of each is taken: a neighbour that slows the machine for some seconds would else lie in one side alone.
 */
export function planGrowth(): Figure {
  const many = jobOf(SHADES);
  const windows = many.rooms.flatMap((room) => room.windows);
  const few = Array.from({ length: SHADES / FEW }, (_, n) => ({
    ...many,
    rooms: [{ id: "room", name: "Room", windows: windows.slice(FEW * n, FEW * (n + 1)) }],
  }));
  const planFew = () => few.map((job) => plan(job));
  planFew();
  plan(many);
  const rounds = Array.from({ length: ROUNDS }, () => ({ few: ran(planFew), many: ran(() => plan(many)) }));
  const value = least(rounds.map((one) => one.many)) / least(rounds.map((one) => one.few));
  return { name: "plan.growth", value, unit: "ratio", goal: 1.1, better: "lower" };
}
