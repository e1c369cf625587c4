import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { figureId, workingOf } from "../figures/index.ts";
import type { Bar } from "../job/index.ts";
import {
  dropFamily,
  type FoldCloth,
  fixedSkirt,
  foldOpening,
  foldWeight,
  stackFolds,
} from "../mechanics/index.ts";
import { plan } from "../plan/index.ts";
import type { Form } from "../shade-plan/index.ts";
import { breakWay } from "./break-way.ts";
import { fewestColumns, hemSag, sagOver, widestBay } from "./hem-sag.ts";

type Window = Parameters<typeof jobWith>[0];

function shadeOf(window: Window, job: Parameters<typeof jobWith>[1] = {}) {
  const [shade] = plan(jobWith(window, job)).shades;
  if (shade === undefined) throw new Error("invalid test: no shade");
  return shade;
}

/** 230 g/m² that bends as 25 mm. */
const W = 230 * 9.80665e-9;
const B = W * 25 ** 3;
const clothOver = (skirtNPerMm: number, more: Partial<FoldCloth> = {}): FoldCloth => ({
  weightNPerMm2: W,
  rigidityNmm: B,
  thicknessMm: 0.8,
  paneMm: 38,
  skirt: { lengthMm: 100, weightNPerMm: skirtNPerMm, centreMm: 60 },
  ...more,
});
const BARE = { ribs: { rows: [] } } as unknown as Form;
const RIBBED = { ribs: { rows: [1] } } as unknown as Form;
const stackOf = (planesRad: number[]) => ({ planesRad }) as ReturnType<typeof stackFolds>;

describe("which way folds break, by the printed formula at each row", () => {
  const ARCS = [200, 260, 220];
  const PLANES = [0.2, 0.9, 0.1, 3];

  /** At the k-th row, by hand: the weight below lifts 2.5 mm behind the cloth, the fold below leans and is held upright. */
  function ratioAt(k: number, cloth: FoldCloth): number {
    const lifted = cloth.skirt.weightNPerMm + W * ARCS.slice(0, k).reduce((sum, arc) => sum + arc, 0);
    const arc = ARCS[k - 1] ?? 0;
    const lean = Math.max(2 * dropFamily(foldWeight(cloth, arc)).freeRad, PLANES[k] ?? 0);
    const a = arc / 2;
    return (lifted * 2.5) / (lean * Math.sqrt(B * ((9 * B) / a ** 2 + W * a)));
  }

  test("the least of the rows counts, the lowest fold is behind the first of them", () => {
    for (const skirt of [0.001, 0.01, 0.1]) {
      const cloth = clothOver(skirt);
      const [figure] = breakWay(BARE, cloth, ARCS, stackOf(PLANES)).workings;
      const ratios = [1, 2].map((k) => ratioAt(k, cloth));
      expectNear(figure?.value ?? 0, Math.min(...ratios), 1e-9 * Math.min(...ratios));
    }
  });

  test("the weight at the row and what it takes to hold the fold are printed as they are", () => {
    const cloth = clothOver(0.01);
    const { workings } = breakWay(BARE, cloth, [200, 260], stackOf([0, 1.2, 0]));
    const given = Object.fromEntries(
      workings.flatMap((one) => workingOf(one).inputs.map(({ symbol, value }) => [symbol, value])),
    );
    const lean = Math.max(2 * dropFamily(foldWeight(cloth, 200)).freeRad, 1.2);
    expectNear(Number(given.F), 1000 * (0.01 + W * 200), 1e-9);
    expect(given.e).toBe(2.5);
    expectNear(Number(given.t), lean, 1e-12);
    expectNear(Number(given.h), 1000 * Math.sqrt(B * ((9 * B) / 100 ** 2 + W * 100)), 1e-12);
  });

  test("below 1 backward, from 1 unsure, from 2 forward", () => {
    const ratioOf = (skirt: number) => Math.min(...[1, 2].map((k) => ratioAt(k, clothOver(skirt))));
    /** The skirt's weight at which the least ratio is so much: it grows with the weight. */
    const skirtFor = (ratio: number) => {
      let [low, high] = [0, 10];
      for (let n = 0; n < 80; n++) {
        const middle = (low + high) / 2;
        if (ratioOf(middle) < ratio) low = middle;
        else high = middle;
      }
      return high;
    };
    const wayAt = (ratio: number) => breakWay(BARE, clothOver(skirtFor(ratio)), ARCS, stackOf(PLANES)).values;
    expect(ratioOf(0)).toBeLessThan(0.9);
    expect(wayAt(0.99)).toBe("backward");
    expect(wayAt(1.01)).toBe("unsure");
    expect(wayAt(1.99)).toBe("unsure");
    expect(wayAt(2.01)).toBe("forward");
  });

  test("a rib is a hinge, and one fold has none above it: forward, and nothing is printed", () => {
    const light = clothOver(0);
    expect(breakWay(BARE, light, ARCS, stackOf(PLANES)).values).toBe("backward");
    expect(breakWay(RIBBED, light, ARCS, stackOf(PLANES))).toEqual({ values: "forward", workings: [] });
    expect(breakWay(BARE, light, [200], stackOf([3, 3, 3]))).toEqual({ values: "forward", workings: [] });
    expect(breakWay(BARE, light, [200, 200], stackOf([3, 3, 3])).workings).toHaveLength(1);
  });
});

