import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyMaking } from "../../../test/arbitrary-job.ts";
import { resolvedWith } from "../../../test/job-with.ts";
import { laidShade } from "../../../test/laid-shade.ts";
import { expectNear } from "../../../test/near.ts";
import type { StyleKind } from "../../job/index.ts";
import { flatSize, type ShadePoint } from "../../shade-plan/index.ts";
import { baysOf } from "./draped-line.ts";
import { hemBelowRowMm } from "./draped-shape.ts";

const STYLES = ["relaxed", "tailed", "pleated-balloon"] as const satisfies StyleKind[];
const RAISES = [0, 0.03, 0.31, 0.5, 0.88, 1];

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any making on any size: most such shades are impossible, and all of them must still be planned. */
const anyShade = fc.record({
  style: fc.constantFrom(...STYLES),
  mount: fc.constantFrom("inside" as const, "outside" as const, "to-size" as const),
  widthMm: fc.oneof(mm(50, 12_000), mm(300, 2400)),
  heightMm: fc.oneof(mm(50, 12_000), mm(400, 2600)),
  lining: fc.constantFrom(undefined, null),
  making: anyMaking,
});

type Asked = typeof anyShade extends fc.Arbitrary<infer T> ? T : never;

function planned({ style, mount, widthMm, heightMm, lining, making }: Asked) {
  return laidShade(
    resolvedWith({
      opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
      shade: { style, mount, lining, making },
    }),
  );
}

function lengthOf(points: readonly ShadePoint[]): number {
  return points.slice(1).reduce((sum, [x, y], i) => {
    const [fromX = x, fromY = y] = points[i] ?? [];
    return sum + Math.hypot(x - fromX, y - fromY);
  }, 0);
}

describe("any relaxed, tailed or pleated balloon shade", () => {
  test("cords add up to the finished length, cloth to the flat length, and no stretch has less cloth than cord", () => {
    fc.assert(
      fc.property(anyShade, (asked) => {
        const { size, form } = planned(asked);
        const cord = form.stretches.reduce((sum, { cordMm }) => sum + cordMm, 0);
        const cloth = form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0);
        expectNear(cord, size.finishedLengthMm, 1e-6, "cords");
        expectNear(cloth, flatSize(size, form, "face").lengthMm, 1e-6, "cloth");
        for (const one of form.stretches) expect(one.clothMm).toBeGreaterThanOrEqual(one.cordMm - 1e-9);
      }),
    );
  });

  test("pleats take what the flat cloth is wider, each line where the cloth before it has moved it", () => {
    fc.assert(
      fc.property(anyShade, (asked) => {
        const { size, form } = planned(asked);
        const flat = flatSize(size, form, "face").widthMm;
        const folded = form.pleats.reduce((sum, { foldedMm }) => sum + foldedMm, 0);
        if (form.pleats.length > 0) expectNear(flat - size.finishedWidthMm, folded, 1e-6, "pleats");
        const last = form.pleats.at(-1);
        if (last !== undefined)
          expectNear(flat - last.flatMm[2], size.finishedWidthMm - last.xMm, 1e-6, "to the right edge");
        for (const { flatMm, foldedMm } of form.pleats) {
          expectNear(flatMm[1] - flatMm[0], foldedMm / 2, 1e-6, "left half");
          expectNear(flatMm[2] - flatMm[1], foldedMm / 2, 1e-6, "right half");
        }
      }),
    );
  });

  test("it hangs to the finished length lowered and to the raised height raised, never lower, never wider", () => {
    fc.assert(
      fc.property(anyShade, fc.constantFrom(...RAISES), (asked, any) => {
        const { size, grid, at } = planned(asked);
        expectNear(at(0).lowestYMm ?? 0, size.finishedLengthMm, 1e-3, "lowered");
        expectNear(at(1).lowestYMm ?? 0, grid.raisedHeightMm, 1e-3, "raised");
        for (const raise of new Set([0, any, 1])) {
          const { pieces, lines, swagSection = [] } = at(raise);
          const points = [
            ...pieces.flatMap(({ outline }) => [...outline]),
            ...lines.flatMap((one) => [...one.points]),
          ];
          const outside = points.filter(
            ([x, y]) =>
              !(
                x >= -1e-6 &&
                x <= size.finishedWidthMm + 1e-6 &&
                y >= -1e-6 &&
                y <= size.finishedLengthMm + 1e-6
              ),
          );
          expect(outside).toEqual([]);
          for (const [out, y] of swagSection) expect(Number.isFinite(out) && Number.isFinite(y)).toBe(true);
        }
      }),
    );
  });

  test("left and right are alike", () => {
    fc.assert(
      fc.property(anyShade, fc.constantFrom(...RAISES), (asked, raise) => {
        const { size, at } = planned(asked);
        for (const { edges } of at(raise).pieces)
          for (const { kind, points } of edges) {
            if (kind === "crease" || points.length < 3) continue;
            const unlike = points.filter(([x, y], i) => {
              const [mirrorX = 0, mirrorY = 0] = points[points.length - 1 - i] ?? [];
              const apart = Math.abs(size.finishedWidthMm - mirrorX - x) / size.finishedWidthMm;
              return !(apart < 1e-6 && Math.abs(mirrorY - y) < 1e-5 * Math.max(1, size.finishedLengthMm));
            });
            expect(unlike).toEqual([]);
          }
      }),
    );
  });

  /** An inextensible line between two points is at least as long as any polygon drawn through it. */
  test("no line across is drawn longer than the cloth that is there", () => {
    fc.assert(
      fc.property(anyShade, fc.constantFrom(...RAISES), (asked, raise) => {
        const { size, grid, form, at } = planned(asked);
        const { section, pieces } = at(raise);
        const hem = pieces[0]?.edges[0]?.points ?? [];
        const bays = baysOf({
          ...{ form, columns: grid.columns, widthMm: size.finishedWidthMm, isHem: true },
          ...{
            yMm: (section.rows[0]?.yMm ?? 0) + hemBelowRowMm(grid, form),
            aboveHemMm: 0,
            risenMm: section.liftMm,
          },
        });
        for (const { fromMm, toMm, arcMm } of bays) {
          const drawn = lengthOf(hem.filter(([x]) => x >= fromMm - 1e-9 && x <= toMm + 1e-9));
          expect(drawn).toBeLessThanOrEqual(Math.max(arcMm, toMm - fromMm) * (1 + 1e-6) + 1e-6);
        }
      }),
    );
  });
});
