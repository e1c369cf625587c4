import fc from "fast-check";
import { expect, test } from "vitest";
import { type State, StateQueue } from "./state-queue.ts";

/** The most promising first, of equal promise the one that has come further; which of wholly equal ones is all one. */
const rank = ({ least, before, y }: State) => [least, -(before + y)] as const;
const byRank = (a: State, b: State) => rank(a)[0] - rank(b)[0] || rank(a)[1] - rank(b)[1];

const state = fc.record({ least: fc.nat(6), y: fc.nat(4), before: fc.nat(4) });
const step = fc.oneof({ weight: 3, arbitrary: state }, fc.constant(undefined));

test("states come out as sorting them would have it, pushed and popped in any order", () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 60, maxLength: 200 }), (steps) => {
      const queue = new StateQueue();
      const plain: State[] = [];
      const popBoth = () => {
        plain.sort(byRank);
        const expected = plain.shift();
        const popped = queue.pop();
        expect(popped === undefined).toBe(expected === undefined);
        if (popped && expected) expect(rank(popped)).toEqual(rank(expected));
      };
      for (const one of steps) {
        if (one === undefined) popBoth();
        else {
          const pushed: State = { ...one, cut: 0, at: 0, laid: [] };
          queue.push(pushed);
          plain.push(pushed);
        }
      }
      for (let left = plain.length; left >= 0; left--) popBoth();
    }),
    { numRuns: 15 },
  );
});
