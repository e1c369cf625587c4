import { expect, test } from "vitest";
import { latestFirst } from "./latest-first.ts";

function setUp() {
  const drawn: string[] = [];
  const waiting: (() => void)[] = [];
  const first = latestFirst<string>(
    (one) => one !== "plain",
    (one, coarse) =>
      new Promise((done) => {
        drawn.push(`${one} ${coarse ? "coarse" : "fine"}`);
        waiting.push(done);
      }),
  );
  const answer = async () => {
    waiting.shift()?.();
    for (let turn = 0; turn < 5; turn++) await Promise.resolve();
  };
  return { drawn, first, answer };
}

test("each is drawn coarsely and then well; what has no coarse form is drawn once", async () => {
  const { drawn, first, answer } = setUp();
  first.want("a");
  await answer();
  await answer();
  first.want("plain");
  await answer();
  expect(drawn).toEqual(["a coarse", "a fine", "plain fine"]);
});

test("what was asked for meanwhile comes next, and nothing between is drawn, nor the fine one before it", async () => {
  const { drawn, first, answer } = setUp();
  first.want("a");
  first.want("b");
  first.want("c");
  await answer();
  await answer();
  await answer();
  await answer();
  expect(drawn).toEqual(["a coarse", "c coarse", "c fine"]);
});

test("once stopped nothing more is drawn", async () => {
  const { drawn, first, answer } = setUp();
  first.want("a");
  first.stop();
  await answer();
  expect(drawn).toEqual(["a coarse"]);
});
