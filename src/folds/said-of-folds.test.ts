import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import type { Finding } from "../figures/index.ts";
import type { JobInput } from "../job/index.ts";
import { plan } from "../plan/index.ts";

type Window = Parameters<typeof jobWith>[0];

function shadeOf(window: Window, job: Partial<JobInput> = {}) {
  const [shade] = plan(jobWith(window, job)).shades;
  if (shade === undefined) throw new Error("invalid test: no shade");
  return shade;
}

function findingOf(shade: ReturnType<typeof shadeOf>, id: string): Finding {
  const found = shade.findings.find((one) => one.id === id);
  if (found === undefined) throw new Error(`invalid test: no ${id}`);
  return found;
}

const cloth = (id: string, more: object = {}) => ({
  ...{ id, name: `Cloth ${id}`, usableWidthMm: 1370, massGsm: 230 },
  ...more,
});
const SHADE = "/rooms/0/windows/0/shade";
/** A rod of 4 mm over columns far apart: it sags. */
const RIBBED: Window = {
  opening: { widthsMm: [800], heightsMm: [1500] },
  shade: {
    lining: "cotton-lining",
    making: { ribs: { kind: "lining-pocket", rib: "rib-rod-4" }, columns: { largestSpacingMm: 800 } },
  },
};

describe("figures of folds", () => {
  test("each prints a formula that gives its number when mathjs reads it, and says what goes in", () => {
    const shades = [shadeOf({}), shadeOf(RIBBED), shadeOf({ shade: { lining: null } })];
    const figures = shades.flatMap(({ workings }) => workings.filter(({ id }) => id.startsWith("folds.")));
    const named = (id: string) => figures.filter((figure) => figure.id === id).map(({ label }) => label);
    expect(new Set(figures.map(({ id }) => id)).size).toBeGreaterThanOrEqual(8);
    expect(new Set(named("folds.bar-sag"))).toEqual(new Set(["Weight bar: sag between columns"]));
    expect(named("folds.rib-sag")).toEqual(["Rib: sag between columns"]);
    for (const { id, formula, inputs, value } of figures) {
      const scope = Object.fromEntries(inputs.map((input) => [input.symbol, input.value]));
      const again = Number(
        evaluate(formula.replaceAll("·", "*").replaceAll("−", "-"), { ...scope, π: Math.PI }),
      );
      expectNear(again, value, 1e-9 * Math.max(1, Math.abs(value)));
      for (const input of inputs)
        expect([id, input.label.length > 2, input.unit.length > 0]).toEqual([id, true, true]);
    }
  });

  test("two layers that are loose: their names, masses and lengths, and that they are loose", () => {
    const job = { cloths: [cloth("own"), cloth("thin", { massGsm: 140, bendingLengthMm: 20 })] };
    const { workings } = shadeOf({ shade: { face: "own", lining: "thin" } }, job);
    const figure = workings.find(({ id }) => id === "folds.bending-length");
    expect(figure?.formula).toBe("((m1·c1^3 + m2·c2^3) / (m1 + m2))^(1/3)");
    expect(figure?.note).toMatch(/loose/);
    const labels = figure?.inputs.map(({ symbol, label }) => `${symbol} ${label}`);
    expect(labels?.[1]).toMatch(/^c1 .*: bending length, a guess$/);
    expect(labels?.[3]).toMatch(/^c2 lining: bending length$/);
    expect(figure?.inputs.map(({ unit }) => unit)).toEqual(["g/m2", "mm", "g/m2", "mm"]);
  });
});

