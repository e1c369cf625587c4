import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Dimension,
  type Drawing,
  drawMarkingStrips,
  drawSheet,
  type Point,
  type Polyline,
  place,
} from "../../src/drawing/index.ts";
import { type Plan, plan, type ShadePlan } from "../../src/plan/index.ts";
import { LINE_SHEETS } from "../../src/shade-plan/index.ts";
import { markMm, parseLength } from "../../src/units/index.ts";
import { anyJob } from "../arbitrary-job.ts";
import { CASES } from "../gallery/windows.ts";
import { numbersOf } from "../lengths-in-text.ts";

const RAISES = [0, 0.31, 0.5, 1];

function allSheets(planned: Pick<Plan, "units">, shade: ShadePlan): Drawing[] {
  return [
    drawSheet("picture", planned, shade, { raise: 0.5 }),
    ...LINE_SHEETS.flatMap((kind) => RAISES.map((raise) => drawSheet(kind, planned, shade, { raise }))),
    ...drawMarkingStrips(planned, shade),
  ];
}

const cases = Object.entries(CASES).map(([name, make]) => ({ name, ...make() }));

const dimensionsOf = ({ primitives }: Drawing) =>
  primitives.filter((primitive): primitive is Dimension => primitive.kind === "dimension");

/** Every dimension reads as the distance that it spans, to half a mark of the ruler. */
function expectTrueDimensions(drawing: Drawing, { units }: Pick<Plan, "units">): void {
  for (const { from, to, text } of dimensionsOf(drawing)) {
    const read = parseLength(text, "mm");
    expect(read.ok, `${drawing.id}: ${text}`).toBe(true);
    if (!read.ok) continue;
    const spanned = Math.sqrt((to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2);
    expect(Math.abs(read.lengthMm - spanned), `${drawing.id}: ${text}`).toBeLessThanOrEqual(
      markMm(units.ruler) / 2 + 1e-6,
    );
  }
}

describe.each(cases)("$name", ({ plan: planned, shade }) => {
  test("every dimension of every sheet equals the distance it spans", () => {
    const drawings = allSheets(planned, shade);
    expect(drawings.flatMap(dimensionsOf).length).toBeGreaterThan(60);
    for (const drawing of drawings) expectTrueDimensions(drawing, planned);
  });

  test("every sheet says in words what it shows", () => {
    for (const { title, caption, facts } of allSheets(planned, shade)) {
      expect(title).not.toBe("");
      expect(caption).toMatch(/\.$/);
      expect(facts.length).toBeGreaterThan(0);
      for (const fact of facts) {
        expect(fact.label).not.toBe("");
        expect(fact.text).not.toBe("");
      }
    }
  });

  test("figures that can be pressed are in the plan", () => {
    const known = new Set(shade.workings.map((working) => working.id));
    const pressed = allSheets(planned, shade).flatMap(({ primitives }) =>
      primitives.flatMap(({ figure }) => (figure === undefined ? [] : [figure])),
    );
    expect(pressed.length).toBeGreaterThan(10);
    for (const figure of pressed) expect(known).toContain(figure);
  });

  test("back, board and lock: no two cords cross, counted on what is drawn", () => {
    for (const kind of ["back", "board", "lock"] as const) {
      const drawn = cordLines(drawSheet(kind, planned, shade));
      // Under the view of a lock from below stands its section, with the nearest cord of each end once more.
      const { lift } = shade;
      const cords =
        kind === "lock" && lift.kind === "cord-lock"
          ? drawn.filter((points) => points.every(([, y]) => Math.abs(y) <= lift.housingWidthMm))
          : drawn;
      // Under a tube the enlarged sheet shows the spools beside the drive, and their cords only.
      const all = kind !== "lock" || shade.lift.takeUp !== "tube";
      if (all) expect(cords.length).toBe(shade.lift.cords.length);
      else expect(cords.length).toBeGreaterThan(0);
      expect(crossings(cords), kind).toBe(0);
    }
  });

  test("marking: a ring at every row and column, on the line of its row", () => {
    const { grid, size } = shade;
    const rings = drawSheet("marking", planned, shade).primitives.flatMap((primitive) =>
      primitive.kind === "marker" && primitive.role === "ring" ? [primitive.at] : [],
    );
    expect(rings.length).toBe(grid.rows.length * grid.columns.length);
    for (const row of grid.rows)
      for (const column of grid.columns)
        expect(rings).toContainEqual([
          size.finishedWidthMm - column.xMm,
          size.finishedLengthMm - row.fromHemMm,
        ]);
  });

  test("cutting: every panel lies on its bolt and none on another", () => {
    const areas = drawSheet("cutting", planned, shade).primitives.filter(
      (primitive): primitive is Polyline => primitive.kind === "polyline" && primitive.role === "cut",
    );
    const { layers, trimBolts } = shade.cloth;
    expect(areas.length).toBe([...layers, ...trimBolts].reduce((sum, { lays }) => sum + lays.length, 0));
    const boxes = areas.map(boxOf);
    boxes.forEach((box, i) => {
      for (const other of boxes.slice(i + 1)) expect(isApart(box, other)).toBe(true);
    });
  });
});

const boxOf = ({ points }: Polyline) => {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
};

function isApart(a: ReturnType<typeof boxOf>, b: ReturnType<typeof boxOf>): boolean {
  const near = 1e-6;
  return (
    a.right <= b.left + near ||
    b.right <= a.left + near ||
    a.bottom <= b.top + near ||
    b.bottom <= a.top + near
  );
}

const cordLines = ({ primitives }: Drawing): (readonly Point[])[] =>
  primitives.flatMap((primitive) =>
    primitive.kind === "polyline" && primitive.role === "cord" && primitive.cord !== undefined
      ? [primitive.points]
      : [],
  );

/** Proper crossings of all pairs of lines, by orientation of their segments' ends. */
function crossings(lines: (readonly Point[])[]): number {
  const turn = (p: Point, q: Point, r: Point) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  const segments = lines.flatMap((points, line) =>
    points.slice(1).flatMap((to, i) => {
      const from = points[i];
      return from === undefined ? [] : [{ line, from, to }];
    }),
  );
  let count = 0;
  segments.forEach((a, i) => {
    for (const b of segments.slice(i + 1)) {
      if (a.line === b.line) continue;
      const across = turn(a.from, a.to, b.from) * turn(a.from, a.to, b.to) < -1e-6;
      const back = turn(b.from, b.to, a.from) * turn(b.from, b.to, a.to) < -1e-6;
      if (across && back) count += 1;
    }
  });
  return count;
}

describe("left and right control side", () => {
  const right = CASES.outside();
  const left = CASES.leftHanded();

  /** Geometry that belongs to one part, as a sorted list of points; mirrored about the middle where asked. */
  function pointsOf(drawing: Drawing, roles: string[], mirror: (x: number) => number): string[] {
    return drawing.primitives
      .flatMap((primitive): Point[] => {
        if (!roles.includes(primitive.role)) return [];
        if (primitive.kind === "polyline") return [...primitive.points];
        if (primitive.kind === "marker") return [primitive.at];
        return [];
      })
      .map(([x, y]) => `${(Math.round(mirror(x) * 1000) / 1000 + 0).toFixed(2)} ${y.toFixed(2)}`)
      .sort();
  }

  test.each(["front", "back", "board"] as const)("%s: the rig is the exact mirror", (kind) => {
    const width = right.shade.size.finishedWidthMm;
    const roles = ["housing", "cord", "eye", "board", "hidden"];
    const ours = pointsOf(drawSheet(kind, right.plan, right.shade), roles, (x) => x);
    const mirrored = pointsOf(drawSheet(kind, left.plan, left.shade), roles, (x) => width - x);
    expect(ours.length).toBeGreaterThan(1);
    expect(mirrored).toEqual(ours);
  });

  test.each(["front", "back", "board"] as const)("%s of a tube with a loop: the exact mirror", (kind) => {
    const [one, other] = [CASES.loop(), CASES.loopLeft()];
    const width = one.shade.size.finishedWidthMm;
    const roles = ["tube", "spool", "tubeSupport", "drive", "loop", "hidden", "bracket"];
    const ours = pointsOf(drawSheet(kind, one.plan, one.shade), roles, (x) => x);
    const mirrored = pointsOf(drawSheet(kind, other.plan, other.shade), roles, (x) => width - x);
    expect(ours.length).toBeGreaterThan(10);
    expect(mirrored).toEqual(ours);
  });

  test("lock: housing, rollers, wires and cords are the exact mirror, the toothed roller outside on both", () => {
    const roles = ["housing", "roller", "toothedRoller", "dividerWire", "cord"];
    const ours = pointsOf(drawSheet("lock", right.plan, right.shade), roles, (x) => x);
    const mirrored = pointsOf(drawSheet("lock", left.plan, left.shade), roles, (x) => -x);
    expect(mirrored).toEqual(ours);
    const toothed = (drawing: Drawing) =>
      drawing.primitives.flatMap((primitive) =>
        primitive.kind === "polyline" && primitive.role === "toothedRoller"
          ? primitive.points.filter(([, y]) => Math.abs(y) < 40).map(([x]) => x)
          : [],
      );
    expect(Math.min(...toothed(drawSheet("lock", right.plan, right.shade)))).toBeGreaterThan(0);
    expect(Math.max(...toothed(drawSheet("lock", left.plan, left.shade)))).toBeLessThan(0);
  });
});

test("the side section keeps the length of the cloth at every height", () => {
  const { plan: planned, shade } = CASES.outside();
  for (const raise of [0, 0.1, 0.37, 0.5, 0.8, 1]) {
    const face = drawSheet("side", planned, shade, { raise }).primitives.find(
      (primitive): primitive is Polyline => primitive.kind === "polyline" && primitive.part === "face",
    );
    const points = face?.points ?? [];
    const length = points
      .slice(1)
      .reduce((sum, [x, y], i) => sum + Math.hypot(x - (points[i]?.[0] ?? 0), y - (points[i]?.[1] ?? 0)), 0);
    const expected = shade.size.finishedLengthMm + shade.board.depthMm;
    expect(Math.abs(length - expected)).toBeLessThan(0.05);
  }
});

test("a raised shade is drawn large from the side where the window under it is left out", () => {
  const bounds = { maxWidthMm: 80, maxHeightMm: 80 };
  for (const { name, plan: planned, shade } of cases) {
    if (shade.grid.raisedHeightMm > shade.size.finishedLengthMm / 3) continue;
    const [whole, near] = [false, true].map((near) => drawSheet("side", planned, shade, { raise: 1, near }));
    if (whole === undefined || near === undefined) throw new Error("not drawn");
    expect(
      near.primitives.filter(({ part }) => part === "face"),
      name,
    ).toEqual(whole.primitives.filter(({ part }) => part === "face"));
    const raisedPaperMm = shade.grid.raisedHeightMm * place(near, bounds).scale;
    // A quarter of its place: the rest are the room above and under it, and its measures.
    expect(raisedPaperMm, name).toBeGreaterThan(0.25 * bounds.maxHeightMm);
  }
});

test("front, back and side agree on where the hem is", () => {
  const { plan: planned, shade } = CASES.ribbed();
  for (const raise of RAISES) {
    const hems = (["front", "back", "side"] as const).map((kind) =>
      drawSheet(kind, planned, shade, { raise }).facts.find((fact) => fact.label === "Top line to hem now"),
    );
    expect(hems[0]?.text).toBe(hems[2]?.text);
    const lowered =
      raise === 0 ? shade.size.finishedLengthMm : raise === 1 ? shade.grid.raisedHeightMm : undefined;
    const read = parseLength(hems[0]?.text ?? "", "mm");
    if (lowered !== undefined && read.ok) expect(Math.abs(read.lengthMm - lowered)).toBeLessThanOrEqual(0.51);
  }
});

describe("any valid job, however impossible its shades", () => {
  test("every sheet is drawn and placed without a throw, a NaN or a false dimension", () => {
    fc.assert(
      fc.property(anyJob, fc.double({ min: 0, max: 1, noNaN: true }), (job, raise) => {
        const planned = plan(job);
        for (const shade of planned.shades.slice(0, 2))
          for (const kind of LINE_SHEETS) {
            const drawing = drawSheet(kind, planned, shade, { raise });
            expectTrueDimensions(drawing, planned);
            const placed = place(drawing, { maxWidthMm: 150, maxHeightMm: 190 });
            expect(numbersOf(placed).every(Number.isFinite), `${kind} of ${shade.shadeId}`).toBe(true);
          }
      }),
      { seed: 20260135, numRuns: 60, endOnFailure: true },
    );
  });

  test("every picture is drawn without a throw or a NaN", () => {
    fc.assert(
      fc.property(anyJob, fc.double({ min: 0, max: 1, noNaN: true }), (job, raise) => {
        const planned = plan(job);
        for (const shade of planned.shades.slice(0, 1)) {
          const placed = place(drawSheet("picture", planned, shade, { raise }), {
            maxWidthMm: 150,
            maxHeightMm: 190,
          });
          expect(numbersOf(placed).every(Number.isFinite), shade.shadeId).toBe(true);
        }
      }),
      { seed: 20260136, numRuns: 12, endOnFailure: true },
    );
  }, 300_000);
});
