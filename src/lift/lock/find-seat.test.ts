import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { markMm } from "../../units/index.ts";
import { type BoardLine, gapAfter, gapsToTry, hasRoom } from "../gaps.ts";
import { findSeat } from "./find-seat.ts";
import {
  cordPull,
  ON_LEVEL_BOARD,
  type RigLayout,
  ROLLER_EFFICIENCY,
  rigPullN,
  strandPath,
  threadRig,
} from "./rig-threading.ts";

/** Pull by the drawn paths in the plane of the board, point by point: a quarter turn up front, then each bend. */
function drawnPull(layout: RigLayout, outer: number, lockMm: number): number {
  return threadRig(layout, outer).reduce((sum, strand) => {
    const path = strandPath(layout, strand, lockMm);
    let wrap = Math.PI / 2;
    for (let i = 1; i + 1 < path.length; i++) {
      const [a, b, c] = [path[i - 1], path[i], path[i + 1]].map((at) => at ?? [0, 0]);
      const into = Math.atan2((b?.[1] ?? 0) - (a?.[1] ?? 0), (b?.[0] ?? 0) - (a?.[0] ?? 0));
      const out = Math.atan2((c?.[1] ?? 0) - (b?.[1] ?? 0), (c?.[0] ?? 0) - (b?.[0] ?? 0));
      const turn = Math.abs(out - into);
      wrap += Math.min(turn, 2 * Math.PI - turn);
    }
    const loadN = layout.loadsN[strand.eye] ?? 0;
    return sum + cordPull(loadN, layout.friction, wrap, ROLLER_EFFICIENCY.value);
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
        onBoard: ON_LEVEL_BOARD,
      },
    };
  });

const wish = (ruler: "1 mm" | "1/8 in" = "1 mm") => ({ kind: "auto" as const, ruler, pullLimitsN: [] });

describe("seat", () => {
  test("is the first clear mark from the control side, just inside the last eye where there is room", () => {
    fc.assert(
      fc.property(anyCase, fc.constantFrom("1 mm" as const, "1/8 in" as const), ({ line, layout }, ruler) => {
        const found = findSeat(line, layout, wish(ruler));
        fc.pre(!found.forced);
        const [between, outside] = gapsToTry(line, "auto");
        const gap = between !== undefined && hasRoom(between) ? between : (outside ?? found.gap);
        expect(found.gap.outer).toBe(gap.outer);
        expect(found.chosenFor).toBe("reach");
        const mark = markMm(ruler);
        for (let place = Math.ceil(gap.fromMm / mark) * mark; place < found.lockMm - 1e-3; place += mark) {
          expect(place).toBeLessThan(gap.fromMm + 1e-3);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("only a pull beyond a limit that another place keeps moves it: then to the least pull of all marks", () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0.01, max: 1, noNaN: true }), ({ line, layout }, share) => {
        const plain = findSeat(line, layout, wish());
        fc.pre(!plain.forced);
        const reachN = drawnPull(layout, plain.gap.outer, plain.lockMm);
        let leastN = Number.POSITIVE_INFINITY;
        for (const gap of gapsToTry(line, "auto")) {
          for (let place = Math.ceil(gap.fromMm); place <= gap.toMm; place++) {
            leastN = Math.min(leastN, drawnPull(layout, gap.outer, place));
          }
        }
        fc.pre(leastN < reachN * (1 - 1e-6));
        const limitN = leastN + share * (reachN - leastN) * 0.999;
        const eased = findSeat(line, layout, { ...wish(), pullLimitsN: [limitN] });
        expect(eased.chosenFor).toBe("pull");
        expectNear(drawnPull(layout, eased.gap.outer, eased.lockMm), leastN, 1e-6 * leastN);
        const alike = findSeat(line, layout, { ...wish(), pullLimitsN: [leastN * (1 - 1e-6)] });
        expect(alike.lockMm).toBe(plain.lockMm);
      }),
      { numRuns: 60 },
    );
  });

  test("only eyes that are too near for a level cord move it on: to the first mark that is far enough from both", () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 1, max: 200, noNaN: true }), ({ line, layout }, apart) => {
        const plain = findSeat(line, layout, wish());
        fc.pre(!plain.forced);
        const hold = { eyeApartMm: apart, farthestMm: plain.lockMm + 100 };
        const isLevel = (mm: number) => line.eyesMm.every((eye) => Math.abs(eye - mm) >= apart - 1e-3);
        // Every mark of every gap, one by one.
        const places = gapsToTry(line, "auto").flatMap((gap) =>
          Array.from({ length: 5001 }, (_, mm) => mm).filter(
            (mm) => mm >= gap.fromMm - 1e-3 && mm <= Math.min(gap.toMm, hold.farthestMm) + 1e-3,
          ),
        );
        const found = findSeat(line, layout, { ...wish(), hold });
        if (isLevel(plain.lockMm)) expect(found).toEqual(plain);
        else if (found.chosenFor === "hold") expect(isLevel(found.lockMm)).toBe(true);
        else expect(places.filter(isLevel)).toEqual([]);
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

  test("the pull that is compared is the pull of the drawn paths", () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0, max: 1, noNaN: true }), ({ line, layout }, share) => {
        for (const gap of gapsToTry(line, "auto")) {
          if (!hasRoom(gap)) continue;
          const place = gap.fromMm + share * (gap.toMm - gap.fromMm);
          const pullN = rigPullN(layout, threadRig(layout, gap.outer), place);
          expectNear(pullN, drawnPull(layout, gap.outer, place), 1e-9 * pullN);
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
        onBoard: ON_LEVEL_BOARD,
      },
    };
  }
});
