import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drawing, drawSheet, type Primitive } from "../../src/drawing/index.ts";
import { plan, type ShadePlan } from "../../src/plan/index.ts";
import type { CordLockLift } from "../../src/shade-plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

interface Case {
  eyeMm: number;
  gapMm: number;
  cordMm: number;
  side: "left" | "right";
  wires: number;
}

const anyCase: fc.Arbitrary<Case> = fc.record({
  eyeMm: fc.integer({ min: 8, max: 30 }),
  gapMm: fc.double({ min: 0.1, max: 0.8, noNaN: true }),
  cordMm: fc.double({ min: 1, max: 2, noNaN: true }),
  side: fc.constantFrom("left", "right"),
  wires: fc.integer({ min: 0, max: 5 }),
});

function drawn({ eyeMm, gapMm, cordMm, side, wires }: Case) {
  const planned = plan(
    jobWith(
      {
        opening: { widthsMm: [1000], heightsMm: [1500] },
        shade: {
          mount: "to-size",
          making: {
            lift: { lock: "mine", eye: "mine", cord: "mine", controlSide: side },
            columns: { count: 4 },
          },
        },
      },
      {
        units: { system: "metric", ruler: "1 mm" },
        hardware: {
          locks: [
            {
              id: "mine",
              name: "My lock",
              housingLengthMm: 32,
              housingWidthMm: 26,
              housingHeightMm: 26,
              dividerWires: wires,
              cordsMax: 9,
              cordMinMm: 0.9,
              cordMaxMm: 2.1,
              rollerDiameterMm: 9,
              endGapMm: gapMm,
            },
          ],
          eyes: [{ id: "mine", name: "My eye", outsideDiameterMm: eyeMm }],
          cords: [{ id: "mine", name: "My cord", diameterMm: cordMm }],
        },
      },
    ),
  );
  const shade: ShadePlan | undefined = planned.shades[0];
  if (shade?.lift.kind !== "cord-lock") throw new Error("invalid test job: no lock");
  const lift: CordLockLift = shade.lift;
  const sheet = (kind: "lock" | "board") => drawSheet(kind, planned, shade, { trueScale: true });
  return { lift, shade, sheet };
}

const pointsOf = (primitive: Primitive) => (primitive.kind === "polyline" ? primitive.points : []);
const box = (primitive: Primitive) => {
  const points = pointsOf(primitive);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
};
const of = ({ primitives }: Drawing, role: Primitive["role"], kind: Primitive["kind"] = "polyline") =>
  primitives.filter((one) => one.role === role && one.kind === kind);
/** The underside of the board in the section. */
const undersideOf = (drawing: Drawing) => Math.max(...of(drawing, "board").map((one) => box(one).bottom));

