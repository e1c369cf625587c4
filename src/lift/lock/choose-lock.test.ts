import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../test/job-with.ts";
import { chooseLock } from "./choose-lock.ts";

const withCord = (cord: string, lock?: string) =>
  resolvedWith({ shade: { making: { lift: { cord, ...(lock === undefined ? {} : { lock }) } } } });

describe("lock", () => {
  test.each([
    ["cord-1-4", 7, "lock-4-slot", []],
    ["cord-1-4", 8, "lock-6-slot", ["lock-4-slot"]],
    ["cord-0-9", 4, "lock-6-slot", ["lock-4-slot"]],
    ["cord-1-8", 6, "lock-4-slot", []],
  ])("%s, %i cords: %s", (cord, count, lock, refused) => {
    const choice = chooseLock(withCord(cord), count);
    expect(choice.lock.id).toBe(lock);
    expect(choice.refused.map((one) => one.lock.id)).toEqual(refused);
    expect(choice.forced).toBe(false);
  });

  test("every refusal says why", () => {
    const [refused] = chooseLock(withCord("cord-1-4"), 8).refused;
    expect(refused?.reason).toBe("takes at most 7 cords; this shade has 8");
  });

  test("none takes twelve cords: the roomiest is drawn, forced", () => {
    const choice = chooseLock(withCord("cord-1-4"), 12);
    expect(choice).toMatchObject({ lock: { id: "lock-6-slot" }, forced: true });
    expect(choice.refused.map((one) => one.lock.id)).toEqual(["lock-4-slot"]);
  });

  test("a job that names a lock that the catalogue no longer has opens with the one in its place", () => {
    const resolved = withCord("cord-1-4", "lock-5-slot");
    expect(resolved.missing).toEqual([]);
    expect(chooseLock(resolved, 8)).toMatchObject({ lock: { id: "lock-6-slot" }, forced: false });
    expect(chooseLock(withCord("cord-1-4", "lock-3-slot"), 5).lock.id).toBe("lock-4-slot");
  });

  test("the maker’s lock stays, forced where it does not take the cords", () => {
    expect(chooseLock(withCord("cord-1-4", "lock-4-slot"), 8)).toMatchObject({
      lock: { id: "lock-4-slot" },
      refused: [],
      forced: true,
    });
    expect(chooseLock(withCord("cord-1-4", "lock-6-slot"), 2).forced).toBe(false);
  });
});
