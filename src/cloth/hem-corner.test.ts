import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { resolvedWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import type { CornerPoint, HemCorner } from "../shade-plan/index.ts";
import { hemCorner } from "./hem-corner.ts";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const hems = fc.record({
  sideTurnMm: mm(8, 80),
  sideTurns: fc.constantFrom(1 as const, 2 as const),
  bottomTurnMm: mm(8, 120),
  bottomTurns: fc.constantFrom(1 as const, 2 as const),
  corner: fc.constant("mitred" as const),
});
type Hems = typeof hems extends fc.Arbitrary<infer T> ? T : never;

const cornerOf = (making: Partial<Hems>): HemCorner =>
  hemCorner(resolvedWith({ shade: { making: { hems: making } } }));
const lineOf = (corner: HemCorner, kind: string) => {
  const found = corner.lines.find((line) => line.kind === kind);
  if (found === undefined) throw new Error(`invalid corner: no ${kind}`);
  return found;
};
/** What folding over the side edge or the hem line does to a point of the flat cloth. */
const overSide = ([x, y]: CornerPoint): CornerPoint => [-x, y];
const overHem = ([x, y]: CornerPoint): CornerPoint => [x, -y];
const cross = ([ax, ay]: CornerPoint, [bx, by]: CornerPoint) => ax * by - ay * bx;

describe("mitred corner", () => {
  it("equal hems fold at 45°, single or double (a mitre halves the right angle)", () => {
    for (const turns of [1, 2] as const) {
      const corner = cornerOf({
        corner: "mitred",
        sideTurnMm: 30,
        bottomTurnMm: 30,
        sideTurns: turns,
        bottomTurns: turns,
      });
      expectNear(corner.angleDeg ?? 0, 45, 1e-9);
      const { from, to } = lineOf(corner, "mitre");
      expect(from).toEqual([30 * turns, -30 * turns]);
      expect(to).toEqual([-30 * turns, 30 * turns]);
    }
  });

  // Folding is a reflection: an independent way to say that the two halves of the fold come to lie on one line.
  it("meets itself once both hems are turned, from the finished corner to where their inner edges cross", () => {
    fc.assert(
      fc.property(hems, (making) => {
        const corner = cornerOf(making);
        const { from, to } = lineOf(corner, "mitre");
        const inner: CornerPoint = [-making.sideTurnMm, -making.bottomTurnMm];
        // Both halves run from the finished corner; folded, both point to the inner corner.
        expectNear(cross(overSide(from), inner) / Math.hypot(...from), 0, 1e-6, "side half");
        expectNear(cross(overHem(to), inner) / Math.hypot(...to), 0, 1e-6, "bottom half");
        expectNear(cross(from, to) / Math.hypot(...from), 0, 1e-6, "through the finished corner");
        const onEdge = [from[0] - corner.outMm, to[1] - corner.downMm];
        expect(onEdge.every((off) => Math.abs(off) < 1e-9)).toBe(true);
      }),
    );
  });

  it("is cut off 1/4 in beyond its fold, on the side of the tip", () => {
    fc.assert(
      fc.property(hems, (making) => {
        const corner = cornerOf(making);
        const trim = corner.lines.find((line) => line.kind === "trim");
        const mitre = lineOf(corner, "mitre");
        fc.pre(trim !== undefined);
        const [dx, dy] = [mitre.to[0] - mitre.from[0], mitre.to[1] - mitre.from[1]];
        const off = (point: CornerPoint) =>
          Math.abs(cross([dx, dy], [point[0] - mitre.from[0], point[1] - mitre.from[1]])) /
          Math.hypot(dx, dy);
        expectNear(off(trim.from), 6.35, 1e-6);
        expectNear(off(trim.to), 6.35, 1e-6);
        expect(off([corner.outMm, corner.downMm])).toBeGreaterThan(6.35);
      }),
    );
  });

  it("is square where nothing is turned", () => {
    expect(cornerOf({ corner: "mitred", sideTurnMm: 0 }).kind).toBe("square");
    expect(cornerOf({ corner: "square" as never, sideTurnMm: 20 }).kind).toBe("square");
  });
});
