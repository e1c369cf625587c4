import { beforeEach, describe, expect, it, vi } from "vitest";
import { openSectionsOf, rememberOpen } from "./open-sections.ts";

const held = new Map<string, string>();
beforeEach(() => {
  held.clear();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => held.set(key, value),
  });
});

describe("what was open in a job", () => {
  it("is found again, job by job; a job never seen opens at its measures", () => {
    rememberOpen("a", { cloth: true, lift: false });
    rememberOpen("b", {});
    expect(openSectionsOf("a")).toEqual({ cloth: true });
    expect(openSectionsOf("b")).toEqual({});
    expect(openSectionsOf("c")).toEqual({ measure: true });
  });

  it("is forgotten for the job looked at longest ago, once there are many", () => {
    for (let n = 0; n < 45; n++) rememberOpen(`job-${n}`, { cloth: true });
    expect(openSectionsOf("job-0")).toEqual({ measure: true });
    expect(openSectionsOf("job-44")).toEqual({ cloth: true });
  });

  it("minds no nonsense and no device that keeps nothing", () => {
    held.set("shadewright-open", '{"a":1}');
    expect(openSectionsOf("a")).toEqual({ measure: true });
    vi.stubGlobal("localStorage", undefined);
    expect(() => rememberOpen("a", {})).not.toThrow();
  });
});
