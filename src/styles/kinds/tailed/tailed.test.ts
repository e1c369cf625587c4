import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../../test/job-with.ts";
import { figureValue, laidShade } from "../../../../test/laid-shade.ts";
import { expectNear } from "../../../../test/near.ts";
import type { Making } from "../../../job/index.ts";
import { flatSize } from "../../../shade-plan/index.ts";
import { centimetres, inches } from "../../../units/index.ts";
import { insertPieces } from "../../draping/insert-pieces.ts";
import { tailLengthMm } from "./judge-tailed.ts";

function asked(widthMm: number, heightMm: number, making: Making) {
  return laidShade(
    resolvedWith({
      opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
      shade: { style: "tailed", mount: "to-size", making },
    }),
  );
}

/**
 * “Inverted pleat curtains” and its tutorial: a shade of 150 × 220 cm with a centre of 80 cm. The centre is cut
 * 83 cm wide, the sides finish at 35 and are cut 38, two inserts of 42; all of them 223 cm long.
 */
describe("the published shade with separate inserts", () => {
  const shade = asked(centimetres(150), centimetres(220), {
    pleat: { insetMm: centimetres(35), foldedMm: centimetres(39), cut: "inserts" },
    hems: { seamMm: centimetres(1.5), sideTurnMm: centimetres(1.5), sideTurns: 1 },
  });

  test("finishes 35, 80 and 35 cm, and is cut 38, 83 and 42 cm", () => {
    const { sides, between, pleats } = insertPieces(shade.resolved.making, shade.size, shade.form);
    const [first, last] = shade.form.pleats;
    expectNear((last?.xMm ?? 0) - (first?.xMm ?? 0), centimetres(80), 0.01, "centre");
    for (const side of sides) expectNear(side, centimetres(38), 0.01, "side");
    for (const centre of between) expectNear(centre, centimetres(83), 0.01, "centre, cut");
    for (const insert of pleats) expectNear(insert, centimetres(42), 0.01, "insert, cut");
    expectNear(figureValue(shade, "shape.side-cut"), centimetres(38), 0.01, "figure of the side");
    expectNear(figureValue(shade, "shape.centre-cut"), centimetres(83), 0.01, "figure of the centre");
    expectNear(figureValue(shade, "shape.insert-cut"), centimetres(42), 0.01, "figure of the insert");
  });

  test("the pieces together are as wide as what is added to the finished width, and no cloth is lost", () => {
    const { sides, between, pleats } = insertPieces(shade.resolved.making, shade.size, shade.form);
    const cut = [...sides, ...between, ...pleats].reduce((sum, mm) => sum + mm, 0);
    const added = shade.form.allowances.reduce((sum, { widthMm }) => sum + widthMm, 0);
    expectNear(cut, centimetres(150) + added + 2 * centimetres(1.5), 0.01, "all pieces");
    expectNear(cut, centimetres(2 * 38 + 83 + 2 * 42), 0.01, "all pieces as published");
    // Seams are gone once the pieces are joined.
    expectNear(flatSize(shade.size, shade.form, "face").widthMm, centimetres(150 + 2 * 39), 0.01, "flat");
  });
});

