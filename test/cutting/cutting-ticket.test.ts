import { describe, expect, it } from "vitest";
import { drawBoltPlan, drawBoltStretches } from "../../src/drawing/index.ts";
import { heldStock, type Job, jobSchema, stockPieces } from "../../src/job/index.ts";
import {
  allCutPatch,
  type CuttingPlan,
  cuttingSavings,
  cuttingTicket,
  followCuts,
  newClothMm,
  type Plan,
  plan,
  planCutting,
  stockAfter,
} from "../../src/plan/index.ts";
import { patched } from "../../src/plan/patched.ts";
import { cuttingLists, toCsv } from "../../src/tables/index.ts";
import { parseLength } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";
import { workroomJob } from "./workroom-jobs.ts";

const THREE: [widthMm: number, heightMm: number][] = [
  [900, 1500],
  [1100, 1250],
  [760, 2000],
];

function jobOf(sizes: readonly [widthMm: number, heightMm: number][]): Job {
  return jobWith(
    {},
    {
      units: { system: "metric", ruler: "1 mm" },
      cloths: [
        { id: "face", name: "Face", usableWidthMm: 1400, massGsm: 200, pricePerM: 20 },
        { id: "back", name: "Back", usableWidthMm: 1370, massGsm: 150, pricePerM: 8 },
      ],
      stock: {
        cloth: [
          {
            id: "end",
            name: "End",
            cloth: "back",
            lengthMm: 3200,
            lot: "7",
            flaws: [{ fromMm: 3000, lengthMm: 50 }],
          },
        ],
        lengths: [{ id: "stick", part: "board-1x2", lengthMm: 1300 }],
      },
      rooms: [
        {
          id: "r",
          name: "Room",
          windows: sizes.map(([widthMm, heightMm], i) => ({
            id: `w${i}`,
            name: `Window ${i}`,
            opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
            shade: { face: "face", lining: "back", mount: "to-size" as const },
          })),
        },
      ],
    },
  );
}

/** Short enough to lie across the bolt: sideways their linings take their width of it instead of their length. */
const SHORT: typeof THREE = [
  [900, 1200],
  [950, 1150],
];

/** More than the plan takes by a length worth keeping. */
const FACE_BOUGHT_MM = 9000;

const job = jobOf(THREE);
const cutting = planCutting(job, plan(job), 500);

function boltsOf({ cloths }: CuttingPlan) {
  return cloths.flatMap((cloth) =>
    "bolts" in cloth.answer
      ? cloth.answer.bolts.map((bolt) => {
          const of = cloth.problem.bolts.find(({ id }) => id === bolt.boltId);
          if (of === undefined) throw new Error("no bolt");
          return { cloth, bolt, of };
        })
      : [],
  );
}

