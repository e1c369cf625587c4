import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type BoltPlan,
  type ClothCutPlan,
  type ClothProblem,
  type Cut,
  solveCloth,
  verifyCloth,
} from "../../src/cutting/index.ts";
import { drawBoltPlan } from "../../src/drawing/index.ts";
import { type ClothCutting, cuttingTicket, plan, planCutting } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { anyCloth } from "./any-cloth.ts";
import { workroomJob } from "./workroom-jobs.ts";

const TRIES = 60;

function cutOf(problem: ClothProblem): ClothCutPlan {
  const answer = solveCloth(problem, TRIES);
  fc.pre("bolts" in answer);
  return answer as ClothCutPlan;
}

/** How often the direction changes from cut to cut. */
function turnsOf(cuts: readonly Pick<Cut, "direction">[]): number {
  return cuts.filter(({ direction }, at) => at > 0 && direction !== cuts[at - 1]?.direction).length;
}

/** The fewest turns of any order in which each sheet is there before it is cut: all orders are tried, turn by turn. */
function fewestTurns(cuts: readonly Cut[]): number {
  const all = 2 ** cuts.length - 1;
  const came = cuts.map(({ sheet }) =>
    cuts.findIndex(({ first, second }) => first === sheet || second === sheet),
  );
  const open = (done: number) =>
    cuts.flatMap((cut, at) => {
      const before = came[at] as number;
      return (done & (1 << at)) === 0 && (before < 0 || (done & (1 << before)) !== 0) ? [{ cut, at }] : [];
    });
  let reached = new Map<string, { done: number; last: string }>([["0", { done: 0, last: "" }]]);
  for (let turns = 0; ; turns++) {
    const seen = new Map(reached);
    for (const { done, last } of seen.values()) {
      if (done === all) return turns;
      for (const { cut, at } of open(done)) {
        if (last !== "" && cut.direction !== last) continue;
        const next = { done: done | (1 << at), last: cut.direction };
        // A map is walked on as it grows.
        seen.set(`${next.done} ${next.last}`, next);
      }
    }
    if ([...seen.values()].some(({ done }) => done === all)) return turns;
    reached = new Map([...seen].map(([, { done }]) => [`${done}`, { done, last: "" }]));
  }
}

/** Lengths that lie on the table, cut off and still to be cut on, after each cut off the bolt, mm. */
function onTable({ cuts }: BoltPlan): number[][] {
  const owner = new Map<number, number>();
  const lengths = new Map<number, number>();
  const lastCutOf = new Map<number, number>();
  const offs: number[] = [];
  let hanging = 0;
  let fromMm = 0;
  for (const { number, sheet, first, second, direction, atMm } of cuts) {
    if (sheet === hanging && direction === "across") {
      owner.set(first, first);
      lengths.set(first, atMm - fromMm);
      offs.push(number);
      [fromMm, hanging] = [atMm, second];
      continue;
    }
    const of = owner.get(sheet);
    if (of === undefined) continue;
    owner.set(first, of).set(second, of);
    lastCutOf.set(of, number);
  }
  const offAt = new Map([...lengths.keys()].map((sheet, n) => [sheet, offs[n] ?? 0]));
  return offs.map((now) =>
    [...lengths].flatMap(([sheet, mm]) =>
      (offAt.get(sheet) ?? 0) <= now && (lastCutOf.get(sheet) ?? 0) > now ? [mm] : [],
    ),
  );
}

