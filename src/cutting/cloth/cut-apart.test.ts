import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearStretches, stretchStarts } from "./clear-stretches.ts";
import { closedUp } from "./close-up.ts";
import { inTableOrder } from "./cut-order.ts";
import { apart, type CutBlock, type CutSheet, cutTree } from "./cut-tree.ts";

/** A sheet cut at random, and the parts that are pieces: what is made so can be cut so. */
interface Cloth {
  sheet: CutBlock;
  blocks: CutBlock[];
}

/** How a sheet is cut: where, as shares of its size, and what becomes of the parts. */
type Splits = { shares: number[]; parts: Splits[] } | "piece" | "lost";

const splits: fc.Arbitrary<Splits> = fc.letrec<{ node: Splits; leaf: Splits; cut: Splits }>((tie) => ({
  leaf: fc.constantFrom<Splits>("piece", "piece", "piece", "lost"),
  cut: fc.record({
    shares: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 2, maxLength: 4 }),
    parts: fc.array(tie("node"), { minLength: 4, maxLength: 4 }),
  }),
  node: fc.oneof({ maxDepth: 3 }, tie("leaf"), tie("cut")),
})).cut;

function cutInto(sheet: CutBlock, how: Splits, isAcross: boolean): CutBlock[] {
  if (how === "lost") return [];
  if (how === "piece") return [sheet];
  const total = how.shares.reduce((a, b) => a + b, 0);
  const [from, to] = isAcross ? [sheet.y1, sheet.y2] : [sheet.x1, sheet.x2];
  let done = 0;
  return how.shares.flatMap((share, k) => {
    const a = from + Math.round(((to - from) * done) / total);
    done += share;
    const b = from + Math.round(((to - from) * done) / total);
    if (b <= a) return [];
    const part = isAcross ? { ...sheet, y1: a, y2: b } : { ...sheet, x1: a, x2: b };
    return cutInto(part, how.parts[k] ?? "lost", !isAcross);
  });
}

const SHEET: CutBlock = { x1: 0, x2: 600, y1: 0, y2: 1000 };
const cloth: fc.Arbitrary<Cloth> = splits.map((how) => ({ sheet: SHEET, blocks: cutInto(SHEET, how, true) }));
const many = fc.array(
  cloth.filter(({ blocks }) => blocks.length > 0),
  { minLength: 15, maxLength: 15 },
);

const areaOf = ({ x1, x2, y1, y2 }: CutBlock) => (x2 - x1) * (y2 - y1);
const isIn = (a: CutBlock, b: CutBlock) => a.x1 >= b.x1 && a.x2 <= b.x2 && a.y1 >= b.y1 && a.y2 <= b.y2;
const isSame = (a: CutBlock, b: CutBlock) => isIn(a, b) && isIn(b, a);

/** Follows the cuts from the whole sheet on: each parts its sheet in two, and at the end every piece is alone. */
function expectCutOut({ sheet, blocks }: Cloth, tree: CutSheet<CutBlock>, fromRight: boolean): number {
  expect(isSame(tree, sheet)).toBe(true);
  let deepest = 0;
  const found: CutBlock[] = [];
  const follow = (part: CutSheet<CutBlock>, stage: number, direction: string): void => {
    const { cut, first, second, block } = part;
    const within = blocks.filter((one) => isIn(one, part));
    if (cut === undefined) {
      expect([first, second]).toEqual([undefined, undefined]);
      expect(within.length).toBe(block === undefined ? 0 : 1);
      if (block) {
        expect(isSame(block, part)).toBe(true);
        found.push(block);
      }
      return;
    }
    if (!first || !second) throw new Error("a cut leaves two sheets");
    expect(block).toBeUndefined();
    const across = cut.direction === "across";
    expect([across ? first.y2 : first.x2, across ? second.y1 : second.x1]).toEqual([cut.at, cut.at]);
    expect(areaOf(first) + areaOf(second)).toBe(areaOf(part));
    for (const one of [first, second]) {
      expect(isIn(one, part)).toBe(true);
      expect(areaOf(one)).toBeGreaterThan(0);
    }
    expect(within.every((one) => isIn(one, first) || isIn(one, second))).toBe(true);
    const own = cut.direction === direction ? stage : stage + 1;
    if (cut.trim) expect(within).toHaveLength(1);
    else expect(cut.stage).toBe(own);
    if (!cut.trim) deepest = Math.max(deepest, own);
    // Columns come off at the cutter's hand.
    if (!across && !cut.trim && fromRight)
      expect(second.cut?.direction === "along" && !second.cut.trim).toBe(false);
    if (!cut.trim && !(fromRight && !across))
      expect(first.cut?.direction === cut.direction && !first.cut.trim).toBe(false);
    follow(first, own, cut.direction);
    follow(second, own, cut.direction);
  };
  follow(tree, 1, "across");
  expect(found).toHaveLength(blocks.length);
  return deepest;
}