describe("pleats in one with the panel", () => {
  /** “Making a London blind”: pleats marked at 6, 12 and 18 in from each edge, the tape on 12. */
  test("a pleat 6 in from the edge is marked at 6, 12 and 18 in, on either side", () => {
    const { form, size } = asked(inches(40), inches(60), {
      pleat: { insetMm: inches(6), foldedMm: inches(12) },
    });
    const [left, right] = form.pleats;
    const flat = flatSize(size, form, "face").widthMm;
    [6, 12, 18].forEach((at, i) => {
      expectNear(left?.flatMm[i] ?? 0, inches(at), 0.01, "from the left");
      expectNear(flat - (right?.flatMm[2 - i] ?? 0), inches(at), 0.01, "from the right");
    });
    expectNear(form.joinsAtMm[0] ?? 0, inches(12), 0.01, "join at the back of the pleat");
  });

  /** UK tutorial on tailed shades: 12 in (30 cm) for each pleat, two of them. */
  test("two pleats take 24 in of width and nothing of the length", () => {
    const { form, size } = asked(inches(40), inches(60), {});
    const flat = flatSize(size, form, "face");
    expectNear(flat.widthMm - size.finishedWidthMm, inches(24), 0.01, "width");
    expectNear(flat.lengthMm, size.finishedLengthMm, 0.01, "length");
  });

  /** The same: first loop 2 in up. Even rows above it end at the headrail line. */
  test("the first ring is 2 in up, and the rows end where the headrail allowance begins", () => {
    const { grid } = asked(inches(40), inches(60), {});
    expectNear(grid.rows[0]?.fromHemMm ?? 0, inches(2), 0.01, "first row");
    const spacing = grid.spacingsMm[0] ?? 0;
    expectNear((grid.rows.at(-1)?.yMm ?? 0) - spacing, grid.headrailMm, 0.01, "top fold");
  });

  test("a bar lies between the pleats alone, and on request not at all", () => {
    const { form, grid } = asked(inches(40), inches(60), {});
    const [left, right] = grid.columns;
    expect(form.bar?.fromMm).toBeGreaterThanOrEqual(left?.xMm ?? 0);
    expect(form.bar?.toMm).toBeLessThanOrEqual(right?.xMm ?? 0);
    expect(asked(inches(40), inches(60), { pleat: { bar: "none" } }).form.bar).toBeUndefined();
  });
});

/** Tutorials say that a tail is about as long as its pleat is from the edge. A quarter more or less is “about”. */
describe("tails", () => {
  test.each([
    ["12 in, 12 in pleats", inches(12), inches(12)],
    ["18 in, 12 in pleats", inches(18), inches(12)],
    ["35 cm, 39 cm pleats", centimetres(35), centimetres(39)],
  ])("%s: about as long as that", (_, insetMm, foldedMm) => {
    const { grid, form } = asked(1600, 2200, { pleat: { insetMm, foldedMm, held: "pressed" } });
    expectNear(tailLengthMm(grid, form), insetMm, insetMm / 4, "tail");
  });

  test("hang no lower than the cloth beside the column is long, and lower with more cloth in the pleat", () => {
    const tail = (foldedMm: number) => {
      const { grid, form } = asked(1600, 2200, { pleat: { insetMm: 300, foldedMm, held: "pressed" } });
      return tailLengthMm(grid, form);
    };
    expect(tail(300)).toBeLessThan(300 + 150);
    expect(tail(500)).toBeGreaterThan(tail(300));
  });
});

describe("findings", () => {
  const ids = (making: Making, widthMm = 1000, heightMm = 1600) =>
    asked(widthMm, heightMm, making).findings.map(({ id }) => id);

  test("a centre wider than about 40 in asks for a line in the middle, and has it then", () => {
    const below = { pleat: { insetMm: 300 } };
    expect(ids(below, 600 + inches(40) - 1)).not.toContain("shape.tailed-centre-droops");
    expect(ids(below, 600 + inches(40) + 1)).toContain("shape.tailed-centre-droops");
    const cured = asked(1800, 1600, { pleat: { insetMm: 300, centreLine: true } });
    expect(cured.findings.map(({ id }) => id)).not.toContain("shape.tailed-centre-droops");
    expect(cured.grid.columns.map(({ xMm }) => xMm)).toEqual([300, 900, 1500]);
  });

  test("pleats wider than the cloth beside them, at and above the limit", () => {
    expect(ids({ pleat: { insetMm: 200, foldedMm: 400 } })).not.toContain("shape.pleats-too-wide");
    expect(ids({ pleat: { insetMm: 200, foldedMm: 410 } })).toContain("shape.pleats-too-wide");
    expect(ids({ pleat: { insetMm: 400, foldedMm: 210 } })).toContain("shape.pleats-too-wide");
  });

  test("tails longer than the shade rises", () => {
    expect(ids({ pleat: { insetMm: 400, held: "pressed" } }, 1200, 500)).toContain(
      "shape.tails-longer-than-shade",
    );
    expect(ids({ pleat: { insetMm: 400, held: "pressed" } }, 1200, 1500)).not.toContain(
      "shape.tails-longer-than-shade",
    );
  });
});
