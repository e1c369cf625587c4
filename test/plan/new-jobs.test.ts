import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { newJob, newWindow, openJobText, STYLES } from "../../src/job/index.ts";
import { findingCards, plan } from "../../src/plan/index.ts";

/** Windows as most houses have them, mm. */
const WIDTHS_MM = [762, 914, 1067];
const HEIGHTS_MM = [1067, 1220, 1524];

/** What must be mended on a new shade of which its maker has said no more than its size and its style. */
function toMend(style: (typeof STYLES)[number], mount: "inside" | "outside"): string[] {
  const windows = WIDTHS_MM.flatMap((widthMm) =>
    HEIGHTS_MM.map((heightMm) => {
      const window = newWindow({ id: `w-${widthMm}-${heightMm}`, name: "W", widthMm, heightMm });
      return { ...window, shade: { ...window.shade, style, mount } };
    }),
  );
  const job = newJob({ id: "new", name: "New", system: "imperial" });
  return plan({ ...job, rooms: [{ id: "room", name: "Room", windows }] }).shades.flatMap(
    ({ shadeId, findings }) =>
      findings
        .filter(({ severity }) => severity === "fix" || severity === "stop")
        .map(({ id }) => `${shadeId} ${id}`),
  );
}

test.each(STYLES)(
  "a new %s shade of a usual size has nothing to mend that its maker did not cause",
  (style) => {
    expect([...toMend(style, "inside"), ...toMend(style, "outside")]).toEqual([]);
  },
);

test("a shade too light for any spring at hand is proposed a wand, and a bar that makes it heavy enough a spring", () => {
  const light = newWindow({ id: "light", name: "Light", widthMm: 560, heightMm: 760 });
  const job = newJob({ id: "new", name: "New", system: "metric" });
  const planned = (window: typeof light) =>
    plan({ ...job, rooms: [{ id: "room", name: "Room", windows: [window] }] }).shades[0];
  // Made for 0.7 kg and more, says the example; the shade weighs less, as the plan itself comes to.
  expect(planned(light)?.mass.totalKg).toBeLessThan(0.7);
  expect(planned(light)?.lift.kind).toBe("tube-wand");
  const large = newWindow({ id: "large", name: "Large", widthMm: 900, heightMm: 1500 });
  expect(planned(large)?.lift.kind).toBe("spring");
});

test("the demonstration is a happy one: five styles, cloths of different colours, prices, and two things to learn from", () => {
  const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
  if (!opened.ok) throw new Error("the demonstration does not open");
  const { job } = opened;
  const planned = plan(job);
  expect(new Set(planned.shades.map(({ style }) => style)).size).toBe(5);
  expect(new Set(job.cloths.map(({ colour }) => colour)).size).toBe(6);
  const all = [...planned.shades.flatMap(({ findings }) => findings), ...planned.findings];
  const cards = findingCards(all).filter(({ severity }) => severity === "fix" || severity === "stop");
  expect(cards.map(({ id }) => id)).toEqual(["measure.out-of-square", "safety.cords-front"]);
  expect(planned.cost.unpriced).toEqual([]);
});
