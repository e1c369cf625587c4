import { expect, it } from "vitest";
import { stagedWhole } from "../../figures/index.ts";
import { stage } from "./stage.ts";

it("leaves what is worked out late unread on every run, and keeps values that come out as before", () => {
  const read: string[] = [];
  const run = stage(({ a, b }: { a: number; b: number }) => {
    const values = { sum: a + b };
    const whole = {
      ...values,
      get product() {
        read.push("product");
        return a * b;
      },
    };
    return stagedWhole(values, whole, {
      findings: () => {
        read.push("findings");
        return [];
      },
      workings: () => {
        read.push("workings");
        return [];
      },
    });
  });
  const first = run({ a: 1, b: 5 });
  const second = run({ a: 2, b: 4 });
  const third = run({ a: 2, b: 5 });
  expect(read).toEqual([]);
  expect(second.values).toBe(first.values);
  expect(third.values).not.toBe(second.values);
  // Of equal values the late part is still that of the last run.
  expect([first.whole.product, second.whole.product, third.whole.product]).toEqual([5, 8, 10]);
  expect([...second.findings, ...second.workings, ...second.findings]).toEqual([]);
  expect(read).toEqual(["product", "product", "product", "findings", "workings"]);
});