const STEEL: Bar = { id: "bar", name: "Flat steel", material: "steel", widthMm: 20, thicknessMm: 3 };
const EI = 210_000 * ((3 * 20 ** 3) / 12);

describe("how many columns keep a bar straight", () => {
  const inputOver = (xsMm: number[], widthMm: number) =>
    ({ grid: { columns: xsMm.map((xMm) => ({ xMm })) }, size: { finishedWidthMm: widthMm } }) as never;

  // 5 q L⁴ / 384 E I (AWC Design Aid 6, fig. 1) at two columns at the ends; the limit of a bay of 1,500 mm is 5 mm.
  test("two where the sag of a span stays below a 300th of it, more where it does not", () => {
    const atLimit = (5 * 384 * EI) / (5 * 1500 ** 4);
    const fewest = (loadNPerMm: number) =>
      fewestColumns(inputOver([0, 750, 1500], 1500), [{ bar: STEEL, loadNPerMm }]);
    expect(fewest(0.999 * atLimit)).toBe(2);
    expect(fewest(1.001 * atLimit)).toBe(3);
  });

  // Two bays of 750 mm: 0.0054161 q l⁴ / E I, which the handbook rounds to q l⁴ / 185 E I (fig. 29); the limit is 2.5 mm.
  test("three evenly between the outer ones, until those sag, too; the worst bar counts", () => {
    const x = (1 + Math.sqrt(33)) / 16;
    const share = (x - 3 * x ** 3 + 2 * x ** 4) / 48;
    const atLimit = (2.5 * EI) / (share * 750 ** 4);
    const fewest = (...loads: number[]) =>
      fewestColumns(
        inputOver([0, 200, 1500], 1500),
        loads.map((loadNPerMm) => ({ bar: STEEL, loadNPerMm })),
      );
    expect(fewest(0.999 * atLimit)).toBe(3);
    expect(fewest(1.001 * atLimit)).toBe(4);
    expect(fewest(0.001, 1.001 * atLimit)).toBe(4);
    expect(fewest()).toBe(2);
  });

  test("a bar that no number keeps straight leaves the columns as they are", () => {
    const soft = { bar: { ...STEEL, material: "wood" as const, widthMm: 0.5 }, loadNPerMm: 100 };
    expect(fewestColumns(inputOver([0, 300, 700, 1500], 1500), [soft])).toBe(4);
    expect(fewestColumns(inputOver([], 1500), [soft])).toBe(2);
  });

  test("the widest bay, whichever it is", () => {
    expect(widestBay([0, 300, 900, 1000])).toBe(600);
    expect(widestBay([100])).toBe(0);
    expect(widestBay([])).toBe(0);
  });
});