describe("the sheet of a lock", () => {
  it("draws eyes to size, from below and in section, and on the board", () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { sheet } = drawn(one);
        for (const eye of of(sheet("board"), "eye")) {
          const { top, bottom, left, right } = box(eye);
          expectNear(bottom - top, one.eyeMm, 1e-9);
          expectNear(right - left, one.eyeMm / 5, 1e-9);
        }
        const lock = sheet("lock");
        const below = of(lock, "eye").filter((eye) => pointsOf(eye).length === 8);
        for (const eye of below) expectNear(box(eye).bottom - box(eye).top, one.eyeMm, 1e-9);
        // In section its wire is cut at the top and at the bottom: from the board to its lowest point it is as deep as wide.
        const cuts = of(lock, "eye", "circle").flatMap((cut) => (cut.kind === "circle" ? [cut] : []));
        expect(cuts.length).toBe(2 * below.length);
        if (cuts.length > 0) {
          const lowest = Math.max(...cuts.map(({ centre, radiusMm }) => centre[1] + radiusMm));
          expectNear(lowest - undersideOf(lock), one.eyeMm, 1e-9);
        }
      }),
      { numRuns: 12 },
    );
  });

  it("in section a cord comes in over its roller, touches no wheel's inside, and goes down between both", () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { sheet, lift } = drawn(one);
        const lock = sheet("lock");
        const under = undersideOf(lock);
        const axis = under + lift.entry.axisMm;
        const smooth = of(lock, "roller", "circle")
          .flatMap((wheel) => (wheel.kind === "circle" ? [wheel] : []))
          .filter(({ centre, radiusMm }) => Math.abs(centre[1] - axis) < 1e-6 && radiusMm > 2);
        const [wheel] = smooth;
        if (wheel === undefined) throw new Error("no smooth roller");
        const centres = [wheel.centre[0], -wheel.centre[0]];
        const cords = of(lock, "cord").filter((cord) => pointsOf(cord).some(([, y]) => y > under));
        expect(cords.length).toBeGreaterThan(0);
        for (const cord of cords) {
          const points = pointsOf(cord);
          const end = points.at(-1);
          // Between the rollers, below the housing.
          expect(Math.abs(end?.[0] ?? 99)).toBeLessThan(lift.cordDiameterMm);
          expect(end?.[1]).toBeGreaterThan(under + lift.housingHeightMm);
          // Along each of its stretches its middle keeps half a cord from either roller.
          for (let i = 1; i < points.length; i++) {
            for (const share of [0, 0.25, 0.5, 0.75, 1]) {
              const [a, b] = [points[i - 1], points[i]];
              if (a === undefined || b === undefined) continue;
              const at = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] as const;
              for (const x of centres) {
                const away = Math.hypot(at[0] - x, at[1] - axis);
                expect(away).toBeGreaterThan(lift.entry.rollerMm / 2 + 0.9 * (lift.cordDiameterMm / 2));
              }
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });

  it("apart, the rollers leave a cord through; upside down they meet", () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { sheet, lift } = drawn(one);
        const lock = sheet("lock");
        const under = undersideOf(lock);
        const r = lift.entry.rollerMm / 2;
        const axles = of(lock, "roller", "circle").flatMap((wheel) =>
          wheel.kind === "circle" && wheel.radiusMm < r ? [wheel.centre] : [],
        );
        const section = axles.filter(([, y]) => y < under + lift.housingHeightMm);
        const inHand = axles.filter(([, y]) => y >= under + lift.housingHeightMm);
        const apart = (two: typeof axles) => {
          const [a, b] = two;
          return a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) - 2 * r : Number.NaN;
        };
        expect(apart(section)).toBeGreaterThan(lift.cordDiameterMm);
        expectNear(apart(inHand), 0, 1e-9);
      }),
      { numRuns: 8 },
    );
  });

  it("the gap at a roller's end and the cord beside it are to one scale", () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const lock = drawn(one).sheet("lock");
        const cord = of(lock, "cord", "circle").flatMap((dot) => (dot.kind === "circle" ? [dot] : []))[0];
        if (cord === undefined) throw new Error("no cord beside the gap");
        const beside = (role: "housing" | "roller") =>
          of(lock, role)
            .map(box)
            .filter(({ top, bottom }) => cord.centre[1] > top && cord.centre[1] < bottom)
            // Of those at this height the one nearest to the cord.
            .sort((a, b) => near(a, cord.centre[0]) - near(b, cord.centre[0]))[0];
        const [wall, roller] = [beside("housing"), beside("roller")];
        if (wall === undefined || roller === undefined) throw new Error("no gap");
        const gap = Math.max(roller.left - wall.right, wall.left - roller.right);
        expectNear(gap / (2 * cord.radiusMm), one.gapMm / one.cordMm, 1e-9);
      }),
      { numRuns: 8 },
    );
  });

  it("from below no cord is drawn over a roller: it lies above it", () => {
    const lock = drawn({ eyeMm: 12, gapMm: 0.5, cordMm: 1.4, side: "right", wires: 3 }).sheet("lock");
    const rollers = [...of(lock, "roller"), ...of(lock, "toothedRoller")]
      .filter((one) => pointsOf(one).length === 4)
      .map(box)
      .filter(({ bottom }) => bottom < 14);
    expect(rollers.length).toBe(2);
    for (const cord of of(lock, "cord")) {
      const points = pointsOf(cord).filter(([, y]) => Math.abs(y) < 13);
      for (const [x] of points)
        for (const { left, right } of rollers) expect(x > left + 1e-9 && x < right - 1e-9).toBe(false);
    }
  });

  it("the crown of the wires looks outwards on either hand", () => {
    for (const side of ["left", "right"] as const) {
      const lock = drawn({ eyeMm: 12, gapMm: 0.5, cordMm: 1.4, side, wires: 2 }).sheet("lock");
      const crowns = of(lock, "dividerWire", "circle").flatMap((dot) =>
        dot.kind === "circle" ? [dot.centre[0]] : [],
      );
      expect(crowns.length).toBe(2);
      for (const x of crowns) expect(Math.sign(x)).toBe(side === "right" ? 1 : -1);
      expect(lock.facts).toContainEqual({ label: "Smooth crown of the wires", text: `towards the ${side}` });
    }
  });
});

function near({ left, right }: { left: number; right: number }, x: number): number {
  return Math.min(Math.abs(left - x), Math.abs(right - x));
}
