import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { BoltPlan, ClothProblem, Placement } from "../../src/cutting/index.ts";
import { planByHand } from "../../src/cutting/index.ts";
import { type Job, jobSchema } from "../../src/job/index.ts";
import { repeatOf } from "../../src/plan/cutting/cloth-left.ts";
import {
  boltsCut,
  type ClothCutting,
  type CuttingPlan,
  CuttingSearch,
  cutsMade,
  heldPatch,
  letGoPatch,
  newClothMm,
  patched,
  plan,
  planAndCut,
  snappedToRepeat,
} from "../../src/plan/index.ts";
import { workroomJob } from "./workroom-jobs.ts";

const TRIES = 200;

function cut(job: Job, tries = TRIES) {
  const { plan, cutting } = planAndCut(job, {}, tries);
  if (cutting === undefined) throw new Error("not cut");
  return { plan, cutting };
}

const areaOf = (all: readonly { widthMm: number; lengthMm: number }[]) =>
  all.reduce((sum, { widthMm, lengthMm }) => sum + widthMm * lengthMm, 0);
const piecesOf = ({ cloths }: CuttingPlan) =>
  cloths.flatMap(({ problem }) => problem.pieces.map(({ id }) => id)).sort();

/** The job after some cuts of one bolt, so much of new cloth left on it that everything planned comes off. */
function afterCuts(job: Job, cloth: ClothCutting, bolt: BoltPlan, upTo: number, moreMm = 0) {
  const isNew = bolt.boltId === cloth.newBoltId;
  const offMm = Math.max(
    0,
    ...bolt.cuts.filter((one) => one.number <= upTo && isOnBolt(bolt, one)).map(({ atMm }) => atMm),
  );
  const leftMm = isNew ? { leftMm: bolt.usedMm - offMm + moreMm } : {};
  const { patch, still } = cutsMade(job, { cloth, bolt, upTo, ...leftMm });
  return { made: jobSchema.parse(patched(job, patch)), still };
}

/** Cuts of the sheet that hangs on the bolt: 0, then what each cut across leaves on it. */
function isOnBolt(bolt: BoltPlan, asked: BoltPlan["cuts"][number]): boolean {
  let hanging = 0;
  for (const one of bolt.cuts) {
    if (one.sheet !== hanging) continue;
    if (one === asked) return true;
    hanging = one.second;
  }
  return false;
}