/** The fewest stages by trying: all cuts of one direction, then each part in the other; undefined where none is free. */
function fewestStages(blocks: readonly CutBlock[], isAcross: boolean, isFirst = true): number {
  if (blocks.length < 2) return 0;
  const [start, end] = isAcross ? (["y1", "y2"] as const) : (["x1", "x2"] as const);
  const places = blocks.map((one) => one[end]);
  const cuts = places
    .filter((at) => blocks.every((one) => one[end] <= at || one[start] >= at))
    .sort((a, b) => a - b);
  const groups = [...new Set(blocks.map((one) => cuts.findIndex((at) => one[end] <= at)))].map((n) =>
    blocks.filter((one) => cuts.findIndex((at) => one[end] <= at) === n),
  );
  if (groups.length === 1 && !isFirst) throw new Error("stuck");
  return 1 + Math.max(...groups.map((group) => fewestStages(group, !isAcross, groups.length > 1)));
}

describe("cuts that set pieces free", () => {
  test("are found where pieces were cut so, in the fewest stages, each from edge to edge", () => {
    fc.assert(
      fc.property(many, fc.boolean(), (cases, fromRight) => {
        for (const one of cases) {
          const tree = cutTree(one.sheet, one.blocks, { direction: "across", sliver: 0, fromRight });
          if (tree === undefined) throw new Error("not cut");
          expect(expectCutOut(one, tree, fromRight)).toBeLessThanOrEqual(fewestStages(one.blocks, true));
        }
      }),
      { numRuns: 15 },
    );
  });

  test("are none where pieces hold each other: four round a fifth", () => {
    const box = (x1: number, x2: number, y1: number, y2: number): CutBlock => ({ x1, x2, y1, y2 });
    const wheel = [box(0, 2, 0, 1), box(2, 3, 0, 2), box(1, 3, 2, 3), box(0, 1, 1, 3), box(1, 2, 1, 2)];
    const way = { direction: "across", sliver: 0 } as const;
    expect(cutTree(box(0, 3, 0, 3), wheel, way)).toBeUndefined();
    expect(cutTree(box(0, 3, 0, 4), [...wheel, box(0, 3, 3, 4)], way)).toBeUndefined();
    expect(
      cutTree(box(0, 4, 0, 3), [...wheel, box(3, 4, 0, 3)], { ...way, fromRight: true }),
    ).toBeUndefined();
    expect(cutTree(box(0, 3, 0, 3), wheel.slice(0, 4), way)).toBeUndefined();
    expect(cutTree(box(0, 3, 0, 3), wheel.slice(1), way)).toBeDefined();
    expect(cutTree(box(0, 3, 0, 3), [], way)).toEqual(box(0, 3, 0, 3));
  });

  test("do not take slivers off: what is no wider stays on its piece", () => {
    const sheet = { x1: 0, x2: 100, y1: 0, y2: 200 };
    const cuts = (block: CutBlock) => {
      const tree = cutTree(sheet, [block], { direction: "across", sliver: 2 });
      const list: string[] = [];
      const visit = (part: CutSheet<CutBlock> | undefined): void => {
        if (!part?.cut) return;
        list.push(`${part.cut.direction} ${part.cut.at} ${part.cut.stage}${part.cut.trim ? " trim" : ""}`);
        visit(part.first);
        visit(part.second);
      };
      visit(tree);
      return list;
    };
    expect(cuts({ x1: 2, x2: 98, y1: 2, y2: 198 })).toEqual([]);
    expect(cuts({ x1: 3, x2: 98, y1: 2, y2: 198 })).toEqual(["along 3 2 trim"]);
    expect(cuts({ x1: 2, x2: 97, y1: 2, y2: 198 })).toEqual(["along 97 2 trim"]);
    expect(cuts({ x1: 2, x2: 98, y1: 3, y2: 198 })).toEqual(["across 3 1 trim"]);
    expect(cuts({ x1: 2, x2: 98, y1: 2, y2: 197 })).toEqual(["across 197 1 trim"]);
    expect(cuts({ x1: 10, x2: 90, y1: 20, y2: 180 })).toEqual([
      "across 20 1 trim",
      "across 180 1 trim",
      "along 10 2 trim",
      "along 90 2 trim",
    ]);
    // Between two pieces and behind the last.
    const stack = (from: number, to: number) => {
      const blocks = [
        { x1: 0, x2: 100, y1: 0, y2: 90 },
        { x1: 0, x2: 100, y1: from, y2: to },
      ];
      const tree = cutTree(sheet, blocks, { direction: "across", sliver: 2 });
      const ats: number[] = [];
      for (let part = tree; part?.cut; part = part.second) ats.push(part.cut.at);
      return ats;
    };
    expect(stack(92, 198)).toEqual([90]);
    expect(stack(93, 197)).toEqual([90, 93, 197]);
  });
});