describe("what is said of folds", () => {
  test("cloths whose stiffness was not measured, each once, and none that was", () => {
    const job = { cloths: [cloth("a"), cloth("b"), cloth("c", { bendingLengthMm: 20 })] };
    const shade = shadeOf({ shade: { face: "a", lining: "b", interlining: "c" } }, job);
    const finding = findingOf(shade, "folds.stiffness-unknown");
    expect(finding.text).toContain("“Cloth a” and “Cloth b” was not measured");
    expect(finding.text).not.toContain("Cloth c");
    expect(finding).toMatchObject({ severity: "unproven", stage: "cloth", path: SHADE });
    expect(finding.cite.source).toBe("peirce-1930");
    const twice = findingOf(shadeOf({ shade: { face: "a", lining: "a" } }, job), "folds.stiffness-unknown");
    expect(twice.text.split("“Cloth a”")).toHaveLength(2);
  });

  test("bonded layers are to be measured together", () => {
    const making = { lining: { bonded: true } };
    const shade = shadeOf({ shade: { lining: "cotton-lining", making } });
    const finding = findingOf(shade, "folds.stiffness-unknown");
    expect(finding.path).toBe(`${SHADE}/making/lining/bondedBendingMm`);
    expect(finding.text).toMatch(/bonded.*at least/);
  });

  test.each([
    ["no lining", null, "strip-pocket"],
    ["a lining", "limp", "lining-pocket"],
  ] as const)(
    "folds of stiff cloth over a light hem break backwards; with %s its ribs lie in a %s",
    (_, lining, kind) => {
      const job = {
        cloths: [cloth("own", { bendingLengthMm: 90 }), cloth("limp", { massGsm: 60, bendingLengthMm: 12 })],
      };
      const making = { board: { bar: "bar-wood-25x3" } };
      const shade = shadeOf({ shade: { face: "own", lining, making } }, job);
      const finding = findingOf(shade, "folds.break-backwards");
      const isSure = shade.folds?.breaks === "backward";
      expect(finding.severity).toBe(isSure ? "fix" : "note");
      expect(finding.text.startsWith(isSure ? "Folds will break" : "Folds may break")).toBe(true);
      expect(finding).toMatchObject({
        stage: "shape",
        path: `${SHADE}/making/ribs/kind`,
        figures: ["folds.forward"],
      });
      const [remedy] = finding.remedies;
      expect(remedy?.label).toBe("Put ribs at the rows");
      expect(JSON.stringify(remedy?.patch)).toContain(kind);
    },
  );

  test("a rib that sags: by how much, over which bay, with which rod; closer columns by span, or as many as needed", () => {
    const shade = shadeOf(RIBBED);
    const finding = findingOf(shade, "folds.ribs-sag");
    const { sag } = shade.folds ?? {};
    expect(finding.text).toMatch(
      /^Ribs would sag by .* between columns .* apart with “.+”; more than .* is seen\.$/,
    );
    expect(finding.figures).toEqual(["folds.rib-sag", "folds.sag-limit"]);
    expect(finding).toMatchObject({ stage: "shape", path: `${SHADE}/making/columns/largestSpacingMm` });
    expect(sag?.ribMm ?? 0).toBeGreaterThan(sag?.limitMm ?? 0);
    const columns = shade.grid.columns.map(({ xMm }) => xMm);
    const bySpan = finding.remedies.find(({ label }) =>
      /^Columns at most .* apart: \d+ of them$/.test(label),
    );
    const needed = Number(bySpan?.label.match(/(\d+) of them/)?.[1]);
    const spacing = (bySpan?.patch.at(-1) as { value?: number } | undefined)?.value;
    // That many columns stand evenly between the outer ones.
    expectNear(spacing ?? 0, ((columns.at(-1) ?? 0) - (columns[0] ?? 0)) / (needed - 1), 1e-9);
    expect(needed).toBeGreaterThan(columns.length);

    const counted = structuredClone(RIBBED);
    Object.assign(counted.shade?.making ?? {}, { columns: { count: 2 } });
    const byCount = findingOf(shadeOf(counted), "folds.ribs-sag").remedies[0];
    expect(byCount?.label).toMatch(/^Use \d+ columns$/);
    expect(byCount?.patch.at(-1)).toMatchObject({ path: expect.stringMatching(/columns\/count$/) });
  });
});