describe("cuts that are made", () => {
  const drawn = fc.tuple(fc.nat(400), fc.nat(20), fc.nat(40));

  test("free their pieces, and the rest is planned from what is left, with no cloth lost or found", () => {
    fc.assert(
      fc.property(drawn, ([seed, boltAt, cutAt]) => {
        const job = workroomJob(seed);
        const before = cut(job);
        const bolts = boltsCut(before.cutting).filter(({ bolt }) => bolt.cuts.length > 0);
        fc.pre(bolts.length > 0);
        const { cloth, bolt } = bolts[boltAt % bolts.length] as (typeof bolts)[number];
        const upTo = 1 + (cutAt % bolt.cuts.length);
        const { made, still } = afterCuts(job, cloth, bolt, upTo);
        const after = cut(made);
        const done = (made.cutCloth ?? []).flatMap(({ pieces }) => pieces);
        // Every piece is cut already or still to be cut, and none both.
        const ids = [...done.map(({ piece }) => piece), ...piecesOf(after.cutting)].sort();
        expect(ids).toEqual(piecesOf(before.cutting));
        // As much cloth as there was: pieces, stock and waste; the waste is what the cuts made have lost.
        const isNew = bolt.boltId === cloth.newBoltId;
        const of = cloth.problem.bolts.find(({ id }) => id === bolt.boltId);
        const wholeMm = isNew ? bolt.usedMm : (of?.lengthMm ?? 0);
        const madeAlready = new Set((job.stock.cloth ?? []).map(({ id }) => id));
        const fromBolt = (made.stock.cloth ?? []).filter(
          ({ id, cloth: at }) => at === cloth.clothId && (!madeAlready.has(id) || id === bolt.boltId),
        );
        const left = fromBolt.map(({ widthMm = of?.widthMm ?? 0, lengthMm }) => ({ widthMm, lengthMm }));
        const wasteOf = bolt.leaves.filter(({ holds }) => holds.kind === "waste");
        const lost = (of?.widthMm ?? 0) * wholeMm - areaOf(left) - areaOf(done);
        expect(lost).toBeGreaterThan(-1e-3 * (of?.widthMm ?? 0) * wholeMm - 1);
        expect(lost).toBeLessThan(areaOf(wasteOf) + 10 * ((of?.widthMm ?? 0) + wholeMm) * 2);
        // The plan that was followed goes on: what is left is enough for all that was to come off it.
        const goesOn = new CuttingSearch(made, after.plan, [still]).plan();
        const newOf = (all: CuttingPlan) =>
          all.cloths.reduce((sum, one) => sum + (one.clothId === cloth.clothId ? newClothMm(one) : 0), 0);
        expect(newOf(goesOn)).toBeLessThanOrEqual((isNew ? 0 : newOf(before.cutting)) + 1);
        expectOneLotEach(after.cutting, made.cutCloth ?? [], made.stock.cloth ?? []);
        // Nothing of what was planned is out of reach: the plan as it was still fits on what is left.
        for (const { answer } of after.cutting.cloths)
          expect("bolts" in answer ? "" : answer.status).toBe("");
      }),
      { numRuns: 40 },
    );
  });

  test("all of them leave nothing to cut and nothing to buy, and the cloth that was bought stays in the price", () => {
    const job = workroomJob(3);
    const before = cut(job);
    let now = job;
    for (let rounds = 0; rounds < 60; rounds++) {
      const [next] = boltsCut(cut(now).cutting).filter(({ bolt }) => bolt.placements.length > 0);
      if (next === undefined) break;
      now = afterCuts(now, next.cloth, next.bolt, next.bolt.cuts.length).made;
    }
    const after = cut(now);
    expect(piecesOf(after.cutting)).toEqual([]);
    for (const cloth of before.cutting.cloths) {
      const line = (plan: typeof after.plan) =>
        plan.cost.shopping.find(({ id }) => id === `cloth-${cloth.clothId}`);
      expect(line(after.plan)?.quantity).toBe(0);
      const boughtMm = now.cutCloth?.find((one) => one.cloth === cloth.clothId)?.boughtMm;
      expect(boughtMm ?? 0).toBeCloseTo(newClothMm(cloth), 0);
    }
  });

  test("note what was cut off a bolt in stock: with what is left of it, that is the bolt", () => {
    const bare = workroomJob(3);
    const clothId = cut(bare).cutting.cloths[0]?.clothId ?? "";
    const bolt = { id: "bolt", cloth: clothId, lengthMm: 6000 };
    const job = jobSchema.parse({ ...bare, stock: { cloth: [bolt] } });
    const found = boltsCut(cut(job).cutting).find((one) => one.bolt.boltId === bolt.id);
    if (found === undefined) throw new Error("the bolt is not cut");
    for (const upTo of [1, found.bolt.cuts.length]) {
      const { made } = afterCuts(job, found.cloth, found.bolt, upTo);
      const leftMm = made.stock.cloth?.find(({ id }) => id === bolt.id)?.lengthMm ?? 0;
      const [off] = made.cutCloth?.find(({ cloth }) => cloth === clothId)?.bolts ?? [];
      expect((off?.cutMm ?? 0) + leftMm).toBeCloseTo(bolt.lengthMm, 0);
    }
  });

  test("a bolt that turns out short is planned again from its true length", () => {
    const job = jobSchema.parse({ ...workroomJob(3), stock: {} });
    const { cutting } = cut(job);
    const found = boltsCut(cutting).find(({ bolt }) => bolt.cuts.length > 3 && bolt.placements.length > 2);
    if (found === undefined) throw new Error("no bolt");
    const { cloth, bolt } = found;
    const first = bolt.cuts.findIndex(({ direction }, at) => at > 0 && direction === "across") + 1;
    const goOn = (moreMm: number) => {
      const { made, still } = afterCuts(job, cloth, bolt, first, moreMm);
      const search = new CuttingSearch(made, plan(made), [still]);
      search.improve(300);
      return search.plan();
    };
    const newOf = (all: CuttingPlan) =>
      newClothMm(all.cloths.find(({ clothId }) => clothId === cloth.clothId) as ClothCutting);
    expect(newOf(goOn(0))).toBe(0);
    expect(newOf(goOn(-40))).toBeGreaterThan(0);
  });

  test("bind the rest of their shade to their dye lot; what that has not is told", () => {
    // On a short table each length is cut up before the next comes off.
    const job = jobSchema.parse({ ...workroomJob(3), stock: {}, cutting: { tableMm: 1000 } });
    const found = boltsCut(cut(job).cutting)
      .filter(({ bolt }) => bolt.cuts.length > 3)
      .find(({ cloth, bolt }) => splitShade(cloth, bolt) !== undefined);
    if (found === undefined) throw new Error("no shade of two panels");
    const { cloth, bolt } = found;
    const { upTo, group, shade } = splitShade(cloth, bolt) as SplitShade;
    const enough = cut(afterCuts(job, cloth, bolt, upTo).made);
    expect(lotFindings(enough)).toEqual([]);
    // The bolt ended where the last cut was made.
    const none = cut(jobSchema.parse(patched(job, cutsMade(job, { cloth, bolt, upTo, leftMm: 0 }).patch)));
    const text = lotFindings(none).find((one) => one.startsWith(shade)) ?? "";
    expect(text).toMatch(/cut from the dye lot “.*, bought for this job”.* Ask for more of that lot/);
    const again = none.cutting.cloths.find(({ clothId }) => clothId === cloth.clothId);
    const other = again && "bolts" in again.answer ? again.answer.otherLots : [];
    expect(other?.map(({ lotGroup }) => lotGroup)).toContain(group);
  });

  test("a piece that was cut and whose shade has grown since is told", () => {
    const job = workroomJob(3);
    const { cutting } = cut(job);
    const [{ cloth, bolt }] = boltsCut(cutting) as [{ cloth: ClothCutting; bolt: BoltPlan }];
    const { made } = afterCuts(job, cloth, bolt, bolt.cuts.length);
    expect(cut(made).plan.findings.filter(({ id }) => id === "cutting.cut-differs")).toEqual([]);
    const grown = structuredClone(made);
    for (const { windows } of grown.rooms)
      for (const { opening } of windows) opening.heightsMm = opening.heightsMm.map((mm) => mm + 50);
    const texts = cut(grown).plan.findings.filter(({ id }) => id === "cutting.cut-differs");
    expect(texts.length).toBeGreaterThan(0);
    for (const { severity, text } of texts) {
      expect(severity).toBe("fix");
      expect(text).toMatch(/ was cut .* and should be .* too small now/);
    }
  });

  test("no such cut is a fault", () => {
    const job = workroomJob(3);
    const [{ cloth, bolt }] = boltsCut(cut(job).cutting) as [{ cloth: ClothCutting; bolt: BoltPlan }];
    expect(() => cutsMade(job, { cloth, bolt, upTo: 999 })).toThrow("invalid cut number: 999");
  });
});

