import fc from "fast-check";
import type { Bolt, ClothProblem, Piece } from "../../src/cutting/cloth/index.ts";

const mm = (min: number, max: number) =>
  fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);

const flaw = fc.record({
  xMm: mm(0, 900),
  yMm: mm(0, 2000),
  widthMm: mm(1, 600),
  lengthMm: mm(1, 80),
});

const bolt: fc.Arbitrary<Omit<Bolt, "id">> = fc.record(
  {
    remnant: fc.boolean(),
    widthMm: mm(500, 1500),
    lengthMm: mm(300, 4000),
    flaws: fc.oneof({ weight: 3, arbitrary: fc.constant([]) }, fc.array(flaw, { maxLength: 3 })),
    costPerMm: fc.constantFrom(0, 0.5, 1, 2.25),
    lot: fc.option(fc.constantFrom("a", "b"), { nil: undefined }),
    rowMm: mm(0, 400),
    columnMm: mm(0, 200),
  },
  { requiredKeys: ["remnant", "widthMm", "lengthMm", "flaws", "costPerMm"] },
);

const piece: fc.Arbitrary<Omit<Piece, "id">> = fc.record(
  {
    shade: fc.constantFrom("s1", "s2"),
    part: fc.constant("face"),
    widthMm: fc.oneof(mm(50, 600), fc.constantFrom(200, 300, 450)),
    lengthMm: fc.oneof(mm(50, 900), fc.constantFrom(300, 600, 700)),
    grain: fc.constantFrom("fixed" as const, "free" as const),
    nap: fc.constantFrom("one-way" as const, "either" as const),
    start: fc.record({ alongMm: mm(0, 400), acrossMm: mm(0, 300) }, { requiredKeys: [] }),
    join: fc.record({ group: fc.constantFrom("j1", "j2"), index: fc.integer({ min: 0, max: 3 }) }),
    lotGroup: fc.constantFrom("g1", "g2"),
  },
  { requiredKeys: ["shade", "part", "widthMm", "lengthMm", "grain", "nap"] },
);

/** Any cutting problem, most of them with a way to cut it. */
export const anyCloth: fc.Arbitrary<ClothProblem> = fc
  .record(
    {
      bolts: fc.array(bolt, { minLength: 1, maxLength: 4 }),
      endless: fc.constantFrom("new" as const, "first" as const),
      pieces: fc.oneof(fc.array(piece, { maxLength: 9 }), fc.array(piece, { minLength: 8, maxLength: 40 })),
      gapMm: fc.constantFrom(0, 0, 2, 5.5),
      tableMm: fc.constantFrom(500, 1200),
      cutting: fc.oneof(
        fc.constantFrom({ kind: "free" as const }, { kind: "straight" as const }),
        fc.record({ kind: fc.constant("straight" as const), stages: fc.integer({ min: 2, max: 5 }) }),
      ),
      repeat: fc.record(
        {
          alongMm: fc.constantFrom(64.2, 320, 250.8, 641.35, 400),
          acrossMm: fc.constantFrom(150, 333.3, 700),
          match: fc.constantFrom("straight" as const, "half-drop" as const),
        },
        { requiredKeys: ["alongMm", "match"] },
      ),
      seed: fc.integer({ min: 0, max: 1000 }),
      table: fc.record({ doubled: fc.boolean(), leftHanded: fc.boolean() }),
      boundLots: fc.record({ g1: fc.constantFrom("a", "b"), g2: fc.constant("a") }, { requiredKeys: [] }),
    },
    { requiredKeys: ["bolts", "pieces", "gapMm", "cutting", "seed"] },
  )
  .map(({ bolts, endless, pieces, ...rest }) => ({
    ...rest,
    id: "any",
    bolts: [
      ...bolts.map(({ lengthMm, ...one }, at): Bolt => {
        const length = endless === "first" && at === 0 ? {} : { lengthMm };
        return { ...one, id: `b${at}`, ...length };
      }),
      ...(endless === "new" ? [{ id: "new", remnant: false, widthMm: 1600, flaws: [], costPerMm: 1 }] : []),
    ],
    pieces: pieces.map((one, at) => ({ ...one, id: `p${at}` })),
    keep: { widthMm: 100, lengthMm: 200 },
  }));