describe("figures of a whole shade, computed again", () => {
  const CLOTH = { id: "own", name: "Own", usableWidthMm: 1370, massGsm: 230, bendingLengthMm: 25 };
  const OWN = { cloths: [CLOTH] };
  const own = (making = {}): Window => ({ shade: { face: "own", lining: null, making } });

  test("the skirt: its weight, and its centre from the moments of cloth and bar about the lowest row", () => {
    const { folds, grid, mass, size } = shadeOf(own(), OWN);
    const barN = (mass.parts.find(({ part }) => part === "bar")?.massKg ?? 0) * 9.80665;
    const s = grid.bottomSectionMm;
    const clothN = W * s * size.finishedWidthMm;
    expect(barN).toBeGreaterThan(0);
    expect(folds?.cloth.skirt.lengthMm).toBe(s);
    expectNear(folds?.cloth.skirt.weightNPerMm ?? 0, (clothN + barN) / size.finishedWidthMm, 1e-12);
    expectNear(folds?.cloth.skirt.centreMm ?? 0, (clothN * (s / 2) + barN * s) / (clothN + barN), 1e-9);
  });

  test("loop, trained depth, first pull and swing", () => {
    const { folds, size } = shadeOf(own(), OWN);
    if (folds === undefined) throw new Error("invalid test: no folds");
    const { cloth, arcsMm } = folds;
    const stack = stackFolds({ ...cloth, arcsMm });
    const opening = foldOpening(foldWeight(cloth, arcsMm[0] ?? 0));
    expectNear(folds.outMm, stack.frontMm + cloth.thicknessMm / 2, 1e-9);
    expectNear(folds.behindMm, stack.behindMm, 1e-9);
    expectNear(folds.openOutMm, opening.outShare * (arcsMm[0] ?? 0), 1e-9);
    expectNear(folds.startN, opening.startShare * W * (arcsMm[0] ?? 0) * size.finishedWidthMm, 1e-9);
    // Two layers of cloth a fold and two more, a loft of gathered cloth over its thickness.
    const loft = folds.trainedMm / ((2 * arcsMm.length + 2) * cloth.thicknessMm);
    expect(loft).toBeGreaterThanOrEqual(1);
    expect(loft).toBeLessThan(4);
  });

  test("a soft fold over the hem holds the stack off at the angle that it swings out by, 60° at the most", () => {
    const { folds, form } = shadeOf({ shade: { style: "hobbled", face: "own", lining: null } }, OWN);
    if (folds === undefined) throw new Error("invalid test: no folds");
    const [lowest] = form.stretches;
    if (lowest === undefined) throw new Error("invalid test: no stretch");
    expect(lowest.clothMm - lowest.cordMm).toBeGreaterThan(1);
    const { outShare } = foldOpening(foldWeight(folds.cloth, lowest.clothMm));
    const angle = Math.min(Math.PI / 3, Math.atan((outShare * lowest.clothMm) / lowest.cordMm));
    const stack = stackFolds({ ...folds.cloth, arcsMm: folds.arcsMm, skirt: fixedSkirt(angle) });
    expectNear(folds.outMm, stack.frontMm + folds.cloth.thicknessMm / 2, 1e-9);
    const other = stackFolds({ ...folds.cloth, arcsMm: folds.arcsMm, skirt: fixedSkirt(angle * 1.2) });
    expect(Math.abs(other.frontMm - stack.frontMm)).toBeGreaterThan(0.01);
  });

  test("the bar's sag is that of a continuous beam, its printed share that over q b⁴; cloth holds itself over (185 v B / w)^¼", () => {
    const shade = shadeOf(own({ columns: { count: 3 } }), OWN);
    const { folds, grid, size, workings } = shade;
    if (folds === undefined) throw new Error("invalid test: no folds");
    const columns = grid.columns.map(({ xMm }) => xMm);
    const bay = (columns[1] ?? 0) - (columns[0] ?? 0);
    const figure = workings.find(({ id }) => id === "folds.bar-sag");
    const given = Object.fromEntries((figure?.inputs ?? []).map(({ symbol, value }) => [symbol, value]));
    expectNear(Number(given.b), bay, 1e-9);
    expectNear(Number(given.q), 1000 * folds.cloth.skirt.weightNPerMm, 1e-9);
    // Overhangs beyond the outer columns change it a little: 0.0054 between ends that are propped.
    expectNear(Number(given.f), 0.0054, 0.001);
    const limit = Math.max(2, bay / 300);
    expectNear(folds.sag.limitMm, limit, 1e-9);
    expectNear(folds.sag.clothSpanMm, ((185 * limit * B) / W) ** 0.25, 1e-6);
    expect(folds.sag.ribMm).toBeUndefined();
    expect(size.finishedWidthMm).toBeGreaterThan(columns.at(-1) ?? 0);
  });

  test("without a bar nothing of it is said; a rib carries its own spacing of cloth, and its share of what lies at the rows", () => {
    const { folds, grid, form, mass, size } = shadeOf(
      {
        shade: { face: "own", lining: "own", making: { ribs: { kind: "lining-pocket", rib: "rib-rod-4" } } },
      },
      OWN,
    );
    if (folds === undefined) throw new Error("invalid test: no folds");
    const rows = mass.parts.filter(({ part }) => !["face", "lining", "bar"].includes(part));
    const rowsN = rows.reduce((sum, { massKg }) => sum + massKg, 0) * 9.80665;
    const spacing = Math.max(grid.bottomSectionMm, ...form.stretches.map(({ clothMm }) => clothMm));
    const ribs = form.ribs.rows.length + (form.ribs.between?.length ?? 0);
    expect(ribs).toBeGreaterThan(1);
    const input = { shade: { bar: STEEL, rib: STEEL }, size, grid, mass } as never as Parameters<
      typeof hemSag
    >[0];
    const ofRibs = hemSag({ ...input, form }, folds.cloth).values;
    const loadNPerMm = folds.cloth.weightNPerMm2 * spacing + rowsN / size.finishedWidthMm / ribs;
    const columns = grid.columns.map(({ xMm }) => xMm);
    expectNear(ofRibs.ribMm ?? 0, sagOver(columns, size.finishedWidthMm, { bar: STEEL, loadNPerMm }), 1e-9);
    const { bar: _, ...barless } = form;
    const bare = hemSag(
      { ...input, form: { ...barless, ribs: { ...form.ribs, rows: [], between: [] } } },
      folds.cloth,
    );
    expect(bare.values).toMatchObject({ barMm: 0, fewestColumns: 2 });
    expect("ribMm" in bare.values).toBe(false);
    expect(bare.workings.map(figureId)).toEqual(["folds.sag-limit"]);
  });
});