interface SplitShade {
  upTo: number;
  group: string;
  shade: string;
}

/** A cut after which some pieces of what is seen of a shade are free and others are not. */
function splitShade({ problem }: ClothCutting, bolt: BoltPlan): SplitShade | undefined {
  const pieces = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  const free = (upTo: number) => {
    const open = new Set([0]);
    for (const { number, sheet, first, second } of bolt.cuts) {
      if (number > upTo) break;
      open.delete(sheet);
      open.add(first).add(second);
    }
    return new Set(
      bolt.leaves.flatMap(({ sheet, holds }) =>
        holds.kind === "piece" && open.has(sheet) ? [holds.pieceId] : [],
      ),
    );
  };
  for (const { number } of bolt.cuts) {
    const cutNow = free(number);
    for (const { id, lotGroup, shade } of pieces.values()) {
      const isSplit =
        cutNow.has(id) &&
        problem.pieces.some((other) => other.lotGroup === lotGroup && !cutNow.has(other.id));
      if (lotGroup !== undefined && isSplit) return { upTo: number, group: lotGroup, shade };
    }
  }
  return undefined;
}

const lotFindings = ({ plan }: ReturnType<typeof cut>) =>
  plan.findings.filter(({ id }) => id === "cutting.other-lot").map(({ text }) => text);

/** What is seen of a shade and still to be cut comes from the lot of what is cut of it. */
function expectOneLotEach(
  { cloths }: CuttingPlan,
  cutCloth: NonNullable<Job["cutCloth"]>,
  stock: NonNullable<Job["stock"]["cloth"]>,
): void {
  for (const { clothId, answer, problem } of cloths) {
    if (!("bolts" in answer) || answer.otherLots !== undefined) continue;
    const lots = new Map(
      cutCloth
        .filter(({ cloth }) => cloth === clothId)
        .flatMap(({ pieces }) => pieces.map(({ piece, lot }) => [piece, lot])),
    );
    const groups = new Map(problem.pieces.map(({ id, lotGroup }) => [id, lotGroup]));
    for (const { boltId, placements } of answer.bolts) {
      const lot = stock.find(({ id }) => id === boltId)?.lot;
      for (const { pieceId } of placements) {
        const group = groups.get(pieceId);
        // A group goes by the id of its shade, with which the ids of its pieces begin.
        const before = [...lots].find(([id]) => group !== undefined && id?.startsWith(`${group}/face`));
        if (before !== undefined) expect([pieceId, lot]).toEqual([pieceId, before[1]]);
      }
    }
  }
}

