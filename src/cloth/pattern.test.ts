import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clothOf, type ShadeInput } from "../../test/cloth-shade.ts";
import { expectNear } from "../../test/near.ts";
import type { LayerCut, Panel } from "../shade-plan/index.ts";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SEAM_MM = 12.7;

interface Cloth {
  usableMm: number;
  alongMm: number;
  acrossMm?: number;
  match: "straight" | "half-drop";
  startXMm?: number;
}

const anyCloth: fc.Arbitrary<Cloth> = fc.record(
  {
    usableMm: mm(700, 3000),
    alongMm: mm(20, 900),
    acrossMm: mm(60, 1400),
    startXMm: mm(0, 400),
    match: fc.constantFrom("straight" as const, "half-drop" as const),
  },
  { requiredKeys: ["usableMm", "alongMm", "match"] },
);

type Pattern = NonNullable<NonNullable<ShadeInput["making"]>["pattern"]>;

const anyPattern: fc.Arbitrary<Pattern> = fc.record({
  place: fc.constantFrom("hem" as const, "centre" as const, "top" as const, "free" as const),
  offsetMm: mm(0, 800),
  across: fc.constantFrom("centre-motif" as const, "between-motifs" as const, "offset" as const),
  acrossMm: mm(0, 800),
  halfDropRule: fc.constantFrom("whole-repeat-per-order" as const, "half-repeat-if-needed" as const),
});

const anyShade = fc.record({
  widthMm: mm(300, 5200),
  lengthMm: mm(400, 3200),
  columns: fc.integer({ min: 2, max: 24 }),
  shrink: fc.constantFrom(0, 0.03),
  joins: fc.constantFrom("auto" as const, "equal-parts" as const, "under-columns" as const),
  cloth: anyCloth,
  pattern: anyPattern,
});

function planned({
  widthMm,
  lengthMm,
  columns,
  shrink,
  joins,
  cloth,
  pattern,
}: typeof anyShade extends fc.Arbitrary<infer T> ? T : never) {
  const shade: ShadeInput = { face: "mine", lining: null, making: { pattern, hems: { joins } } };
  return clothOf({
    widthMm,
    lengthMm,
    columnsMm: Array.from({ length: columns }, (_, i) => 50 + ((widthMm - 100) * i) / (columns - 1)),
    shade,
    cloths: [
      {
        id: "mine",
        name: "Mine",
        usableWidthMm: cloth.usableMm,
        massGsm: 200,
        shrinkLength: shrink,
        shrinkWidth: shrink,
        repeat: {
          verticalMm: cloth.alongMm,
          horizontalMm: cloth.acrossMm,
          match: cloth.match,
          startXMm: cloth.startXMm,
        },
      },
    ],
  });
}

/** How far a step on the bolt is from one that carries the pattern onto itself. */
function offLattice(cloth: Cloth, dx: number, dy: number): number {
  const net = cloth.usableMm - 2 * SEAM_MM;
  const across = cloth.acrossMm === undefined || cloth.acrossMm > net ? net : cloth.acrossMm;
  const columns = Math.round(dx / across);
  const drop = cloth.match === "half-drop" ? (columns * cloth.alongMm) / 2 : 0;
  const rest = dy - drop;
  return Math.hypot(dx - columns * across, rest - Math.round(rest / cloth.alongMm) * cloth.alongMm);
}

/** Where a point of the joined layer lies on the bolt, in the cloth of one panel. */
function onBolt(face: LayerCut, panel: Panel, xMm: number, yMm: number): [number, number] {
  const lay = face.lays.find((one) => one.panelId === panel.id);
  if (lay === undefined) throw new Error(`invalid lays: no ${panel.id}`);
  return [lay.xMm + xMm - panel.joinedXMm, lay.yMm + yMm];
}

const isSane = (face: LayerCut) =>
  face.panels.length < 30 && face.panels.every((panel) => panel.widthMm <= face.usableWidthMm + 1e-6);