describe("what answers a hem that sags", () => {
  const LATHS = ["stiff", "too-soft", "stiffer", "stiffest"].map((id, n) => ({
    ...{ id, name: `Bar ${id}`, material: "steel" as const, thicknessMm: 3 },
    widthMm: [40, 5, 50, 60][n] ?? 0,
  }));
  const SAGS: Window = {
    opening: { widthsMm: [2000], heightsMm: [1500] },
    shade: { making: { columns: { count: 2 }, board: { bar: "too-soft" } } },
  };

  test("bars of the list that stay straight over the columns as they are, two at the most, and as many columns as it takes", () => {
    const shade = shadeOf(SAGS, { hardware: { bars: LATHS } });
    const finding = shade.findings.find(({ id }) => id === "folds.hem-sags");
    expect(finding?.text).toMatch(/^The hem would sag by .* between columns .* apart with “.+”/);
    expect(finding).toMatchObject({
      severity: "fix",
      stage: "shape",
      figures: ["folds.bar-sag", "folds.sag-limit"],
    });
    const remedies = finding?.remedies ?? [];
    const bars = remedies.filter(({ label }) => label.startsWith("Use “"));
    expect(bars).toHaveLength(2);
    expect(bars.map(({ label }) => label)).not.toContain("Use “Bar too-soft”");
    for (const { patch } of bars)
      expect(patch.at(-1)).toMatchObject({ path: expect.stringMatching(/board\/bar$/) });
    expect(remedies[0]?.label).toMatch(/^Use \d+ columns$/);
    // With each of them the hem is straight.
    for (const { patch } of bars) {
      const bar = String((patch.at(-1) as { value?: unknown }).value);
      const making = { columns: { count: 2 }, board: { bar } };
      const cured = shadeOf({ ...SAGS, shade: { making } }, { hardware: { bars: LATHS } });
      expect(cured.findings.map(({ id }) => id)).not.toContain("folds.hem-sags");
    }
  });
});
