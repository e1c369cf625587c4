import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shareEqual } from "./share-equal.ts";

const tree = fc.letrec((tie) => ({
  any: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom(0, -0, 1, Number.NaN, "", "a", null, undefined, true),
    fc.array(tie("any"), { maxLength: 4 }),
    fc.dictionary(fc.constantFrom("a", "b", "c"), tie("any"), { maxKeys: 3, noNullPrototype: true }),
  ),
})).any;

describe("what two trees share", () => {
  it("never changes what the next one holds", () => {
    fc.assert(
      fc.property(tree, tree, (previous, next) => {
        // Node's own comparison is the judge.
        const copy = structuredClone(next);
        expect(isDeepStrictEqual(shareEqual(previous, next), copy)).toBe(true);
        expect(isDeepStrictEqual(next, copy)).toBe(true);
      }),
    );
  });

  it("is the previous one itself exactly where both are equal", () => {
    fc.assert(
      fc.property(tree, tree, (previous, next) => {
        expect(Object.is(shareEqual(previous, next), previous)).toBe(isDeepStrictEqual(previous, next));
        expect(shareEqual(previous, structuredClone(previous))).toBe(previous);
      }),
    );
  });

  it("keeps the parts that one edit did not touch", () => {
    const previous = { fold: { rows: 5 }, hems: { sideTurnMm: 25 }, columns: [{ xMm: 10 }, { xMm: 90 }] };
    const next = structuredClone(previous);
    next.fold.rows = 6;
    const shared = shareEqual(previous, next);
    expect(shared).toEqual(next);
    expect(shared.hems).toBe(previous.hems);
    expect(shared.columns).toBe(previous.columns);
  });
});
