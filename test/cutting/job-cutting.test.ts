import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ClothProblem, verifyCloth } from "../../src/cutting/index.ts";
import type { Job, JobInput } from "../../src/job/index.ts";
import {
  buyAsCut,
  type ClothCutting,
  type CuttingPlan,
  type Plan,
  plan,
  planCutting,
  stockAfter,
} from "../../src/plan/index.ts";
import type { LayerCut, Panel } from "../../src/shade-plan/index.ts";
import { inches } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

const TRIES = 400;

function clothOf(cutting: CuttingPlan, id: string): ClothCutting {
  const found = cutting.cloths.find(({ clothId }) => clothId === id);
  if (found === undefined) throw new Error(`no cloth ${id}`);
  return found;
}

function planned({ answer }: ClothCutting) {
  if (!("bolts" in answer)) throw new Error(`${answer.status}: ${JSON.stringify(answer)}`);
  return answer;
}

/** New cloth that a plan takes, mm. */
function takenMm(cutting: CuttingPlan, id: string): number {
  const cloth = clothOf(cutting, id);
  return planned(cloth).bolts.find(({ boltId }) => boltId === cloth.newBoltId)?.usedMm ?? 0;
}

type ClothInput = NonNullable<JobInput["cloths"]>[number];

/** A job whose only cloth is cut in the given panels and nothing else, as a published example has them. */
function jobOfPanels(
  cloth: Partial<ClothInput>,
  panels: Pick<Panel, "widthMm" | "lengthMm" | "inRepeat">[],
): [Job, Plan] {
  const job = jobWith(
    { shade: { face: "own", lining: null } },
    { cloths: [{ id: "own", name: "Own", usableWidthMm: 1400, massGsm: 200, ...cloth }] },
  );
  const whole = plan(job);
  const [shade] = whole.shades;
  const [face] = shade?.cloth.layers ?? [];
  if (shade === undefined || face === undefined) throw new Error("no shade");
  const layer: LayerCut = {
    ...face,
    panels: panels.map((panel, i) => ({
      id: `face-${i + 1}`,
      label: `Face ${i + 1}`,
      joinedXMm: 0,
      full: false,
      ...panel,
    })),
    lays: panels.map((panel, i) => ({
      panelId: `face-${i + 1}`,
      xMm: 0,
      yMm: panel.inRepeat?.alongMm ?? 0,
      widthMm: panel.widthMm,
      lengthMm: panel.lengthMm,
    })),
  };
  return [job, { ...whole, shades: [{ ...shade, cloth: { ...shade.cloth, layers: [layer], trims: [] } }] }];
}

const times = <T>(count: number, one: T): T[] => Array.from({ length: count }, () => one);

