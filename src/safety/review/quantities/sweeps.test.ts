import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import {
  backed,
  bare,
  fromTo,
  hanging,
  longestMidway,
  pulls,
  rears,
  steady,
} from "../../../../test/safety/cords.ts";
import { QUANTITIES } from "../../rules/rule.ts";
import type { CordGeometry } from "../cord-geometry.ts";
import { measureCheck, pulledMm } from "../measures.ts";
import { headOpening, openingMm } from "./opening.ts";
import type { Sweep } from "./quantity.ts";
import { QUANTITY_TABLE } from "./table.ts";

const TAG = { signalMm: 5, textMm: 2.5 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any cords: open or closed guides, light and heavy, tails that go up and down, windows high and low. */
const anyGeometry: fc.Arbitrary<CordGeometry> = fc
  .record({
    spans: fc.array(mm(20, 400), { minLength: 1, maxLength: 9 }),
    extraCloth: mm(0, 150),
    headrail: mm(0, 120),
    guide: fc.constantFrom("open" as const, "ring-locked" as const, "enclosed" as const),
    board: fc.array(mm(20, 400), { maxLength: 3 }),
    held: mm(0.5, 400),
    share: mm(0.02, 1),
    holds: fc.boolean(),
    top: fc.option(mm(500, 4000), { nil: undefined }),
    tail: fc.array(mm(0, 3000), { minLength: 1, maxLength: 4 }),
    count: fc.integer({ min: 0, max: 4 }),
    railMm: fc.option(mm(50, 3000)),
    loop: fc.option(fc.tuple(mm(50, 2000), fc.constantFrom("tensioner" as const, "none" as const))),
  })
  .map(
    ({ spans, extraCloth, headrail, guide, board, held, share, holds, top, tail, count, railMm, loop }) => {
      const rear = rears(spans, {
        guide,
        boardSpansMm: board,
        heldN: spans.map((_, i) => held * (1 + i / 3)),
        leastShare: share,
        top: holds ? { holds } : { holds, wrapRad: Math.PI / 2 },
      });
      const last = rear.spans.at(-1);
      if (last !== undefined) last.gathersMm = Math.max(0, last.cordMm - headrail);
      for (const span of rear.spans) span.clothMm += extraCloth;
      const travelMm = rear.spans.reduce((sum, span) => sum + span.gathersMm, 0);
      const course = { raise: tail.map((_, i) => i / Math.max(1, tail.length - 1)), mm: tail };
      const loweredMm = tail[0] ?? 0;
      return bare({
        ...(top === undefined ? { topAboveFloorMm: undefined } : { topAboveFloorMm: top }),
        travelMm,
        rear,
        ...(count === 0
          ? {}
          : {
              pulls: [
                pulls(course, {
                  count,
                  ...(count > 1 ? { joinedMm: fromTo(loweredMm / 10, loweredMm / 10 + travelMm) } : {}),
                }),
                ...(railMm === null
                  ? []
                  : [pulls(railMm, { raises: "top-rail", count: 2, joinedMm: steady(railMm / 3) })]),
              ],
            }),
        ...(loop === null || count > 0
          ? {}
          : { loop: { dropMm: loop[0], perimeterMm: 2 * loop[0], device: loop[1], exitBelowTopMm: 50 } }),
      });
    },
  );

const sweeps = QUANTITIES.flatMap((quantity) => {
  const definition = QUANTITY_TABLE[quantity];
  return definition.kind === "sweep" ? [[quantity, definition] as [typeof quantity, Sweep]] : [];
});

const STEPS = 1500;
const dense = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);