describe("pieces closed up across the cloth", () => {
  test("lie apart as before, are as wide, and what is lost comes off at the far edge", () => {
    fc.assert(
      fc.property(many, fc.boolean(), fc.constantFrom(0, 5), (cases, fromRight, gap) => {
        for (const { blocks } of cases) {
          const own = blocks
            .filter(({ x1, x2 }) => x2 - x1 > gap)
            .map((one) => ({ ...one, x2: one.x2 - gap }));
          const moved = closedUp(own, { from: 0, to: 600 - gap }, { gap, fromRight });
          const now = own.map((one) => {
            const at = moved.get(one);
            if (at === undefined) throw new Error("not moved");
            expect(at.x2 - at.x1).toBe(one.x2 - one.x1);
            if (fromRight) expect(at.x1).toBeGreaterThanOrEqual(one.x1);
            else expect(at.x1).toBeLessThanOrEqual(one.x1);
            return { ...one, ...at };
          });
          now.forEach((a, n) => {
            expect(a.x1).toBeGreaterThanOrEqual(0);
            expect(a.x2).toBeLessThanOrEqual(600 - gap);
            for (const b of now.slice(n + 1)) {
              const isClear = a.x2 + gap <= b.x1 || b.x2 + gap <= a.x1 || a.y2 <= b.y1 || b.y2 <= a.y1;
              expect(isClear).toBe(true);
            }
          });
          // In every length at least one piece lies at the selvedge before the cutter.
          for (const layer of apart(now, "across")) {
            const edges = layer.map(({ x1, x2 }) => (fromRight ? 600 - gap - x2 : x1));
            expect(Math.min(...edges)).toBe(0);
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  test("two columns of a length stand next to each other, a gap between", () => {
    const blocks = [
      { x1: 50, x2: 150, y1: 0, y2: 100 },
      { x1: 300, x2: 350, y1: 0, y2: 60 },
      { x1: 310, x2: 360, y1: 60, y2: 100 },
    ];
    const at = (fromRight: boolean) =>
      blocks.map((one) => closedUp(blocks, { from: 0, to: 600 }, { gap: 10, fromRight }).get(one)?.x1);
    expect(at(false)).toEqual([0, 110, 110]);
    expect(at(true)).toEqual([430, 550, 550]);
  });
});

describe("the order at the table", () => {
  const orderOf = ({ sheet, blocks }: Cloth, most: number, doubled: boolean, leftHanded: boolean) => {
    const tree = cutTree(sheet, blocks, { direction: "across", sliver: 0, fromRight: leftHanded });
    if (tree === undefined) throw new Error("not cut");
    return [...inTableOrder(tree, sheet.y2, { most, doubled, leftHanded })];
  };

  test("makes every cut once, each on a sheet that is there, and names every sheet that is left", () => {
    fc.assert(
      fc.property(
        many,
        fc.integer({ min: 0, max: 1000 }),
        fc.boolean(),
        fc.boolean(),
        (cases, most, doubled, left) => {
          for (const one of cases) {
            const there = new Map<number, CutBlock>([[0, one.sheet]]);
            const pieces: CutBlock[] = [];
            const steps = orderOf(one, most, doubled, left);
            for (const step of steps) {
              expect(there.get(step.id) && isSame(there.get(step.id) as CutBlock, step.sheet)).toBe(true);
              there.delete(step.id);
              if (step.kind === "done") {
                expect(step.sheet.cut).toBeUndefined();
                if (step.sheet.block) pieces.push(step.sheet.block);
                continue;
              }
              const { first, second } = step.sheet;
              if (!first || !second) throw new Error("a cut leaves two sheets");
              there.set(step.first, first);
              there.set(step.second, second);
            }
            expect(there.size).toBe(0);
            expect(pieces).toHaveLength(one.blocks.length);
            const ids = steps.flatMap((step) => (step.kind === "cut" ? [step.first, step.second] : []));
            expect(ids).toEqual(ids.map((_, n) => n + 1));
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  // Three lengths of 300 in two columns each, on a bolt of 1,000.
  const lengths = (shift: number): Cloth => ({
    sheet: SHEET,
    blocks: [0, 1, 2].flatMap((n) => {
      const [y1, y2] = [300 * n, 300 * n + 300];
      const at = 200 + (n === 1 ? shift : 0);
      return [
        { x1: 0, x2: at, y1, y2 },
        { x1: at, x2: 600, y1, y2 },
      ];
    }),
  });
  const words = (one: Cloth, most: number, doubled = false, leftHanded = false) =>
    orderOf(one, most, doubled, leftHanded).flatMap((step) =>
      step.kind === "cut" ? [`${step.cut.direction} ${step.cut.at}${step.withLast ? " too" : ""}`] : [],
    );
  const [one, two, three] = ["across 300", "across 600", "across 900"];

  test("cuts as many lengths off the bolt as lie on the table, then turns the cloth", () => {
    const along = "along 200";
    expect(words(lengths(0), 10)).toEqual([one, along, two, along, three, along]);
    expect(words(lengths(0), 599)).toEqual([one, along, two, along, three, along]);
    expect(words(lengths(0), 600)).toEqual([one, two, along, along, three, along]);
    expect(words(lengths(0), 900)).toEqual([one, two, three, along, along, along]);
  });

  // Two columns over the whole bolt, 500 and 500 in one, 400 and 600 in the other: the first cut goes along.
  test("turns the cloth once where no cut goes across the whole bolt, however long the table", () => {
    const box = (x1: number, x2: number, y1: number, y2: number): CutBlock => ({ x1, x2, y1, y2 });
    const blocks = [
      box(0, 200, 0, 500),
      box(0, 200, 500, 1000),
      box(200, 600, 0, 400),
      box(200, 600, 400, 1000),
    ];
    for (const most of [10, 5000])
      expect(words({ sheet: SHEET, blocks }, most)).toEqual(["along 200", "across 500", "across 400"]);
  });

  test("lays two equal lengths on each other and cuts them at one go, never three", () => {
    const [along, too] = ["along 200", "along 200 too"];
    expect(words(lengths(0), 300, true)).toEqual([one, two, along, too, three, along]);
    expect(words(lengths(0), 600, true)).toEqual([one, two, three, along, too, along]);
    expect(words(lengths(7), 900, true)).toEqual([one, two, three, along, "along 207", along]);
    expect(words(lengths(7), 300, true)).toEqual([one, along, two, "along 207", three, along]);
  });

  test("lengths cut across in the same places are equal, wherever they lie", () => {
    // A column of 200 with two pieces of 120 and 180, and beside it one of 300; twice, the second as it is told.
    const pair = (split: number): Cloth => ({
      sheet: SHEET,
      blocks: [0, 300].flatMap((y, n) => [
        { x1: 0, x2: 200, y1: y, y2: y + (n === 0 ? 120 : split) },
        { x1: 0, x2: 200, y1: y + (n === 0 ? 120 : split), y2: y + 300 },
        { x1: 200, x2: 600, y1: y, y2: y + 300 },
      ]),
    });
    expect(words(pair(120), 300, true)).toEqual([
      one,
      two,
      "along 200",
      "along 200 too",
      "across 120",
      "across 420 too",
    ]);
    expect(words(pair(150), 300, true)).toEqual([
      one,
      "along 200",
      "across 120",
      two,
      "along 200",
      "across 450",
    ]);
  });

  test("brings what is nearer to the cutter first: the left column, or the right for the left-handed", () => {
    const done = (leftHanded: boolean) =>
      orderOf(lengths(0), 10, false, leftHanded).flatMap((step) =>
        step.kind === "done" && step.sheet.block ? [step.sheet.x1] : [],
      );
    expect(done(false)).toEqual([0, 200, 0, 200, 0, 200]);
    expect(done(true)).toEqual([200, 0, 200, 0, 200, 0]);
  });
});

describe("clear stretches beside flaws", () => {
  const flaw = fc
    .record({
      x1: fc.nat(18),
      y1: fc.nat(18),
      w: fc.integer({ min: 1, max: 6 }),
      h: fc.integer({ min: 1, max: 6 }),
    })
    .map(({ x1, y1, w, h }) => ({ x1, x2: Math.min(20, x1 + w), y1, y2: y1 + h }));

  test("are those that looking at every step of the width finds", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.array(flaw, { maxLength: 4 }), fc.nat(20), fc.integer({ min: 1, max: 8 }), fc.nat(2)),
          {
            minLength: 20,
            maxLength: 20,
          },
        ),
        (cases) => {
          for (const [flaws, y, length, gap] of cases) {
            // Sizes hold the gap already: what is covered is shorter by it.
            const isHit = (x: number) =>
              flaws.some((one) => one.x1 <= x && x < one.x2 && one.y2 > y && one.y1 < y + length);
            const stretches: { from: number; to: number }[] = [];
            for (let x = 0; x < 20; x++) {
              if (isHit(x)) continue;
              if (x > 0 && !isHit(x - 1)) continue;
              let to = x;
              while (to < 20 && !isHit(to)) to++;
              stretches.push({ from: x, to: to + gap });
            }
            const found = clearStretches(flaws, y, length + gap, 20 + gap, gap);
            const wide = found.filter(({ from, to }) => to - from > gap);
            expect(wide).toEqual(stretches);
            const reach = y + length;
            for (const { from } of stretches) expect(stretchStarts(flaws, y, reach)).toContain(from);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  // By hand, 100 wide with a gap of 2: a layer from 0 on that is 13 long covers 11, and reaches flaws from 10 on.
  test("lie between the flaws that a layer reaches, each with the gap behind it", () => {
    const at = (x1: number, x2: number) => ({ x1, x2, y1: 10, y2: 30 });
    const flaws = [at(60, 100), at(20, 30), at(0, 20)];
    const whole = [{ from: 0, to: 100 }];
    const clear = (y: number, layer: number, some = flaws) => clearStretches(some, y, layer, 100, 2);
    expect(clear(0, 12)).toEqual(whole);
    expect(clear(0, 13)).toEqual([{ from: 30, to: 62 }]);
    expect(clear(29, 13)).toEqual([{ from: 30, to: 62 }]);
    expect(clear(30, 13)).toEqual(whole);
    // One within the other, and cloth on either side.
    expect(clear(20, 5, [at(40, 45), at(35, 70)])).toEqual([
      { from: 0, to: 37 },
      { from: 70, to: 100 },
    ]);
    expect(clear(20, 5, [at(0, 100)])).toEqual([]);
    expect(clear(20, 5, [])).toEqual(whole);
  });

  test("begin at the selvedge and right of what lies within reach, the leftmost first", () => {
    const flaws = [
      { x1: 8, x2: 10, y1: 5, y2: 7 },
      { x1: 2, x2: 4, y1: 0, y2: 3 },
    ];
    expect(stretchStarts(flaws, 0, 9)).toEqual([0, 4, 10]);
    expect(stretchStarts(flaws, 3, 9)).toEqual([0, 10]);
    expect(stretchStarts(flaws, 2, 5)).toEqual([0, 4]);
    expect(stretchStarts(flaws, 7, 9)).toEqual([0]);
  });
});