describe("published examples", () => {
  // “Roman shades” (2018): two shades cut 33 × 68 in from 55 in cloth.
  it("E4: two of 33 × 68 in take 136 in of 55 in cloth, which is proved", () => {
    const [job, whole] = jobOfPanels(
      { usableWidthMm: inches(55) },
      times(2, { widthMm: inches(33), lengthMm: inches(68) }),
    );
    const cutting = planCutting(job, whole, TRIES);
    expectNear(takenMm(cutting, "own"), inches(136), 0.2);
    expect(planned(clothOf(cutting, "own")).status).toBe("optimal");
  });

  // “Curtain encyclopaedia”: cut length 240 cm, repeat 37 cm: 259 cm a width, 4 widths 10.36 m; plain 9.6 m. The last
  // width needs no cloth beyond its own end: 3 × 259 + 240.
  it("E15: four widths of 240 cm on a repeat of 37 cm take 10.17 m of the 10.36 published; plain 9.6 m", () => {
    const panels = times(4, { widthMm: 1400, lengthMm: 2400 });
    const [plain, plainPlan] = jobOfPanels({}, panels);
    expectNear(takenMm(planCutting(plain, plainPlan, TRIES), "own"), 9600, 0.2);
    const repeat = { verticalMm: 370, match: "straight" as const };
    const [job, whole] = jobOfPanels(
      { repeat },
      panels.map((panel) => ({ ...panel, inRepeat: { alongMm: 0 } })),
    );
    expectNear(takenMm(planCutting(job, whole, TRIES), "own"), 3 * 2590 + 2400, 0.2);
  });

  // “Half-drop tutorial”: three widths of 195 cm on a half drop of 65 cm: 6.5 m bought. The middle width begins half a
  // repeat on: 0 to 390 for the outer two, 422.5 to 617.5 for the middle one.
  it("E17: three widths on a half drop take no more than the 6.5 m published, and 6.175 m in the best order", () => {
    const repeat = { verticalMm: 650, match: "half-drop" as const };
    const starts = [0, 325, 0];
    const [job, whole] = jobOfPanels(
      { repeat },
      starts.map((alongMm) => ({ widthMm: 1400, lengthMm: 1950, inRepeat: { alongMm } })),
    );
    const takes = takenMm(planCutting(job, whole, TRIES), "own");
    expect(takes).toBeLessThanOrEqual(6500);
    expectNear(takes, 6175, 0.2);
  });

  // “Measuring pelmets and blinds”: 2 × 118 in of 54 in cloth: 236 / 54 = 4.37, billed as 5 widths.
  it("E18: two shades of 118 in come out of five widths of 54 in cloth", () => {
    const lengthMm = 1500;
    const [job, whole] = jobOfPanels({ usableWidthMm: inches(54) }, [
      ...times(4, { widthMm: inches(54), lengthMm }),
      ...times(2, { widthMm: inches(10), lengthMm }),
    ]);
    expectNear(takenMm(planCutting(job, whole, TRIES), "own"), 5 * lengthMm, 0.2);
  });

  // “Curtain encyclopaedia”: 200 × 2 + 40 = 440 cm of 140 cm cloth: 3.14, so 4 widths.
  it("E19: 440 cm come out of four widths of 140 cm cloth", () => {
    const lengthMm = 2400;
    const [job, whole] = jobOfPanels({}, [
      ...times(3, { widthMm: 1400, lengthMm }),
      { widthMm: 200, lengthMm },
    ]);
    expectNear(takenMm(planCutting(job, whole, TRIES), "own"), 4 * lengthMm, 0.2);
  });
});

