import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { rigidityNmm, weightNPerMm2 } from "../bending/rigidity.ts";
import { type FoldCloth, type FoldSpan, foldsAtHeight, type LaidFold } from "./folds-at-height.ts";

const clothOf = (bending: number): FoldCloth => ({
  weightNPerMm2: weightNPerMm2(370),
  rigidityNmm: rigidityNmm(370, bending),
  thicknessMm: 0.8,
  skirt: { lengthMm: 100, weightNPerMm: 0.0048, centreMm: 92 },
  paneMm: 30,
});

/** Folds gathered from the bottom up, as the bottom row is lifted. */
function placesAt(liftMm: number, count: number, arcMm = 200): FoldSpan[] {
  let left = liftMm;
  return Array.from({ length: count }, () => {
    const take = Math.min(arcMm, left);
    left -= take;
    return { arcMm, gapMm: Math.max(0, arcMm - take) };
  });
}

function laid(cloth: FoldCloth, places: readonly FoldSpan[]): LaidFold[] {
  const found = foldsAtHeight(cloth, places);
  if (found === undefined) throw new Error("no folds");
  return found.folds;
}

const lengthOf = (points: LaidFold["outline"]) =>
  points.slice(1).reduce((sum, [x, y], i) => {
    const [x0, y0] = points[i] ?? [0, 0];
    return sum + Math.hypot(x - x0, y - y0);
  }, 0);

describe("all folds of a shade at every height", () => {
  test.each([12, 23, 45])(
    "bending length %f: as long as the cloth, from row to row, never behind the pane",
    (bending) => {
      const cloth = clothOf(bending);
      for (let lift = 0; lift <= 800; lift += 25) {
        const places = placesAt(lift, 4);
        laid(cloth, places).forEach((fold, k) => {
          const place = places[k] as FoldSpan;
          // Chords of an arc bent round the loop are a little short.
          expectNear(lengthOf(fold.outline), place.arcMm, 0.005 * place.arcMm);
          const [x, y] = fold.outline.at(-1) ?? [Number.NaN, Number.NaN];
          expectNear(x, 0, 1e-6);
          expectNear(y, place.gapMm, 1e-6);
          expect(fold.behindMm).toBeLessThan(30);
          expect(fold.outMm).toBeLessThan(100);
        });
      }
    },
  );

  test("nothing jerks: a hundredth of a fold never moves a point by more than a twentieth, once it is open", () => {
    const cloth = clothOf(23);
    let was: LaidFold[] | undefined;
    for (let lift = 10; lift <= 600; lift += 2) {
      const now = laid(cloth, placesAt(lift, 3));
      if (was !== undefined && lift % 200 > 10) {
        now.forEach(({ outline }, k) => {
          const before = was?.[k]?.outline ?? [];
          if (before.length !== outline.length) return;
          const rise = outline[0]?.[1] ?? 0;
          outline.forEach(([x, y], i) => {
            const [x0 = 0, y0 = 0] = before[i] ?? [];
            expect(Math.hypot(x - x0, y - rise - y0)).toBeLessThan(10);
          });
        });
      }
      was = now;
    }
  });

  test("a height looks the same whatever was drawn before it", () => {
    const [up, down] = [clothOf(23), clothOf(23)];
    const lifts = [40, 170, 230, 399, 420];
    const first = lifts.map((lift) => laid(up, placesAt(lift, 3)));
    const second = [...lifts].reverse().map((lift) => laid(down, placesAt(lift, 3)));
    second.reverse().forEach((folds, i) => {
      folds.forEach(({ outline }, k) => {
        outline.forEach(([x, y], p) => {
          expectNear(x, first[i]?.[k]?.outline[p]?.[0] ?? Number.NaN, 1e-6);
          expectNear(y, first[i]?.[k]?.outline[p]?.[1] ?? Number.NaN, 1e-6);
        });
      });
    });
  });

  test("each fold lies in front of the one below it", () => {
    const folds = laid(clothOf(23), placesAt(800, 4));
    folds.forEach(({ outMm }, k) => {
      expect(outMm).toBeGreaterThan(folds[k - 1]?.outMm ?? 0);
    });
  });

  test("more cloth than cord: every stretch hangs in a fold when lowered", () => {
    const places = Array.from({ length: 4 }, () => ({ arcMm: 266, gapMm: 152 }));
    const folds = laid(clothOf(23), places);
    for (const fold of folds) {
      expect(fold.state).toBe("open");
      expect(fold.outMm).toBeGreaterThan(20);
    }
  });
});