describe("a cutting ticket", () => {
  it("names the cut that set free what is cut again, whichever hand holds the shears", () => {
    let again = 0;
    for (const leftHanded of [false, true]) {
      const held = {
        ...jobOf([...THREE, ...SHORT]),
        cutting: { hand: leftHanded ? ("left" as const) : ("right" as const) },
      };
      const planned = planCutting(held, plan(held), 500);
      for (const { cloth, bolt, of } of boltsOf(planned)) {
        const followed = followCuts(of, bolt);
        for (const { cut, how } of cuttingTicket(cloth, bolt, planned.units)) {
          const named = / of cut (\d+),/.exec(how)?.[1];
          const maker = followed.find(
            ({ cut: { first, second } }) => first === cut.sheet || second === cut.sheet,
          );
          const isOnBolt = followed.find(({ cut: { number } }) => number === cut.number)?.wholeWidth;
          if (maker === undefined || isOnBolt) {
            expect(named, how).toBeUndefined();
            continue;
          }
          again++;
          expect(Number(named), how).toBe(maker.cut.number);
          const { first, second, direction } = maker.cut;
          const both = [first, second].every((sheet) => bolt.cuts.some((one) => one.sheet === sheet));
          const side = /^(?:Along|Across) the (lower|upper|left|right) piece/.exec(how)?.[1];
          if (maker.wholeWidth || !both) expect(side, how).toBeUndefined();
          else {
            // From the beginning of the bolt, and from its left selvedge: before a left-handed cutter it is turned.
            const isNear = (first === cut.sheet) !== leftHanded;
            expect(side, how).toBe(
              { across: ["right", "left"], along: ["upper", "lower"] }[direction][Number(isNear)],
            );
          }
        }
      }
    }
    expect(again).toBeGreaterThan(6);
  });

  // What is lost across plain cloth comes off last, in one strip: nobody cuts one away to reach a piece behind it.
  it("frees pieces from the selvedge before the cutter on", () => {
    let along = 0;
    for (const hand of ["right", "left"] as const) {
      const held = { ...jobOf([...THREE, ...SHORT]), cutting: { hand } };
      for (const { bolt, of } of boltsOf(planCutting(held, plan(held), 500))) {
        if (of.flaws.length > 0) continue;
        const cutAgain = new Set(bolt.cuts.map(({ sheet }) => sheet));
        const lost = new Set(
          bolt.leaves.filter(({ holds }) => holds.kind === "waste").map(({ sheet }) => sheet),
        );
        for (const { direction, first, second } of bolt.cuts) {
          if (direction !== "along") continue;
          along++;
          const [near, far] = hand === "left" ? [second, first] : [first, second];
          expect(lost.has(near), `cut along, ${cutAgain.has(far) ? "cut on" : "done"} behind it`).toBe(false);
        }
      }
    }
    expect(along).toBeGreaterThan(10);
  });

  it("measures each length from the cut before it across the bolt, whatever was cut between the two", () => {
    // A table of 2 m: after each length or two what lies there is cut up first.
    const short = { ...jobOf([...THREE, ...SHORT]), cutting: { tableMm: 2000 } };
    const planned = planCutting(short, plan(short), 200);
    const lines = boltsOf(planned).flatMap(({ cloth, bolt }) => {
      const ticket = cuttingTicket(cloth, bolt, planned.units);
      const across = ticket.filter(({ how }) => how.startsWith("Across the bolt"));
      return across.map(({ how }, i) => ({ how, before: across[i - 1]?.number }));
    });
    for (const { how, before } of lines)
      expect(how).toMatch(before === undefined ? / from its end$/ : new RegExp(` from cut ${before}$`));
    expect(lines.length).toBeGreaterThan(6);
  });

  it("sets every piece free once, and nothing else by that name", () => {
    for (const { cloth, bolt } of boltsOf(cutting)) {
      const freed = cuttingTicket(cloth, bolt, cutting.units).flatMap(({ frees }) => frees.split("; "));
      const names = bolt.placements.map(({ pieceId }) => {
        const piece = cloth.problem.pieces.find(({ id }) => id === pieceId);
        return `${piece?.shade}: ${piece?.part}`;
      });
      expect(freed.filter((one) => names.includes(one)).sort()).toEqual(names.sort());
    }
  });

  // Each check is read off a sheet as a maker would: what is cut off and what is left make up what was there.
  it("has check sums that come out, and never marks outside the sheet", () => {
    for (const { bolt, of } of boltsOf(cutting)) {
      for (const { markMm, beyondMm, sheet, cut, endless } of followCuts(of, bolt)) {
        expect(markMm).toBeGreaterThan(0);
        if (!endless) expect(beyondMm).toBeGreaterThan(0);
        const whole = cut.direction === "across" ? sheet.lengthMm : sheet.widthMm;
        expectNear(markMm + beyondMm, whole, 1e-6);
      }
    }
  });

  it("has check sums that come out by the ruler, and say of what is cut again what was left of it", () => {
    let sums = 0;
    const mmOf = (text: string) => {
      const read = parseLength(text, "in");
      return read.ok ? read.lengthMm : Number.NaN;
    };
    for (const seed of [3, 5, 8]) {
      for (const hand of ["right", "left"] as const) {
        const of = {
          ...workroomJob(seed),
          cutting: { hand },
          units: { system: "imperial", ruler: "1/8 in" } as const,
        };
        const planned = planCutting(of, plan(of), 100);
        for (const { cloth, bolt } of boltsOf(planned)) {
          for (const { check } of cuttingTicket(cloth, bolt, planned.units)) {
            const [, mark, beyond, whole] = /^(.+) \+ (.+) = (.+)$/.exec(check) ?? [];
            if (mark === undefined || beyond === undefined || whole === undefined) continue;
            sums++;
            expectNear(mmOf(mark) + mmOf(beyond), mmOf(whole), 1e-6, check);
          }
        }
      }
    }
    expect(sums).toBeGreaterThan(30);
  });

  it("says what the bolt measures after each cut across it: what is gone and what is left are its length", () => {
    const [held] = boltsOf(cutting).filter(({ of }) => of.lengthMm !== undefined);
    if (held === undefined) throw new Error("the end of the bolt is not used");
    const across = followCuts(held.of, held.bolt).filter(({ wholeWidth }) => wholeWidth);
    expect(across.length).toBeGreaterThan(0);
    for (const { cut } of across)
      expectNear(cut.atMm + (cut.boltLeftMm ?? Number.NaN), held.of.lengthMm ?? 0, 0.11);
  });
});