describe("the order of cuts at the table", () => {
  const few = anyCloth.map((problem) => ({ ...problem, pieces: problem.pieces.slice(0, 6) }));

  test("turns the cloth as seldom as any order, where all of it lies on the table", () => {
    fc.assert(
      fc.property(few, (problem) => {
        const { tableMm: _, ...wide } = problem;
        for (const { cuts, usedMm } of cutOf({ ...wide, tableMm: 1e6 }).bolts) {
          fc.pre(cuts.length <= 12 && usedMm < 1e5);
          expect(turnsOf(cuts)).toBe(fewestTurns(cuts));
        }
      }),
      { numRuns: 60 },
    );
  });

  test("takes no more off the bolt at a time than lies on the table, or one length", () => {
    fc.assert(
      fc.property(anyCloth, (problem) => {
        for (const bolt of cutOf({ ...problem, tableMm: 1200, table: {} }).bolts) {
          for (const lengths of onTable(bolt)) {
            const allMm = lengths.reduce((sum, mm) => sum + mm, 0);
            expect(lengths.length < 2 || allMm <= 1200.02).toBe(true);
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});

const windows = Array.from({ length: 6 }, (_, n) => ({
  id: `w${n}`,
  name: `Window ${n}`,
  opening: { widthsMm: [n < 4 ? 620 : 700], heightsMm: [n % 2 === 0 ? 1500 : 1240] },
  shade: { face: "face", lining: "back", mount: "to-size" as const },
}));
const cloths = [
  { id: "face", name: "Face", usableWidthMm: 1400, massGsm: 200 },
  { id: "back", name: "Back", usableWidthMm: 1400, massGsm: 150 },
];

function laidOut(cutting: { spread?: "single" | "doubled"; hand?: "left" | "right"; toleranceMm?: number }) {
  const job = jobWith(
    {},
    { units: { system: "metric", ruler: "1 mm" }, cloths, cutting, rooms: [{ id: "r", name: "R", windows }] },
  );
  const made = planCutting(job, plan(job), 300);
  return made.cloths.flatMap((cloth) =>
    "bolts" in cloth.answer ? cloth.answer.bolts.map((bolt) => ({ cloth, bolt, units: made.units })) : [],
  );
}

const ticketOf = ({ cloth, bolt, units }: ReturnType<typeof laidOut>[number]) =>
  cuttingTicket(cloth, bolt, units);

describe("cloth doubled", () => {
  test("is cut at one go where two lengths are alike, takes no more cloth, and sets every piece free", () => {
    const single = laidOut({});
    const doubled = laidOut({ spread: "doubled" });
    const lines = (all: typeof single) => all.flatMap(ticketOf);
    const both = lines(doubled).filter(({ how }) => how.endsWith("through both lengths"));
    expect(both.length).toBeGreaterThan(0);
    expect(lines(doubled).length).toBe(lines(single).length - both.length);
    const laidOn = lines(doubled).filter(({ how }) => how.endsWith("lay it on the length before"));
    expect(laidOn.length).toBeGreaterThan(0);
    for (const [n, { cloth, bolt }] of doubled.entries()) {
      expect(bolt.usedMm).toBeCloseTo(single[n]?.bolt.usedMm ?? 0, 6);
      const freed = ticketOf(doubled[n] as (typeof doubled)[number]).flatMap(({ frees }) =>
        frees.split("; "),
      );
      for (const { shade, part } of cloth.problem.pieces)
        expect(freed.filter((one) => one === `${shade}: ${part}`)).toHaveLength(1);
    }
    expect(lines(single).some(({ how }) => how.includes("lengths"))).toBe(false);
  });

  test("is not said of cuts that are none: the check sees it", () => {
    const [first] = laidOut({ spread: "doubled" }).filter(({ bolt }) => bolt.cuts.some((cut) => cut.withCut));
    if (first === undefined) throw new Error("nothing doubled");
    const { cloth, bolt } = first;
    const at = bolt.cuts.findIndex(({ withCut }) => withCut === undefined && bolt.cuts[0] !== undefined) + 1;
    const cuts = bolt.cuts.map((cut, n) =>
      n === at && cut.withCut === undefined ? { ...cut, withCut: n } : cut,
    );
    const wrong = { ...(cloth.answer as ClothCutPlan), bolts: [{ ...bolt, cuts }] };
    expect(verifyCloth(cloth.problem, wrong).join()).toMatch(/is not one with the cut before/);
  });

  test("keeps a print single: it must be seen", () => {
    for (let seed = 1; seed < 12; seed++) {
      const job = workroomJob(seed);
      const { cloths: all } = planCutting({ ...job, cutting: { spread: "doubled" } }, plan(job), 20);
      for (const { problem, answer } of all) {
        if (problem.repeat === undefined || !("bolts" in answer)) continue;
        expect(
          answer.bolts.flatMap(({ cuts }) => cuts.filter(({ withCut }) => withCut !== undefined)),
        ).toEqual([]);
      }
    }
  });
});

describe("a left-handed cutter", () => {
  test("has the same lengths closed up to his own selvedge, turned half round, and marks from the edge before him", () => {
    const right = laidOut({});
    const left = laidOut({ hand: "left" });
    const alongOf = ({ bolt }: (typeof left)[number]) =>
      bolt.placements.map(({ xMm: _, ...rest }) => JSON.stringify(rest)).sort();
    expect(left.map(alongOf)).toEqual(right.map(alongOf));
    for (const one of left) {
      const { problem } = one.cloth;
      const asRight = { ...problem, table: { ...problem.table, leftHanded: false } };
      const other = { ...one, cloth: { ...one.cloth, problem: asRight } };
      const widthMm = one.cloth.problem.bolts.find(({ id }) => id === one.bolt.boltId)?.widthMm ?? 0;
      const areas = (of: { cloth: ClothCutting; bolt: BoltPlan }) =>
        drawBoltPlan({ units: one.units, cutting: of.cloth, bolt: of.bolt }).primitives.flatMap((shape) =>
          shape.kind === "polyline" && shape.role === "faceCloth" ? [shape.points] : [],
        );
      const sorted = (shapes: (readonly (readonly [number, number])[])[]) =>
        shapes
          .map((points) =>
            points
              .map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`)
              .sort()
              .join(),
          )
          .sort();
      // Turned half round about the middle of the bolt's end: both signs change.
      const turned = areas(other).map((points) =>
        points.map(([x, y]): [number, number] => [0 - x, widthMm - y]),
      );
      expect(sorted(areas(one))).toEqual(sorted(turned));
      const sheets = new Map([[0, { fromMm: 0, toMm: widthMm }]]);
      const marks = new Map(ticketOf(one).map(({ number, how }) => [number, how]));
      for (const { number, direction, sheet, first, second, atMm } of one.bolt.cuts) {
        const { fromMm, toMm } = sheets.get(sheet) ?? { fromMm: 0, toMm: 0 };
        const along = direction === "along";
        sheets.set(first, { fromMm, toMm: along ? atMm : toMm });
        sheets.set(second, { fromMm: along ? atMm : fromMm, toMm });
        if (along)
          expect(marks.get(number)?.replace(/\s/g, " ")).toContain(
            `${Math.round(toMm - atMm)} mm from its lower edge`,
          );
        else expect(marks.get(number)).not.toContain("left end");
      }
    }
  });
});

test("each cut says how near to its line it is to be: what is not seen twice as far", () => {
  for (const one of laidOut({ toleranceMm: 2 })) {
    const within = new Set(ticketOf(one).map((line) => line.within.replace(/\s/g, " ")));
    // Of the lining’s cloth the board is covered, too, which is seen.
    expect(within).toEqual(new Set(one.cloth.clothId === "face" ? ["2 mm"] : ["2 mm", "4 mm"]));
  }
});