describe("the pattern", () => {
  const windows = fc.array(
    fc.record({
      widthMm: fc.integer({ min: 500, max: 4000 }),
      heightMm: fc.integer({ min: 600, max: 2400 }),
    }),
    { minLength: 1, maxLength: 3 },
  );
  const repeat = fc.record({
    verticalMm: fc.integer({ min: 150, max: 700 }),
    horizontalMm: fc.option(fc.integer({ min: 150, max: 600 }), { nil: undefined }),
    match: fc.constantFrom("straight" as const, "half-drop" as const),
  });

  // The cloth's stage lays each layer by itself, with its pattern matched there; the check of the cutting plan, which
  // shares nothing with it, must find those places on the lattice.
  it("lies in the cutting plan as the cloth's stage matched it, half drops included", () => {
    fc.assert(
      fc.property(windows, repeat, (sizes, pattern) => {
        const job = jobWith(
          {},
          {
            cloths: [{ id: "own", name: "Own", usableWidthMm: 1370, massGsm: 200, repeat: pattern }],
            rooms: [
              {
                id: "r",
                name: "Room",
                windows: sizes.map(({ widthMm, heightMm }, i) => ({
                  id: `w${i}`,
                  name: `Window ${i}`,
                  opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
                  shade: { face: "own", lining: null, mount: "to-size" as const },
                })),
              },
            ],
          },
        );
        const whole = plan(job);
        const { problem } = clothOf(planCutting(job, whole, 20), "own");
        for (const shade of whole.shades)
          expect(faultsOfLays(problem, shade.shadeId, shade.cloth.layers[0])).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

/** What the check says of the places that the cloth's stage gave one layer. */
function faultsOfLays(problem: ClothProblem, shadeId: string, layer: LayerCut | undefined): string[] {
  const [newBolt] = problem.bolts.slice(-1);
  if (layer === undefined || newBolt === undefined) throw new Error("no layer");
  const ids = new Set(layer.panels.map(({ id }) => `${shadeId}/${id}`));
  const pieces = problem.pieces.filter(({ id }) => ids.has(id));
  const placements = layer.lays.map(({ panelId, ...lay }) => ({
    pieceId: `${shadeId}/${panelId}`,
    ...lay,
    turn: 0 as const,
  }));
  const usedMm = Math.max(...placements.map(({ yMm, lengthMm }) => yMm + lengthMm));
  return verifyCloth(
    { ...problem, pieces, bolts: [newBolt], cutting: { kind: "free" } },
    {
      status: "feasible",
      bolts: [{ boltId: newBolt.id, usedMm, placements, cuts: [], leaves: [], remnants: [] }],
      cost: usedMm,
      bound: { cost: 0, which: "area" },
      gap: 0,
      evaluations: 0,
    },
  );
}

describe("what is at hand", () => {
  const withStock = (stock: JobInput["stock"], over: Partial<JobInput> = {}) =>
    jobWith(
      { shade: { face: "own", lining: null, mount: "to-size" } },
      {
        cloths: [{ id: "own", name: "Own", usableWidthMm: 1400, massGsm: 200, pricePerM: 20 }],
        stock,
        ...over,
      },
    );

  it("is cut before anything is bought, and the shopping list says so", () => {
    const job = withStock({ cloth: [{ id: "left", cloth: "own", lengthMm: 4000 }] });
    const whole = plan(job);
    const cutting = planCutting(job, whole, TRIES);
    expect(takenMm(cutting, "own")).toBe(0);
    const line = buyAsCut(job, whole, cutting).cost.shopping.find(({ id }) => id === "cloth-own");
    expect(line).toMatchObject({ quantity: 0, buyText: "none: at hand", cost: 0 });
  });

  it("leaves as much to buy in the finding as in the shopping list", () => {
    const job = withStock({
      cloth: [
        { id: "a", cloth: "own", lengthMm: 1900 },
        { id: "b", cloth: "own", lengthMm: 700, widthMm: 500 },
      ],
    });
    const [window] = job.rooms[0]?.windows ?? [];
    if (window) window.opening = { widthsMm: [2400], heightsMm: [1500] };
    const whole = plan(job);
    const bought = buyAsCut(job, whole, planCutting(job, whole, TRIES));
    const line = bought.cost.shopping.find(({ id }) => id === "cloth-own");
    const short = bought.findings.filter(({ id }) => id === "cost.cloth-short");
    expect(short.map(({ text }) => text)).toEqual([
      expect.stringContaining(`The cuts take ${line?.needText}, so ${line?.buyText} must be bought`),
    ]);
  });

  it("with one id for two pieces is cut piece by piece, each called by its name", () => {
    const job = withStock({
      cloth: [
        { id: "left", name: "Basket", cloth: "own", lengthMm: 1900 },
        { id: "left", cloth: "own", lengthMm: 400, widthMm: 600 },
      ],
      lengths: [
        { id: "stick", part: "board-1x2", lengthMm: 400 },
        { id: "stick", part: "board-1x2", lengthMm: 1300 },
      ],
    });
    const cutting = planCutting(job, plan(job), TRIES);
    const { boltNames } = clothOf(cutting, "own");
    expect(Object.values(boltNames)).toEqual(expect.arrayContaining(["Basket", "Piece 2 in stock"]));
    const after = stockAfter(job, cutting);
    const ids = [...(after.cloth ?? []), ...(after.lengths ?? [])].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const remnants = planned(clothOf(cutting, "own")).bolts.flatMap((bolt) => bolt.remnants);
    for (const { name } of remnants) expect(name).toMatch(/^(Basket|Own|Piece 2 in stock), remnant \d+$/);
  });

  it("is not cut across a flaw", () => {
    const job = withStock({
      cloth: [{ id: "left", cloth: "own", lengthMm: 1900, flaws: [{ fromMm: 900, lengthMm: 20 }] }],
    });
    const cutting = planCutting(job, plan(job), TRIES);
    const used = planned(clothOf(cutting, "own")).bolts.map(({ boltId }) => boltId);
    expect(used).toContain(clothOf(cutting, "own").newBoltId);
  });

  it("gives the widths of one face from one dye lot", () => {
    const wide = { opening: { widthsMm: [2400], heightsMm: [1500] } };
    const job = withStock(
      {
        cloth: [
          { id: "a", cloth: "own", lengthMm: 1900, lot: "Lot 1" },
          { id: "b", cloth: "own", lengthMm: 1900, lot: "Lot 2" },
        ],
      },
      {},
    );
    const window = job.rooms[0]?.windows[0];
    if (window) Object.assign(window, wide);
    const cutting = planCutting(job, plan(job), TRIES);
    const faces = planned(clothOf(cutting, "own")).bolts.filter(({ placements }) =>
      placements.some(({ pieceId }) => pieceId.includes("/face-")),
    );
    expect(faces).toHaveLength(1);
  });
});

describe("several lengths at several prices", () => {
  const boards = (alsoSold: { lengthMm: number; price: number }[]) =>
    jobWith(
      {
        opening: { widthsMm: [1200], heightsMm: [1500] },
        shade: { mount: "to-size", making: { board: { section: "own" } } },
      },
      {
        hardware: {
          boards: [
            { id: "own", name: "Own", depthMm: 38, thicknessMm: 19, stockMm: 2400, price: 9, alsoSold },
          ],
        },
      },
    );

  // One board of 1,193.65 mm (1,200 − 1/4 in): 9 for a length of 2,400, 5 for one of 1,300.
  it("the cheapest that serves is bought, and the line says which", () => {
    const job = boards([{ lengthMm: 1300, price: 5 }]);
    const whole = plan(job);
    const line = buyAsCut(job, whole, planCutting(job, whole, 0)).cost.shopping.find(
      ({ id }) => id === "board-own",
    );
    expect(line).toMatchObject({ quantity: 1, price: 5, cost: 5 });
    // 1,300 mm are 51.18 in (1 in = 25.4 mm).
    expect(line?.buyText.replaceAll("\u00a0", " ")).toBe("1 length of 51 1⁄8 in");
  });

  it("a longer one takes what the usual one is too short for", () => {
    const job = boards([{ lengthMm: 3600, price: 14 }]);
    const [window] = job.rooms[0]?.windows ?? [];
    if (window) window.opening.widthsMm = [3000];
    const whole = plan(job);
    const long = whole.shades[0]?.findings.filter(({ id }) => id === "cost.longer-than-sold") ?? [];
    expect(long.filter(({ text }) => text.startsWith("Own"))).toEqual([]);
    const line = buyAsCut(job, whole, planCutting(job, whole, 0)).cost.shopping.find(
      ({ id }) => id === "board-own",
    );
    expect(line).toMatchObject({ quantity: 1, price: 14, cost: 14 });
  });

  // 1,193.65 mm out of one of 1,300 at 5, 2,993.65 out of one of 3,600 at 14: 19 in all, and no one price.
  it("two that differ have no price each", () => {
    const job = boards([
      { lengthMm: 1300, price: 5 },
      { lengthMm: 3600, price: 14 },
    ]);
    const [room] = job.rooms;
    const [window] = room?.windows ?? [];
    if (window === undefined) throw new Error("no window");
    room?.windows.push({ ...window, id: "wide", opening: { ...window.opening, widthsMm: [3000] } });
    const whole = plan(job);
    const line = buyAsCut(job, whole, planCutting(job, whole, 0)).cost.shopping.find(
      ({ id }) => id === "board-own",
    );
    expect(line).toMatchObject({ quantity: 2, cost: 19 });
    expect(line?.price).toBeUndefined();
  });
});
