import { expect, test } from "vitest";
import { drawSheet, place, svgNodes } from "../../src/drawing/index.ts";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

const cloth = {
  id: "vine",
  name: "Vine",
  usableWidthMm: 1400,
  massGsm: 250,
  repeat: { verticalMm: 320, horizontalMm: 350, match: "straight" as const },
};
const planned = plan(
  jobWith({ opening: { widthsMm: [1000], heightsMm: [1500] }, shade: { face: "vine" } }, { cloths: [cloth] }),
);
const [shade] = planned.shades;
if (shade === undefined) throw new Error("invalid test job: no shade");
const motif = shade.cloth.layers[0]?.motif;
if (motif === undefined) throw new Error("invalid test job: no motif");
const marked = { leftShare: 0.25, topShare: 0.5, widthShare: 0.5, heightShare: 0.25 };

function patternsAt(raise: number) {
  const placed = place(drawSheet("front", planned, shade as NonNullable<typeof shade>, { raise }), {
    scale: 0.1,
  });
  const svg = svgNodes(placed, undefined, {
    href: "data:,",
    ...marked,
    motif: motif as NonNullable<typeof motif>,
  });
  const [defs] = svg.children ?? [];
  return { placed, patterns: defs?.children ?? [] };
}

test("a tile is one repeat at the scale of the drawing, and begins where the pattern does", () => {
  const { placed, patterns } = patternsAt(0);
  const [tile] = patterns;
  expectNear(Number(tile?.attrs.width), 35, 0.01);
  expectNear(Number(tile?.attrs.height), 32, 0.01);
  const fromOrigin = Number(tile?.attrs.x) - placed.originMm[0];
  expectNear(fromOrigin, motif.originXMm * 0.1, 0.01);
});

test("the repeat that is marked fills the tile: the picture is larger by its share, and moved by where it begins", () => {
  const { patterns } = patternsAt(0);
  const image = patterns[0]?.children?.[0]?.children?.[0]?.attrs;
  expectNear(Number(image?.width), 35 / 0.5, 0.01);
  expectNear(Number(image?.height), 32 / 0.25, 0.01);
  expectNear(Number(image?.x), -0.25 * 70, 0.02);
  expectNear(Number(image?.y), -0.5 * 128, 0.02);
});

test("lowered the pattern runs through unbroken; raised, each fold takes its own with it", () => {
  const lowered = patternsAt(0).patterns.map(({ attrs }) => attrs.id);
  expect(lowered).toEqual(["cloth-0"]);
  expect(patternsAt(1).patterns.length).toBeGreaterThan(2);
});
