import { drapeShade, type HangingShade } from "../src/drape/index.ts";
import { drawSheet, place } from "../src/drawing/index.ts";
import { type Job, newJob, newWindow, STYLES } from "../src/job/index.ts";
import { plan, type ShadePlan } from "../src/plan/index.ts";
import { type Figure, median, ran, samplesOf } from "./figure.ts";

const HEIGHTS = 13;
const PAGE = { maxWidthMm: 150, maxHeightMm: 190 };

/** One window of each style, 36 × 60 in. */
const jobs: Job[] = STYLES.map((style) => {
  const job = newJob({ id: style, name: style, system: "imperial" });
  const window = newWindow({ id: "window", name: "Window", widthMm: 914.4, heightMm: 1524 });
  return {
    ...job,
    rooms: [{ id: "room", name: "Room", windows: [{ ...window, shade: { style, mount: "outside" } }] }],
  };
});

function only(job: Job): ShadePlan {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid job: no shade");
  return shade;
}

/** From an edit to the first picture, which shows the shade let down: the style that takes longest. */
export function drapeFirst(): Figure {
  const value = Math.max(
    ...jobs.map((job) =>
      median(samplesOf(() => place(drawSheet("picture", job, only(job)), PAGE), { warm: 2, times: 5 }, ran)),
    ),
  );
  return { name: "drape.first", value, unit: "ms", goal: 300, better: "lower" };
}

/** A shade brought to rest at 13 heights from lowered to raised, each from the one before: the style that takes longest. */
export function drapeHeights(): Figure {
  const all = (shade: ShadePlan) => {
    let before: HangingShade | undefined;
    for (let k = 0; k < HEIGHTS; k++)
      before = drapeShade(shade, k / (HEIGHTS - 1), before === undefined ? {} : { before });
  };
  const value = Math.max(
    ...jobs.map((job) => {
      const shade = only(job);
      return median(samplesOf(() => all(shade), { warm: 1, times: 3 }, ran));
    }),
  );
  return { name: "drape.heights", value: value / 1000, unit: "s", goal: 3, better: "lower" };
}