describe("pattern through the joins", () => {
  // Geometry of a lattice: two cloths match at a line when a step of the repeat carries one onto the other.
  it("has the same phase on both sides of every seam, to 0.5 mm", () => {
    let seams = 0;
    fc.assert(
      fc.property(anyShade, (shade) => {
        const { face } = planned(shade);
        fc.pre(isSane(face));
        face.panels.slice(1).forEach((right, i) => {
          const left = face.panels[i];
          if (left === undefined) return;
          const seamX = right.joinedXMm + SEAM_MM;
          const [ax, ay] = onBolt(face, left, seamX, 0);
          const [bx, by] = onBolt(face, right, seamX, 0);
          expect(offLattice(shade.cloth, bx - ax, by - ay)).toBeLessThan(0.5);
          seams += 1;
        });
      }),
      { numRuns: 400 },
    );
    expect(seams).toBeGreaterThan(100);
  });

  it("falls on the finished shade where the lays say: every panel carries the lattice that is told", () => {
    let checked = 0;
    fc.assert(
      fc.property(anyShade, (shade) => {
        const { face, size } = planned(shade);
        const { motif } = face;
        fc.pre(isSane(face) && motif?.acrossKnown === true);
        fc.pre(motif !== undefined);
        const z = 1 - shade.shrink;
        const net = shade.cloth.usableMm - 2 * SEAM_MM;
        const first = shade.cloth.startXMm ?? (shade.cloth.usableMm % (shade.cloth.acrossMm ?? net)) / 2;
        for (const panel of face.panels) {
          // The corner of a repeat nearest to the hem line and the middle, as told, brought back to the cut cloth.
          const xMm = face.edges.leftMm + motif.originXMm / z;
          const yMm = face.edges.topMm + motif.originYMm / z;
          const [bx, by] = onBolt(face, panel, xMm, yMm);
          expect(offLattice(shade.cloth, bx - first, by), panel.id).toBeLessThan(0.5);
          checked += 1;
        }
        expectNear(motif.repeatYMm, shade.cloth.alongMm * z, 1e-9);
        if (shade.pattern.place === "hem") {
          const steps = (size.finishedLengthMm - motif.originYMm) / motif.repeatYMm;
          expectNear(steps, Math.round(steps), 1e-6, "a repeat stands on the hem");
        }
      }),
      { numRuns: 400 },
    );
    expect(checked).toBeGreaterThan(100);
  });

  it("falls where it is told on a layer turned sideways too: left edge first off the bolt, top at the right selvedge", () => {
    let checked = 0;
    fc.assert(
      fc.property(anyShade, (shade) => {
        const straight = { ...shade.cloth, match: "straight" as const };
        const sideways = { ...shade.pattern, railroad: "always" as const };
        const { face } = planned({ ...shade, cloth: straight, pattern: sideways });
        const { motif } = face;
        const [lay] = face.lays;
        fc.pre(face.turned && motif?.acrossKnown === true && lay !== undefined);
        fc.pre(!(motif === undefined || lay === undefined));
        const z = 1 - shade.shrink;
        const fromLeft = face.edges.leftMm + motif.originXMm / z;
        const fromTop = face.edges.topMm + motif.originYMm / z;
        const repeat = shade.cloth.acrossMm ?? Number.NaN;
        const first = shade.cloth.startXMm ?? (shade.cloth.usableMm % repeat) / 2;
        const off = (value: number, step: number) => Math.abs(value - Math.round(value / step) * step);
        expect(off(lay.yMm + fromLeft, shade.cloth.alongMm)).toBeLessThan(0.5);
        const across = off(lay.xMm + lay.widthMm - fromTop - first, repeat);
        if (across > 0.5) {
          // No room to move it there: it lies in the middle of the cloth.
          expect(Math.abs(lay.xMm - (shade.cloth.usableMm - lay.widthMm) / 2)).toBeLessThan(0.5);
        } else checked += 1;
      }),
      { numRuns: 400 },
    );
    expect(checked).toBeGreaterThan(10);
  });

  it("is centred as asked, or the miss is told", () => {
    fc.assert(
      fc.property(anyShade, (shade) => {
        const { face, findings } = planned(shade);
        const { motif } = face;
        fc.pre(isSane(face) && motif?.acrossKnown === true && shade.pattern.across !== "offset");
        fc.pre(motif !== undefined);
        const wanted = shade.pattern.across === "centre-motif" ? 0.5 : 0;
        const steps = (shade.widthMm / 2 - motif.originXMm) / motif.repeatXMm - wanted;
        const missMm = Math.abs(steps - Math.round(steps)) * motif.repeatXMm;
        const isSaid = findings.some((finding) => finding.id === "cloth.motif-off-place");
        expect(missMm > 0.6).toBe(isSaid && missMm > 0.6);
      }),
      { numRuns: 200 },
    );
  });
});