describe.each(sweeps)("%s", (quantity, sweep) => {
  const sign = sweep.worse === "high" ? 1 : -1;
  const asks = [{}, { pullN: 35 }, { pullN: 70, belowFloorMm: 1600 }, { belowFloorMm: 1500 }];

  it("is nowhere worse than in the states that it names, against a dense sweep", () => {
    fc.assert(
      fc.property(anyGeometry, fc.constantFrom(...asks), (geometry, ask) => {
        fc.pre(sweep.absent(geometry) === undefined);
        fc.pre(!(sweep.needsFloor && geometry.topAboveFloorMm === undefined));
        const named = sweep.states(geometry, ask).map((at) => sign * sweep.at(geometry, at, ask));
        const swept = dense.map((at) => sign * sweep.at(geometry, at, ask));
        expect(Math.max(...swept)).toBeLessThanOrEqual(Math.max(...named) + 1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it("and is as bad somewhere near the named state, so that nothing is made up", () => {
    fc.assert(
      fc.property(anyGeometry, (geometry) => {
        fc.pre(sweep.absent(geometry) === undefined);
        fc.pre(!(sweep.needsFloor && geometry.topAboveFloorMm === undefined));
        const check = { quantity, comparison: "at-most", unit: "mm", states: "all" } as const;
        const measured = measureCheck({ geometry, tag: TAG }, check);
        if ("absent" in measured) throw new Error("invalid measure: absent");
        if (measured.value === undefined) {
          // Nothing but closed guides: a length of 0 would say that they hold.
          expect([sweep.leansOn?.(geometry, {})?.why, measured.within]).toEqual([measured.why, "not-proven"]);
          return;
        }
        expect(measured.raise).toBeGreaterThanOrEqual(0);
        expect(measured.raise).toBeLessThanOrEqual(1);
        expectNear(sweep.at(geometry, measured.raise, {}), measured.value, 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it("is never better under a pull, and never worse there than in the named states", () => {
    const { pulledAt } = sweep;
    if (pulledAt === undefined) return;
    fc.assert(
      fc.property(anyGeometry, (geometry) => {
        fc.pre(sweep.absent(geometry) === undefined);
        fc.pre(!(sweep.needsFloor && geometry.topAboveFloorMm === undefined));
        const check = { quantity, comparison: "at-most", unit: "mm", states: "all", pullN: 35 } as const;
        const measured = measureCheck({ geometry, tag: TAG }, check);
        if ("absent" in measured) throw new Error("invalid measure: absent");
        const worst = pulledMm({ geometry, tag: TAG }, check, measured) ?? 0;
        for (const at of dense) {
          const pulled = pulledAt(geometry, at, check);
          expect(pulled).toBeGreaterThanOrEqual(sweep.at(geometry, at, check) - 1e-9);
          expect(pulled).toBeLessThanOrEqual(worst + 1e-6);
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe("the opening between cord and cloth", () => {
  it("is none where both lie flat, and none where the guides touch", () => {
    expect(openingMm(200, 200)).toBe(0);
    expect(openingMm(0, 200)).toBe(0);
  });

  it("is that of a circle where next to no cord is left: D = c / π", () => {
    expectNear(openingMm(1e-9, 200), 200 / Math.PI, 1e-6);
  });

  it("holds what it says: cord and the shortest cloth around the probe are c, by points on the circle", () => {
    fc.assert(
      fc.property(mm(1, 399), mm(1, 199), (cordMm, moreMm) => {
        const clothMm = cordMm + moreMm;
        const radius = openingMm(cordMm, clothMm) / 2;
        // The cord from −g/2 to g/2 with the circle on its middle: hull of circle and cord, polygon of the circle.
        const points: [number, number][] = [
          [-cordMm / 2, 0],
          [cordMm / 2, 0],
        ];
        for (let i = 0; i < 4000; i++) {
          const angle = (2 * Math.PI * i) / 4000;
          points.push([radius * Math.cos(angle), radius + radius * Math.sin(angle)]);
        }
        expectNear(hullLength(points) - cordMm, clothMm, clothMm * 1e-5);
      }),
      { numRuns: 200 },
    );
  });

  it("is worst neither lowered nor raised, but with the cord as long as the opening is wide", () => {
    // D = c / (1 + π/2) = 200 / 2.5708 = 77.80 mm, by setting the derivative of c = g + 2 D atan(D/g) to nought.
    const geometry = backed([200]);
    const check = { quantity: "head-opening", comparison: "at-most", unit: "mm", states: "all" } as const;
    const measured = measureCheck({ geometry, tag: TAG }, check);
    if ("absent" in measured) throw new Error("invalid measure: absent");
    expectNear(measured.value ?? 0, 77.797, 0.001);
    expectNear(measured.raise, 1 - 77.797 / 200, 1e-5);
    expect(headOpening.at(geometry, 0, {})).toBe(0);
    expect(headOpening.at(geometry, 1, {})).toBe(0);
  });
});

/** Length of the convex hull, by Andrew's monotone chain. */
function hullLength(points: readonly (readonly [number, number])[]): number {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (row: readonly (readonly [number, number])[]) => {
    const chain: (readonly [number, number])[] = [];
    for (const point of row) {
      while (chain.length > 1 && !turnsLeft(chain.at(-2), chain.at(-1), point)) chain.pop();
      chain.push(point);
    }
    return chain;
  };
  const hull = [...half(sorted).slice(0, -1), ...half([...sorted].reverse()).slice(0, -1)];
  return hull.reduce((sum, point, i) => {
    const next = hull[(i + 1) % hull.length] ?? point;
    return sum + Math.hypot(next[0] - point[0], next[1] - point[1]);
  }, 0);
}

function turnsLeft(
  a: readonly [number, number] | undefined,
  b: readonly [number, number] | undefined,
  c: readonly [number, number],
): boolean {
  if (a === undefined || b === undefined) return true;
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}

describe("a tail", () => {
  it("that is longest midway is found there", () => {
    const check = { quantity: "free-cord-length", comparison: "at-most", unit: "mm", states: "all" } as const;
    expect(measureCheck({ geometry: hanging(longestMidway(100, 300)), tag: TAG }, check)).toMatchObject({
      value: 300,
      raise: 0.5,
    });
  });
});
