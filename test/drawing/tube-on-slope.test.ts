import { expect, test } from "vitest";
import { drawSheet } from "../../src/drawing/index.ts";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

test.each(["front", "back"] as const)("%s: a tube under a sloping board is drawn along the slope", (kind) => {
  const fallMm = 300;
  const planned = plan(
    jobWith({
      opening: { widthsMm: [1000], heightsMm: [1600], head: { kind: "angled", fallMm, high: "left" } },
      shade: { mount: "to-size", making: { lift: { kind: "tube-loop" } } },
    }),
  );
  const [shade] = planned.shades;
  if (shade?.lift.takeUp !== "tube") throw new Error("invalid test job: no tube");
  const { lift, size, board } = shade;
  const slope = (size.head?.fallMm ?? 0) / size.finishedWidthMm;
  expect(slope).toBeGreaterThan(0.2);
  const across = (x: number) => (kind === "back" ? size.finishedWidthMm - x : x);
  const { primitives } = drawSheet(kind, planned, shade);
  const middle = (part: string) => {
    const points = primitives.flatMap((one) =>
      one.kind === "polyline" && one.part === part && one.closed === true ? one.points : [],
    );
    const sum = (i: 0 | 1) => points.reduce((total, point) => total + point[i], 0) / points.length;
    return { x: sum(0), y: sum(1), count: points.length };
  };
  if (kind === "back") {
    for (const { number } of lift.spools) {
      const { x, y, count } = middle(`spool-${number}`);
      expect(count).toBeGreaterThan(0);
      // Plane geometry: so far below the board everywhere as at its high end.
      expectNear(y, board.thicknessMm + lift.tube.axisMm + slope * across(x), 0.01);
    }
  }
  // What hangs from the drive hangs from where the board is there.
  const loop = primitives.flatMap((one) =>
    one.kind === "polyline" && one.role === "loop" ? one.points.map(([, y]) => y) : [],
  );
  const top = board.thicknessMm + lift.tube.axisMm + slope * lift.drive.xMm;
  expect(Math.min(...loop)).toBeGreaterThan(top - lift.drive.heightMm);
});