describe("the bolt drawn", () => {
  it("has each piece at its size, each cut with its number, and measures that span what they say", () => {
    for (const { cloth, bolt } of boltsOf(cutting)) {
      const { primitives } = drawBoltPlan({ units: cutting.units, cutting: cloth, bolt });
      const tags = primitives.flatMap((one) =>
        one.kind === "marker" && one.shape === "tag" ? [Number(one.text)] : [],
      );
      const inside = bolt.cuts.filter(
        ({ atMm, direction }) => direction === "along" || atMm < bolt.usedMm + 0.05,
      );
      expect(tags.sort((a, b) => a - b)).toEqual(inside.map(({ number }) => number));
      for (const { pieceId, widthMm, lengthMm } of bolt.placements) {
        const area = primitives.find((one) => one.role === "faceCloth" && one.part === pieceId);
        if (area?.kind !== "polyline") throw new Error(`${pieceId} is not drawn`);
        const xs = area.points.map(([x]) => x);
        const ys = area.points.map(([, y]) => y);
        expectNear(Math.max(...xs) - Math.min(...xs), lengthMm, 1e-6);
        expectNear(Math.max(...ys) - Math.min(...ys), widthMm, 1e-6);
      }
    }
  });

  it("in stretches covers the bolt without a gap, and cuts through no piece", () => {
    for (const { cloth, bolt } of boltsOf(cutting)) {
      const input = { units: cutting.units, cutting: cloth, bolt };
      const drawings = [...drawBoltStretches(input, 2000)];
      const stretches = drawings.map(({ primitives }) => {
        const ground = primitives.find(({ role }) => role === "clothOnBolt");
        if (ground?.kind !== "polyline") throw new Error("no cloth is drawn");
        const xs = ground.points.map(([x]) => x);
        return { fromMm: Math.min(...xs), toMm: Math.max(...xs) };
      });
      const drawn = new Set(
        drawings.flatMap(({ primitives }) =>
          primitives.flatMap(({ role, part }) => (role === "faceCloth" ? [part] : [])),
        ),
      );
      expect(drawn.size).toBe(bolt.placements.length);
      expect(stretches[0]?.fromMm).toBe(0);
      expectNear(stretches.at(-1)?.toMm ?? 0, bolt.usedMm, 0.11);
      for (const [i, { fromMm }] of stretches.slice(1).entries()) expect(fromMm).toBe(stretches[i]?.toMm);
      for (const { fromMm } of stretches.slice(1)) {
        for (const { yMm, lengthMm } of bolt.placements) {
          expect(yMm < fromMm - 0.05 && yMm + lengthMm > fromMm + 0.05).toBe(false);
        }
      }
    }
  });
});