describe("motif placed by the maker", () => {
  const vine = {
    id: "vine",
    name: "Vine",
    usableWidthMm: 1370,
    massGsm: 200,
    repeat: { verticalMm: 640, horizontalMm: 342.5, match: "straight" as const },
  };
  const at = (pattern: NonNullable<NonNullable<ShadeInput["making"]>["pattern"]>) =>
    clothOf({
      widthMm: 900,
      lengthMm: 1500,
      shade: { face: "vine", lining: null, making: { pattern, hems: { boardAllowanceMm: 60 } } },
      cloths: [vine],
    }).face;

  it("begins at the top line: 60 mm of cloth above it leave 580 of the 640 before the first cut", () => {
    const face = at({ place: "top" });
    expectNear(face.startWasteMm, 580, 1e-9);
    expectNear(face.motif?.originYMm ?? 0, 0, 1e-9);
    expectNear(face.lays[0]?.yMm ?? 0, 580, 1e-9);
  });
  it("from the top line down as fixed", () => {
    expectNear(at({ place: "free", offsetMm: 100 }).motif?.originYMm ?? 0, 100, 1e-9);
    expectNear(at({ place: "free", offsetMm: 100 }).startWasteMm, 480, 1e-9);
  });
  it("stands on the hem: 1500 = 2 × 640 + 220", () => {
    expectNear(at({ place: "hem" }).motif?.originYMm ?? 0, 220, 1e-9);
  });
  it("is centred: 750 − 320 = 430", () => {
    expectNear(at({ place: "centre" }).motif?.originYMm ?? 0, 430, 1e-9);
  });
  it("is bought from the beginning of a repeat to the end of the last piece", () => {
    const face = at({ place: "top" });
    expect(face.lengthMm).toBeGreaterThanOrEqual(580 + face.cutLengthMm - 1e-6);
  });
});

describe("published lengths, through the whole plan of a layer", () => {
  const curtain = (widthMm: number, lengthMm: number, verticalMm: number, match: "straight" | "half-drop") =>
    clothOf({
      widthMm,
      lengthMm,
      columnsMm: [50, widthMm - 50],
      shade: {
        face: "mine",
        lining: null,
        making: {
          hems: { sideTurnMm: 0, bottomTurnMm: 0, boardAllowanceMm: 0, seamMm: 0, joins: "equal-parts" },
          pattern: { place: "top", railroad: "never" },
        },
      },
      cloths: [
        { id: "mine", name: "Mine", usableWidthMm: 1400, massGsm: 200, repeat: { verticalMm, match } },
      ],
    }).face;

  it("“Fabric required”: 440 cm of 140 cm cloth, 240 cm cut, 37 cm repeat: 4 × 259 cm = 10.36 m (curtain)", () => {
    const face = curtain(4400, 2400, 370, "straight");
    expect(face.widths).toBe(4);
    expectNear(face.repeatLengthMm, 2590, 1e-6);
    expectNear(face.lengthMm, 10_360, 1e-6);
  });
  it("“Half drop repeat”: 3 widths of 195 cm, 65 cm repeat: 6.5 m (curtain)", () => {
    const face = curtain(4200, 1950, 650, "half-drop");
    expect(face.widths).toBe(3);
    expectNear(face.lengthMm, 6500, 1e-6);
    // It lies in less than that: from the first cut to the end of the last piece, half a repeat for the drop.
    expect(Math.max(...face.lays.map((lay) => lay.yMm + lay.lengthMm))).toBeLessThanOrEqual(6500);
  });
});

