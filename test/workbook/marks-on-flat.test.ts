import { expect, test } from "vitest";
import { drawMarkingSheets } from "../../src/drawing/index.ts";
import { plan } from "../../src/plan/index.ts";
import { MARKING_LIST } from "../../src/tables/marking-list.ts";
import { wholeList } from "../../src/tables/plan-list.ts";
import { inches } from "../../src/units/index.ts";
import type { ShadeContext } from "../../src/workbook/shade-context.ts";
import { shadeStrips } from "../../src/workbook/strips/shade-strips.ts";
import { jobWith } from "../job-with.ts";

/** A relaxed shade: its panel is wider at the hem than at the top, and its lower edge is cut in a curve. */
function relaxed() {
  const made = plan(
    jobWith({
      opening: { widthsMm: [inches(47.375)], heightsMm: [inches(74.25)] },
      shade: {
        style: "relaxed",
        mount: "inside",
        making: { relax: { widening: "tapered" }, hems: { joins: "under-columns" } },
      },
    }),
  );
  const [shade] = made.shades;
  if (shade === undefined || shade.form.panel === undefined) throw new Error("invalid test job: no panel");
  return { made, shade, panel: shade.form.panel };
}

const { made, shade, panel } = relaxed();
const inset = shade.grid.columns[0]?.xMm ?? Number.NaN;

test("both columns of a panel that widens are told from the edge beside them, as far from each", () => {
  const list = wholeList(MARKING_LIST, made);
  const at = (name: string) => list.header.indexOf(name);
  const rings = list.rows.filter((row) => String(row[at("mark")]).startsWith("ring"));
  expect(rings).toHaveLength(shade.grid.rows.length * 2);
  for (const ring of rings) {
    const isFirst = ring[at("column")] === 1;
    // Measured across from the left the second would be wrong on every row: there is no one width.
    expect(ring[at(isFirst ? "fromRightEdgeMm" : "fromLeftEdgeMm")]).toBe("");
    expect(ring[at(isFirst ? "fromLeftEdgeMm" : "fromRightEdgeMm")]).toBeCloseTo(inset, 0);
  }
  const { finished } = drawMarkingSheets(made, shade);
  const across = finished.primitives.filter(
    (one) => one.kind === "dimension" && one.part?.startsWith("column-"),
  );
  expect(new Set(across.map((one) => (one.kind === "dimension" ? one.text : ""))).size).toBe(1);
  expect(finished.facts.map(({ label }) => label)).toContain(
    "Column 2 from the right edge seen from the room",
  );
});

test("rows are measured from the lowest point of a curved hem, on the strip and in the list", () => {
  expect(panel.dipMm).toBeGreaterThan(inches(4));
  const context = { plan: made, shade, length: (mm: number) => `${mm}` } as ShadeContext;
  const strips = shadeStrips(context);
  expect(strips.find(({ name }) => name === "Rows")?.use).toContain("level with the lowest point of the hem");
  // It would be laid across a cloth that is wider than it.
  expect(strips.map(({ name }) => name)).not.toContain("Columns");
  const list = wholeList(MARKING_LIST, made);
  expect(list.rows[0]?.[list.header.indexOf("mark")]).toBe("ring, up from the lowest point of the hem");
});

test("seams of a panel that widens are told on the flat cloth, at its hem", () => {
  const joins = shade.findings.find(({ id }) => id === "cloth.joins");
  expect(joins?.text).toContain("from the left edge of the flat cloth at the hem");
  const step = shade.steps.find(({ id }) => id === "make-join-face");
  expect(step?.check).toContain("from its left edge at the hem, seen from the room");
});

test.each(["gathered-balloon", "festoon", "austrian", "pleated-balloon"] as const)(
  "%s: no sheet but that of the flat cloth tells to mark rows: once drawn up they lie elsewhere",
  (style) => {
    const drawn = plan(
      jobWith({
        opening: { widthsMm: [1200], heightsMm: [1900] },
        shade: { style, mount: "inside" },
      }),
    );
    const [one] = drawn.shades;
    if (one === undefined) throw new Error("invalid test job: no shade");
    const flat = one.form.marks.find(({ label }) => label.toLowerCase() === "row 2")?.atMm ?? Number.NaN;
    expect(Math.abs(flat - (one.grid.rows[1]?.fromHemMm ?? Number.NaN))).toBeGreaterThan(10);
    const { finished } = drawMarkingSheets(drawn, one);
    expect(finished.caption).toContain("drawn up");
    expect(finished.caption).not.toMatch(/mark rows/i);
    const context = { plan: drawn, shade: one, length: (mm: number) => `${mm}` } as ShadeContext;
    expect(shadeStrips(context).find(({ name }) => name === "Rows")?.use).toContain("drawn up");
  },
);
