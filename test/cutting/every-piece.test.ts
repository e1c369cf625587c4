import { describe, expect, test } from "vitest";
import { drawSheet } from "../../src/drawing/index.ts";
import { type Making, STYLES } from "../../src/job/index.ts";
import { boltsCut, plan, planCutting } from "../../src/plan/index.ts";
import { allLists } from "../../src/tables/index.ts";
import { jobWith } from "../job-with.ts";

/** What adds pieces beside the panels: frills on all edges, separate inserts, bands of another cloth, sleeves over rear cords. */
const MAKINGS: Record<string, Making> = {
  "as usual": {},
  "with frills": {
    gather: { frillMm: 60, frillEdges: "sides-and-hem", frillDouble: true, widthFullness: 2 },
  },
  "with inserts": { pleat: { cut: "inserts", held: "pressed" } },
  "with bands": { banding: { where: "sides-and-bottom", widthMm: 50 } },
  "with sleeves": { lift: { kind: "tube-loop", rearCords: "enclosed" } },
};
const KINDS = /frill|insert|band|sleeve/gi;

const CASES = STYLES.flatMap((style) => Object.keys(MAKINGS).map((name) => [style, name] as const));

const seen = new Set<string>();

/** Sides of a piece as the list gives them, the shorter first: on the bolt it may lie either way. */
const sides = (widthMm: number, lengthMm: number) =>
  [widthMm, lengthMm].sort((a, b) => a - b).map((mm) => Math.round(mm * 1000) / 1000);

describe.each(CASES)("%s %s", (style, name) => {
  test("every piece of cloth on the cut list lies on a bolt, once, at its size", () => {
    const job = jobWith(
      {
        opening: { widthsMm: [1450], heightsMm: [1600] },
        shade: {
          style,
          making: MAKINGS[name] ?? {},
          ...(name === "with bands" ? { banding: "stripe" } : {}),
        },
      },
      { cloths: [{ id: "stripe", name: "Stripe", usableWidthMm: 1400, massGsm: 300 }] },
    );
    const planned = plan(job);
    const cutting = planCutting(job, planned, 0);
    const clothNames = new Set(cutting.cloths.map(({ clothName }) => clothName));
    const list = allLists(planned).find((one) => one.name === "cut-list");
    const at = (heading: string) => list?.header.indexOf(heading) ?? -1;
    const listed = (list?.rows ?? []).flatMap((row) => {
      const [piece, material] = [String(row[at("piece")]), String(row[at("material")])];
      if (!clothNames.has(material)) return [];
      for (const [kind] of piece.matchAll(KINDS)) seen.add(kind.toLowerCase());
      const size = sides(Number(row[at("widthMm")]), Number(row[at("lengthMm")])).join(" × ");
      return Array.from({ length: Number(row[at("count")]) }, () => `${material}: ${size}`);
    });
    const lying = boltsCut(cutting).flatMap(({ cloth, bolt }) => {
      const pieces = new Map(cloth.problem.pieces.map((piece) => [piece.id, piece]));
      return bolt.placements.map(({ pieceId }) => {
        const { widthMm = 0, lengthMm = 0 } = pieces.get(pieceId) ?? {};
        return `${cloth.clothName}: ${sides(widthMm, lengthMm).join(" × ")}`;
      });
    });
    expect(listed.length).toBeGreaterThan(0);
    expect(lying.sort()).toEqual(listed.sort());
    // Cloth of every layer and trim is among them: no cloth that the shade is made of is left out.
    for (const shade of planned.shades)
      for (const { clothName } of [...shade.cloth.layers, ...shade.cloth.trims])
        expect(clothNames).toContain(clothName);
  });
});

/**
 * “Inverted pleat curtains” and its tutorial: a shade of 150 × 220 cm with separate inserts, its centre cut 83 cm wide, the
 * sides 38, two inserts of 42.
 */
test("the published face with separate inserts lies on the bolt in its five pieces", () => {
  const job = jobWith(
    {
      opening: { widthsMm: [1500], heightsMm: [2200] },
      shade: {
        style: "tailed",
        mount: "to-size",
        lining: null,
        making: {
          pleat: { insetMm: 350, foldedMm: 390, cut: "inserts" },
          hems: { seamMm: 15, sideTurnMm: 15, sideTurns: 1 },
        },
      },
    },
    { units: { system: "metric", ruler: "1 mm" } },
  );
  const planned = plan(job);
  const cutting = planCutting(job, planned, 0);
  const face = cutting.cloths.flatMap(({ problem }) => problem.pieces.filter(({ lotGroup }) => lotGroup));
  expect(face.map(({ part, widthMm }) => [part, Math.round(widthMm * 1000) / 1000])).toEqual([
    ["Left side piece", 380],
    ["Insert 1 of 2", 420],
    ["Piece between the pleats", 830],
    ["Insert 2 of 2", 420],
    ["Right side piece", 380],
  ]);
  expect(boltsCut(cutting).flatMap(({ bolt }) => bolt.placements).length).toBeGreaterThanOrEqual(5);
  // The shade's own page says and draws the same: 830 and 420 mm out of one width, 420 and twice 380 mm out of another.
  const [shade] = planned.shades;
  if (shade === undefined) throw new Error("no shade");
  const [cut] = shade.cloth.layers;
  expect([cut?.widths, cut?.lengthMm]).toEqual([2, 2 * (cut?.cutLengthMm ?? 0)]);
  const texts = new Map(shade.steps.map(({ id, text }) => [id, text.replaceAll("\u00a0", " ")]));
  expect(texts.get("cut-face")).toMatch(
    /^Cut 5 pieces, .*: 380 mm wide, left side piece and right side piece; 420 mm wide, insert 1 of 2 and insert 2 of 2; 830 mm wide, piece between the pleats\./,
  );
  expect(texts.get("make-inserts")).toContain(
    "left side piece, insert 1 of 2, piece between the pleats, insert 2 of 2 and right side piece",
  );
  const { primitives, facts } = drawSheet("cutting", planned, shade);
  const drawn = primitives.flatMap((one) => {
    if (one.kind !== "polyline" || one.role !== "cut") return [];
    const ys = one.points.map(([, y]) => y);
    return [Math.round(Math.max(...ys) - Math.min(...ys))];
  });
  expect(drawn.sort((a, b) => a - b).slice(-5)).toEqual([380, 380, 420, 420, 830]);
  expect(facts.map(({ label }) => label)).toContain("Insert 2 of 2");
});

test("the cases have frills, inserts, bands and sleeves among them", () => {
  expect([...seen].sort()).toEqual(["band", "frill", "insert", "sleeve"]);
});
