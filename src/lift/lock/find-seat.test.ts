import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { markMm } from "../../units/index.ts";
import { type BoardLine, gapAfter, gapsToTry, hasRoom } from "../gaps.ts";
import { findSeat } from "./find-seat.ts";
import { pullCurve } from "./pull-curve.ts";
import {
  cordPull,
  type RigLayout,
  ROLLER_EFFICIENCY,
  strandPath,
  threadRig,
  wrapRad,
} from "./rig-threading.ts";

/** Pull by the drawn paths, point by point. */
function drawnPull(layout: RigLayout, outer: number, lockMm: number): number {
  return threadRig(layout, outer).strands.reduce((sum, strand) => {
    const wrap = wrapRad(strandPath(layout, strand, lockMm));
    return sum + cordPull(layout.loadsN[strand.eye] ?? 0, layout.friction, wrap, ROLLER_EFFICIENCY.value);
  }, 0);
}

interface Case {
  line: BoardLine;
  layout: RigLayout;
}

const anyCase: fc.Arbitrary<Case> = fc
  .record({
    inset: fc.double({ min: 20, max: 120, noNaN: true }),
    spacing: fc.double({ min: 60, max: 400, noNaN: true }),
    cords: fc.integer({ min: 2, max: 10 }),
    loads: fc.array(fc.double({ min: 0.5, max: 6, noNaN: true }), { minLength: 10, maxLength: 10 }),
    length: fc.double({ min: 15, max: 50, noNaN: true }),
    width: fc.double({ min: 12, max: 40, noNaN: true }),
    slots: fc.integer({ min: 1, max: 7 }),
    friction: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    run: fc.double({ min: 0, max: 25, noNaN: true }),
  })
  .map(({ inset, spacing, cords, loads, length, width, slots, friction, run }) => {
    const eyesMm = Array.from({ length: cords }, (_, i) => inset + i * spacing);
    const pitch = width / slots;
    return {
      line: {
        eyesMm,
        boardFromMm: 3,
        boardToMm: (eyesMm.at(-1) ?? 0) + inset - 3,
        eyeRadiusMm: 6,
        straightRunMm: run,
        housingLengthMm: length,
      },
      layout: {
        eyesMm,
        loadsN: loads.slice(0, cords),
        cordDiameterMm: 1.4,
        eyeDiameterMm: 12,
        friction,
        housingLengthMm: length,
        eyeLineMm: 19,
        slotsMm: Array.from({ length: slots }, (_, i) => 19 + (i - (slots - 1) / 2) * pitch),
        slotPitchMm: pitch,
        perSlot: Math.ceil(cords / slots),
      },
    };
  });

const wish = (ruler: "1 mm" | "1/8 in" = "1 mm") => ({ kind: "auto" as const, ruler });

describe("seat", () => {
  test("no mark of the ruler in any gap pulls less (every one tried)", () => {
    fc.assert(
      fc.property(anyCase, fc.constantFrom("1 mm" as const, "1/8 in" as const), ({ line, layout }, ruler) => {
        const found = findSeat(line, layout, wish(ruler));
        fc.pre(!found.forced);
        const pull = drawnPull(layout, found.gap.outer, found.lockMm);
        const mark = markMm(ruler);
        for (const gap of gapsToTry(line, "auto")) {
          for (let place = Math.ceil(gap.fromMm / mark) * mark; place <= gap.toMm; place += mark) {
            expect(pull).toBeLessThanOrEqual(drawnPull(layout, gap.outer, place) * (1 + 1e-6));
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test("is clear of every eye and of the board’s ends, with the straight run, by construction", () => {
    fc.assert(
      fc.property(anyCase, ({ line, layout }) => {
        const { lockMm, forced, gap } = findSeat(line, layout, wish());
        const room = gapsToTry(line, "auto").some(hasRoom);
        expect(forced).toBe(!room);
        fc.pre(!forced);
        const half = line.housingLengthMm / 2;
        for (const eye of line.eyesMm) {
          const between = Math.abs(eye - lockMm) - half - line.eyeRadiusMm;
          expect(between).toBeGreaterThan(line.straightRunMm - 0.01);
        }
        expect(lockMm - half).toBeGreaterThan(line.boardFromMm);
        expect(gap.outer).toBe(line.eyesMm.filter((eye) => eye < lockMm).length);
      }),
    );
  });

  test("sits on a mark wherever its gap has one", () => {
    fc.assert(
      fc.property(anyCase, ({ line, layout }) => {
        const { lockMm, forced, gap } = findSeat(line, layout, wish());
        fc.pre(!(forced || Math.ceil(gap.fromMm) > Math.floor(gap.toMm)));
        expectNear(lockMm, Math.round(lockMm), 1e-9);
      }),
    );
  });

  test("the curve that is searched is the pull of the drawn paths", () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0, max: 1, noNaN: true }), ({ line, layout }, share) => {
        for (const gap of gapsToTry(line, "auto")) {
          if (!hasRoom(gap)) continue;
          const place = gap.fromMm + share * (gap.toMm - gap.fromMm);
          const curve = pullCurve(layout, threadRig(layout, gap.outer))(place);
          expectNear(curve, drawnPull(layout, gap.outer, place), 1e-9 * curve);
        }
      }),
    );
  });

  test("more friction never lowers the pull", () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0, max: 0.5, noNaN: true }), ({ line, layout }, more) => {
        const pulls = [layout, { ...layout, friction: layout.friction + more }].map((one) => {
          const { gap, lockMm } = findSeat(line, one, wish());
          return drawnPull(one, gap.outer, lockMm);
        });
        expect(pulls[1]).toBeGreaterThanOrEqual((pulls[0] ?? 0) * (1 - 1e-9));
      }),
    );
  });

  test("a fixed place is kept; on an eye or off the board it is forced", () => {
    const { line, layout } = fixture();
    const at = (fixedMm: number) => findSeat(line, layout, { ...wish(), fixedMm });
    expect(at(150)).toMatchObject({ lockMm: 150, forced: false, gap: { outer: 1, kind: "between" } });
    expect(at(350)).toMatchObject({ lockMm: 350, forced: false, gap: { outer: 2, kind: "between" } });
    expect(at(50)).toMatchObject({ lockMm: 50, forced: true });
    expect(at(9000)).toMatchObject({ lockMm: line.boardToMm, forced: true });
  });

  test("the bounds of a gap: an inch of room, then none", () => {
    const { line } = fixture();
    // 50 + 6 + 12 + 15 = 83 and 250 − 33 = 217; the outer end 3 + 3 + 15 = 21 and 50 − 33 = 17.
    expect(gapAfter(line, 1)).toEqual({ outer: 1, kind: "between", fromMm: 83, toMm: 217 });
    expect(gapAfter(line, 0)).toEqual({ outer: 0, kind: "outside", fromMm: 21, toMm: 17 });
    expect(hasRoom(gapAfter(line, 0))).toBe(false);
  });

  function fixture(): Case {
    const eyesMm = [50, 250, 450, 650];
    return {
      line: {
        eyesMm,
        boardFromMm: 3,
        boardToMm: 697,
        eyeRadiusMm: 6,
        straightRunMm: 12,
        housingLengthMm: 30,
      },
      layout: {
        eyesMm,
        loadsN: [2, 4, 4, 2],
        cordDiameterMm: 1.4,
        eyeDiameterMm: 12,
        friction: 0.25,
        housingLengthMm: 30,
        eyeLineMm: 19,
        slotsMm: [12, 19, 26],
        slotPitchMm: 7,
        perSlot: 2,
      },
    };
  }
});
