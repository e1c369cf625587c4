import fc from "fast-check";
import { expect, it } from "vitest";
import type { Lay } from "../src/shade-plan/index.ts";
import { anyJob } from "./arbitrary-job.ts";
import { clothsOfJob } from "./cloth-shade.ts";

/** Sum of the make-up of a layer: the finished size, what is added to it, and the shrinkage still to come. */
const sum = (parts: { widthMm: number; lengthMm: number }[], key: "widthMm" | "lengthMm") =>
  parts.reduce((total, part) => total + part[key], 0);

function isApart(a: Lay, b: Lay): boolean {
  return (
    a.xMm + a.widthMm <= b.xMm + 0.01 ||
    b.xMm + b.widthMm <= a.xMm + 0.01 ||
    a.yMm + a.lengthMm <= b.yMm + 0.01 ||
    b.yMm + b.lengthMm <= a.yMm + 0.01
  );
}

// Area is neither made nor lost by cutting: what is cut is the finished size, its allowances and the seams.
it("over any job, the panels of a layer are its finished size, its allowances and its seams, to the last mm²", () => {
  let layers = 0;
  fc.assert(
    fc.property(anyJob, (job) => {
      for (const { cloth } of clothsOfJob(job)) {
        for (const cut of cloth.layers) {
          const panelsMm2 = cut.panels.reduce((total, panel) => total + panel.widthMm * panel.lengthMm, 0);
          // A face that is cut apart has its seams in its make-up.
          const joins = cut.joinsAt === "cut-apart" ? [] : cut.panels.slice(1);
          const seamMm = joins
            .map((right, i) => {
              const left = cut.panels[i];
              return left === undefined ? 0 : left.joinedXMm + left.widthMm - right.joinedXMm;
            })
            .reduce((total, overlap) => total + overlap, 0);
          const widthMm = sum(cut.makeUp, "widthMm");
          const lengthMm = sum(cut.makeUp, "lengthMm");
          const expected = (widthMm + seamMm) * lengthMm;
          expect(Math.abs(panelsMm2 - expected) / expected).toBeLessThan(1e-9);
          expect(Math.abs(widthMm - cut.cutWidthMm)).toBeLessThan(1e-6 * (1 + widthMm));
          layers += 1;
        }
      }
    }),
    { numRuns: 200 },
  );
  expect(layers).toBeGreaterThan(200);
});

it("over any job, every piece that its cloth can hold lies on it once, clear of the others", () => {
  fc.assert(
    fc.property(anyJob, (job) => {
      for (const { cloth, findings } of clothsOfJob(job)) {
        const refused = findings.some(({ id }) =>
          ["cloth.trim-wider-than-cloth", "cloth.too-many-joins", "cloth.too-narrow"].includes(id),
        );
        if (refused) continue;
        for (const bolt of cloth.trimBolts) {
          const panels = cloth.layers.find((cut) => cut.layer === bolt.beside)?.lays ?? [];
          const all = [...panels, ...bolt.lays];
          const counted = cloth.trims
            .filter((trim) => trim.clothId === bolt.clothId)
            .every((trim) => bolt.lays.filter((lay) => lay.panelId === trim.id).length === trim.count);
          expect(counted).toBe(true);
          const crossing = all.find((a, i) => all.slice(i + 1).some((b) => !isApart(a, b)));
          expect(crossing).toBeUndefined();
        }
      }
    }),
    { numRuns: 150 },
  );
});