describe("centring", () => {
  it("says what a centred motif costs where four repeats make the width, and its remedy saves just that", () => {
    // 4 × 335 = 1340 of 1380 mm: a gap lies in the middle of the cloth, a motif 167.5 mm beside it.
    const planWith = (across?: "centre-motif" | "between-motifs") =>
      clothOf({
        widthMm: 1800,
        lengthMm: 1500,
        shade: { face: "trellis", lining: null, making: { pattern: { across } } },
        cloths: [
          {
            id: "trellis",
            name: "Trellis",
            usableWidthMm: 1380,
            massGsm: 200,
            repeat: { verticalMm: 320, horizontalMm: 335, match: "straight" },
          },
        ],
      });
    const [dear, cheap] = [planWith("centre-motif"), planWith("between-motifs")];
    const finding = dear.findings.find(({ id }) => id === "cloth.motif-costs");
    expect([dear.face.widths, cheap.face.widths]).toEqual([3, 2]);
    expect(finding?.remedies[0]?.patch).toEqual([
      {
        op: "add",
        path: "/rooms/0/windows/0/shade/making/pattern/across",
        value: "between-motifs",
      },
    ]);
    expect(cheap.findings.map(({ id }) => id)).not.toContain("cloth.motif-costs");
    // Left to the planner, the gap comes in the middle, and it says why.
    const free = planWith();
    expect(free.face.widths).toBe(2);
    expect(free.findings.map(({ id }) => id)).toContain("cloth.gap-centred");
  });
});

describe("joins under columns", () => {
  const plain = { id: "plain", name: "Plain", usableWidthMm: 1400, massGsm: 200 };
  const joined = (columnsMm: number[], joins?: "equal-parts" | "under-columns") =>
    clothOf({
      widthMm: 2000,
      lengthMm: 1500,
      columnsMm,
      shade: {
        face: "plain",
        lining: null,
        making: { hems: { joins, sideTurnMm: 25, sideTurns: 1, seamMm: 10 }, pattern: { railroad: "never" } },
      },
      cloths: [plain],
    });

  it("lie under the columns where that takes no more cloth", () => {
    const { face } = joined([50, 525, 1000, 1475, 1950]);
    expect(face.joinsAt).toBe("under-columns");
    expect(face.seamsMm.map(Math.round)).toEqual([525, 1475]);
    expect(face.widths).toBe(2);
  });
  it("are equal parts where the columns would take one width more, and a remedy offers them", () => {
    // Columns near the middle leave sides of 2 × 700 and more: no longer two of them off one width.
    const { face, findings } = joined([50, 800, 1000, 1200, 1950]);
    expect(face.joinsAt).toBe("equal-parts");
    const finding = findings.find((one) => one.id === "cloth.joins");
    expect(finding?.text).toContain("1 width more");
    expect(joined([50, 800, 1000, 1200, 1950], "under-columns").face.joinsAt).toBe("under-columns");
  });
  it("lie under the pleats of a style where it says that they hide them", () => {
    // 2000 mm finished and 600 mm in two pleats: the flat face is 2600 mm, its pleats at 500 and 2100 mm.
    const { face } = clothOf({
      widthMm: 2000,
      lengthMm: 1500,
      shade: {
        face: "plain",
        lining: null,
        making: { hems: { sideTurnMm: 25, sideTurns: 1, seamMm: 10 }, pattern: { railroad: "never" } },
      },
      cloths: [{ ...plain, usableWidthMm: 1700 }],
      form: {
        allowances: [{ label: "pleats", widthMm: 600, lengthMm: 0 }],
        joinsAtMm: [500, 2100],
      },
    });
    expect(face.joinsAt).toBe("under-columns");
    expect(face.seamsMm.map(Math.round)).toEqual([500, 2100]);
  });
  it("never lie in the centre", () => {
    fc.assert(
      fc.property(anyShade, (shade) => {
        const { face } = planned(shade);
        fc.pre(isSane(face));
        const off = face.seamsMm.map((x) => Math.abs(x - shade.widthMm / 2));
        return face.panels.length % 2 === 1 && off.every((one) => one > 1);
      }),
      { numRuns: 200 },
    );
  });
});
