import { describe, expect, test } from "vitest";
import { newerRelease } from "./register.ts";

const worker = () => ({}) as ServiceWorker;

describe("a newer release", () => {
  test("waits beside the one in use", () => {
    const waiting = worker();
    expect(newerRelease({ active: worker(), waiting })).toBe(waiting);
  });

  test("is not the first of all, in whatever order a browser tells of its start", () => {
    const first = worker();
    expect(newerRelease({ active: null, waiting: first })).toBeUndefined();
    expect(newerRelease({ active: first, waiting: first })).toBeUndefined();
    expect(newerRelease({ active: first, waiting: null })).toBeUndefined();
  });
});