describe("a job of which all is cut", () => {
  const after = patched(
    job,
    allCutPatch(job, cutting, {
      boughtMm: (clothId) => (clothId === "face" ? FACE_BOUGHT_MM : undefined),
      isOfShop: ({ id }) => id === "end",
      isShared: () => false,
      newId: fresh(),
    }),
  );
  const left = after.leftOver?.cloth ?? [];

  it("has no more to cut, and keeps what it bought and its lots in its record", () => {
    const then = planCutting(after, plan(after), 50);
    expect(then.cloths.flatMap(({ problem }) => problem.pieces)).toEqual([]);
    const cut = after.cutCloth?.find(({ cloth }) => cloth === "face");
    expect(cut?.boughtMm).toBe(FACE_BOUGHT_MM);
    expect(new Set(cut?.pieces.map(({ lot }) => lot))).toEqual(new Set(["Face, bought for this job"]));
    expect(after.stock.cloth).toEqual([]);
    expect(jobSchema.parse(after)).toEqual(after);
  });

  it("lays every remnant and the end of new cloth into the shop with its lot, under ids of their own", () => {
    const remnants = boltsOf(cutting).flatMap(({ bolt }) => bolt.remnants.map(({ name }) => name));
    const names = left.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining([...remnants, "Face, left on the bolt"]));
    expect(left.every(({ lot }) => lot !== undefined)).toBe(true);
    const end = left.find(({ name }) => name === "Face, left on the bolt");
    const used = boltsOf(cutting).find(({ cloth }) => cloth.clothId === "face")?.bolt.usedMm ?? 0;
    expectNear(end?.lengthMm ?? 0, FACE_BOUGHT_MM - used, 0.11);
    expect(end?.widthMm).toBeUndefined();
    const own = stockPieces(after.leftOver ?? {}).filter(({ id }) => id !== "end");
    expect(own.length).toBeGreaterThan(1);
    expect(own.every(({ id }) => id.startsWith("fresh-"))).toBe(true);
  });

  it("has as much cloth in its pieces, in what is left and in what is waste as it had before", () => {
    const end = left.find(({ id }) => id === "end");
    const off = after.cutCloth?.flatMap(({ bolts = [] }) => bolts).find(({ bolt }) => bolt === "end");
    expectNear((end?.lengthMm ?? 0) + (off?.cutMm ?? 0), 3200, 0.11);
  });

  it("lists its lengths as they were cut, and their offcuts in the shop", () => {
    expect(after.stock.lengths).toEqual(job.stock.lengths);
    const offcuts = stockAfter(job, cutting).lengths ?? [];
    expect(after.leftOver?.lengths?.map(({ lengthMm }) => lengthMm)).toEqual(
      offcuts.map(({ lengthMm }) => lengthMm),
    );
    expect(heldStock(after).lengths).toEqual([]);
  });
});

function fresh(): () => string {
  let n = 0;
  return () => `fresh-${n++}`;
}