describe("a sheet cut out of a printed bolt", () => {
  test("begins its repeat where the bolt has it: what lies right on one lies right on the other", () => {
    const tenths = (min: number, max: number) =>
      fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
    fc.assert(
      fc.property(
        fc.record({
          alongMm: fc.constantFrom(320, 640.4, 250),
          acrossMm: fc.constantFrom(150, 333.2, 700),
          match: fc.constantFrom("straight" as const, "half-drop" as const),
        }),
        tenths(0, 300),
        tenths(0, 140),
        tenths(0, 900),
        tenths(0, 2000),
        tenths(0, 100),
        tenths(0, 100),
        (repeat, rowMm, columnMm, sheetX, sheetY, startX, startY) => {
          const problem = onePiece(repeat, { rowMm, columnMm }, { alongMm: startY, acrossMm: startX });
          const wish: Placement = {
            pieceId: "p",
            xMm: sheetX + 400,
            yMm: sheetY + 400,
            widthMm: 100,
            lengthMm: 100,
            turn: 0,
          };
          const cloth = { problem } as unknown as ClothCutting;
          const there = snappedToRepeat(cloth, "b", wish);
          expect(faultsAt(problem, there)).toEqual([]);
          const begins = repeatOf(cloth, "b", { xMm: sheetX, yMm: sheetY });
          const sheet = onePiece(
            repeat,
            { rowMm: begins.repeatStartMm ?? 0, columnMm: begins.columnStartMm ?? columnMm },
            { alongMm: startY, acrossMm: startX },
          );
          expect(faultsAt(sheet, { ...there, xMm: there.xMm - sheetX, yMm: there.yMm - sheetY })).toEqual([]);
        },
      ),
    );
  });
});

function onePiece(
  repeat: NonNullable<ClothProblem["repeat"]>,
  phases: { rowMm: number; columnMm: number },
  start: { alongMm: number; acrossMm: number },
): ClothProblem {
  return {
    id: "print",
    bolts: [{ id: "b", remnant: false, widthMm: 3000, flaws: [], costPerMm: 1, ...phases }],
    pieces: [
      { id: "p", shade: "s", part: "p", widthMm: 100, lengthMm: 100, grain: "fixed", nap: "one-way", start },
    ],
    repeat,
    gapMm: 0,
    cutting: { kind: "free" },
    keep: { widthMm: 100, lengthMm: 100 },
    seed: 1,
  };
}

const faultsAt = (problem: ClothProblem, placement: Placement) =>
  planByHand(problem, [{ boltId: "b", placements: [placement] }], { cost: 0, which: "area" }).faults;

describe("pieces laid by hand in a job", () => {
  test("lie there in the cutting plan until they are let go", () => {
    const job = workroomJob(3);
    const { cutting } = cut(job);
    const [{ cloth, bolt }] = boltsCut(cutting) as [{ cloth: ClothCutting; bolt: BoltPlan }];
    const [first] = bolt.placements as [Placement];
    const placement = snappedToRepeat(cloth, bolt.boltId, { ...first, yMm: first.yMm + 700 });
    const held = jobSchema.parse(patched(job, heldPatch(job, cloth, [{ boltId: bolt.boltId, placement }])));
    const after = cut(held);
    const laid = boltsCut(after.cutting).flatMap((one) => one.bolt.placements);
    expect(laid.find(({ pieceId }) => pieceId === first.pieceId)).toMatchObject({
      xMm: expect.closeTo(placement.xMm, 1),
      yMm: expect.closeTo(placement.yMm, 1),
    });
    expect(after.plan.findings.filter(({ id }) => id === "cutting.not-where-laid")).toEqual([]);
    expect(patched(held, letGoPatch(held, cloth.clothId, first.pieceId)).laidPieces).toBeUndefined();
  });

  test("that cannot stay are told by name, and the rest is cut without them", () => {
    const job = workroomJob(3);
    const { cutting } = cut(job);
    const [{ cloth, bolt }] = boltsCut(cutting) as [{ cloth: ClothCutting; bolt: BoltPlan }];
    const [first] = bolt.placements as [Placement];
    const placement = { ...first, xMm: 19_000 };
    const after = cut(
      jobSchema.parse(patched(job, heldPatch(job, cloth, [{ boltId: bolt.boltId, placement }]))),
    );
    const [finding] = after.plan.findings.filter(({ id }) => id === "cutting.not-where-laid");
    const piece = cloth.problem.pieces.find(({ id }) => id === first.pieceId);
    expect(finding?.text).toContain(`${piece?.shade}: ${piece?.part} does not lie where it was laid by hand`);
    expect(piecesOf(after.cutting)).toEqual(piecesOf(cutting));
  });
});
