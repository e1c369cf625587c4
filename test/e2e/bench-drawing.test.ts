import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, firstVisit, PHONE } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(async () => {
  await harness.close();
});

test.each([
  ["desk", DESK],
  ["phone", PHONE],
])(
  "on a %s the bench draws what the hands do, whole and large, with its figures read out",
  async (_, viewport) => {
    const { page, errors } = await firstVisit(harness, { viewport });
    await page.goto(`${harness.url}#/job/lantern-row/parlour-left/bench`);
    await page.locator(".bench-step").waitFor();
    const drawing = page.locator(".action-svg");
    const seen: string[] = [];
    const next = page.getByRole("button", { name: "Next", exact: true });
    for (;;) {
      if ((await drawing.count()) > 0) {
        const name = (await drawing.getAttribute("aria-label")) ?? "";
        seen.push(name);
        const box = await drawing.boundingBox();
        const room = await page.locator(".bench-drawing").boundingBox();
        if (box === null || room === null) throw new Error(`${name}: not drawn`);
        expect(box.width, name).toBeGreaterThan(120);
        expect(box.x, name).toBeGreaterThanOrEqual(room.x - 1);
        expect(box.x + box.width, name).toBeLessThanOrEqual(room.x + room.width + 1);
        expect(box.y, name).toBeGreaterThanOrEqual(room.y - 1);
        expect(box.y + box.height, name).toBeLessThanOrEqual(room.y + room.height + 1);
      }
      if (await next.isDisabled()) break;
      await next.click();
    }
    expect(seen.length).toBeGreaterThan(10);
    expect(seen.some((name) => /^Press the side hem\. .*\d/.test(name))).toBe(true);
    expect(errors).toEqual([]);
    await page.context().close();
  },
);

test("on a phone on its side the step stands beside its drawing, and both have the height", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: { width: 844, height: 390 } });
  await page.goto(`${harness.url}#/job/lantern-row/parlour-left/bench`);
  await page.locator(".action-svg").waitFor();
  const step = await page.locator(".bench-step").boundingBox();
  const room = await page.locator(".bench-drawing").boundingBox();
  if (step === null || room === null) throw new Error("nothing to measure");
  expect(room.x).toBeGreaterThanOrEqual(step.x + step.width - 1);
  expect(Math.min(step.height, room.height)).toBeGreaterThan(390 / 2);
  expect(errors).toEqual([]);
  await page.context().close();
});