describe("the stock when all is cut", () => {
  const after = stockAfter(job, cutting);

  it("holds each remnant by name, and the old bolt by what is left of it, its flaw nearer to the end", () => {
    const remnants = boltsOf(cutting).flatMap(({ bolt }) => bolt.remnants);
    expect(after.cloth?.filter(({ name }) => remnants.some((one) => one.name === name)).length).toBe(
      remnants.length,
    );
    const end = after.cloth?.find(({ id }) => id === "end");
    const used = boltsOf(cutting).find(({ bolt }) => bolt.boltId === "end")?.bolt.usedMm ?? 0;
    expect(used).toBeGreaterThan(0);
    if (3200 - used < 500) expect(end).toBeUndefined();
    else {
      expectNear(end?.lengthMm ?? 0, 3200 - used, 0.11);
      expectNear(end?.flaws?.[0]?.fromMm ?? 0, 3000 - used, 0.11);
    }
  });

  it("keeps each id once", () => {
    const ids = [...(after.cloth ?? []), ...(after.lengths ?? [])].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

it("lists have a cell for every heading and pass as CSV", () => {
  for (const list of cuttingLists(cutting)) {
    for (const row of list.rows) expect(row, list.name).toHaveLength(list.header.length);
    expect(toCsv(list)).toContain(list.header[0]);
  }
  expect(cuttingLists(cutting).find(({ name }) => name === "cutting-pieces")?.rows.length).toBe(
    cutting.cloths.reduce((sum, { problem }) => sum + problem.pieces.length, 0),
  );
});

describe("what would save cloth", () => {
  const told = (of: Job) => [...cuttingSavings(of)].flatMap((saving) => saving ?? []);
  const savings = told(job);
  const faults = ({ findings, shades }: Plan) =>
    [...findings, ...shades.flatMap((shade) => shade.findings)]
      .filter(({ severity, id }) => (severity === "stop" || severity === "fix") && id !== "cost.cloth-short")
      .map(({ id, shadeId }) => `${id} ${shadeId}`);

  it("is there when the change is made, just as much as was promised, and nothing else gets worse", () => {
    for (const of of [job, jobOf(SHORT), jobOf([...SHORT, ...THREE])]) {
      const before = plan(of);
      const was = planCutting(of, before);
      for (const { savedMm, patch, clothId } of told(of)) {
        if (patch === undefined) continue;
        const changed = patched(of, patch);
        const after = plan(changed);
        const is = planCutting(changed, after);
        const taken = ({ cloths }: CuttingPlan, id: string) =>
          cloths.filter((cloth) => cloth.clothId === id).reduce((sum, cloth) => sum + newClothMm(cloth), 0);
        expectNear(taken(was, clothId) - taken(is, clothId), savedMm, 1e-6);
        for (const cloth of was.cloths)
          expect(taken(is, cloth.clothId)).toBeLessThan(taken(was, cloth.clothId) + 20.1);
        expect(faults(after).filter((fault) => !faults(before).includes(fault))).toEqual([]);
      }
    }
  });

  it("is not hidden by a plan of the job that had many more tries", () => {
    const of = workroomJob(3);
    const long = planCutting(of, plan(of), 2000);
    const found = [...cuttingSavings(of, 300, long)].flatMap((one) => one ?? []);
    const narrower = found.find(({ id }) => id === "hem-bottomTurnMm");
    const changed = patched(of, narrower?.patch ?? []);
    const taken = ({ cloths }: CuttingPlan) =>
      cloths
        .filter(({ clothId }) => clothId === narrower?.clothId)
        .reduce((mm, one) => mm + newClothMm(one), 0);
    const is = taken(planCutting(changed, plan(changed), 2000));
    expect(narrower?.savedMm).toBeGreaterThan(20);
    expect(taken(long) - is).toBeGreaterThan((narrower?.savedMm ?? 0) - 0.1);
  });

  it("turns the lining sideways where all of it may lie so, and not where one is too long for that", () => {
    const ofNew = (sizes: typeof THREE) => ({ ...jobOf(sizes), stock: {} });
    expect(told(ofNew(SHORT)).map(({ id }) => id)).toContain("turn-lining");
    expect(told(ofNew([...SHORT, ...THREE])).map(({ id }) => id)).not.toContain("turn-lining");
  });

  it("tells of a wider cloth", () => {
    // Cloth 2.8 m wide takes these linings two and three abreast: one of the usual widths must save area.
    expect(savings.some(({ id }) => id.startsWith("width-back"))).toBe(true);
  });

  it("is nothing against a plan that takes no cloth at all", () => {
    const none = { ...cutting, cloths: cutting.cloths.map((cloth) => ({ ...cloth, newBoltId: "none" })) };
    const found = [...cuttingSavings(job, 100, none)].flatMap((saving) => saving ?? []);
    expect(found.filter(({ patch }) => patch !== undefined)).toEqual([]);
  });
});
