import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { expectNear } from "../../test/near.ts";
import { openJobText } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import { acrossFromControl, alongFromControl, placesOnBoard } from "./control-frame.ts";

// Half an ellipse as wide as it is high twice over is half a circle: R = 500, length π R, and along it x = R (1 − cos φ).
const HALF_CIRCLE = { finishedWidthMm: 1000, head: { kind: "arched", fallMm: 500.001 } } as never;

test.each(["left", "right"] as const)("places along half a circle, from the %s", (side) => {
  const frame = { side, head: HALF_CIRCLE };
  const at = placesOnBoard(frame);
  for (const share of [0.1, 0.25, 0.5, 0.8]) {
    const phi = Math.PI * share;
    const { acrossMm, downMm } = at(500 * phi);
    const x = 500 * (1 - Math.cos(phi));
    expectNear(acrossMm, side === "left" ? x : 1000 - x, 0.5);
    expectNear(downMm, 500 * (1 - Math.sin(phi)), 1);
    expectNear(acrossMm, acrossFromControl(frame, 500 * phi), 1e-9);
    expectNear(alongFromControl(frame, acrossMm), 500 * phi, 1e-3);
  }
});

test("a place that was asked for is known; the places of one board are not those of another", () => {
  const hypot = vi.spyOn(Math, "hypot");
  try {
    const at = placesOnBoard({ side: "left", head: HALF_CIRCLE });
    const first = at(300);
    const calls = hypot.mock.calls.length;
    expect(calls).toBeGreaterThan(0);
    expect(at(300)).toEqual(first);
    expect(hypot.mock.calls.length).toBe(calls);
    expect(placesOnBoard({ side: "right", head: HALF_CIRCLE })(300).acrossMm).not.toBe(first.acrossMm);
  } finally {
    hypot.mockRestore();
  }
});

// It took four seconds: the search for an easy pull asked for every eye of 46 at every place that it tried.
test("under half an ellipse, 46 columns of cords are strung with a bounded number of lengths along it", () => {
  const { text } = JSON.parse(readFileSync("test/fuzz/cases/elliptic-head-46-columns.json", "utf8"));
  const opened = openJobText(text);
  if (!opened.ok) throw new Error("invalid test: not a job");
  let calls = 0;
  const real = Math.hypot;
  const hypot = vi.spyOn(Math, "hypot").mockImplementation((...lengths) => {
    calls++;
    return real(...lengths);
  });
  try {
    expect(plan(opened.job).shades[0]?.grid.columns).toHaveLength(46);
  } finally {
    hypot.mockRestore();
  }
  expect(calls).toBeLessThan(3_000_000);
});
