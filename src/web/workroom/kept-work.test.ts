import { afterAll, beforeEach, expect, test, vi } from "vitest";
import type { ShadeWork, WorkChange } from "../../workroom/protocol/index.ts";

const kept = new Map<string, string>();
vi.stubGlobal("localStorage", {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => void kept.set(key, value),
  removeItem: (key: string) => void kept.delete(key),
});

/** Questions that the server has not answered yet, in the order in which they came. */
let open: { route: string; answer: (with_: unknown) => void; fail: (error: Error) => void }[] = [];
vi.mock("./ask-server.ts", async (original) => ({
  ...(await original<typeof import("./ask-server.ts")>()),
  askServer: (route: string) =>
    new Promise((answer, fail) => {
      open.push({ route, answer, fail });
    }),
}));
const { keepChange, keptWork, meetWork } = await import("./kept-work.ts");

const work = (state: string) => [{ jobId: "j", windowId: "w", state }] as unknown as ShadeWork[];
const change = (state: string) =>
  ({ id: state, jobId: "j", windowId: "w", at: "2026-12-01T10:00:00Z", state }) as unknown as WorkChange;
const states = (shades: readonly ShadeWork[]) => shades.map(({ state }) => state);

async function answered(route: string, with_: unknown): Promise<void> {
  await vi.waitFor(() => expect(open[0]?.route).toBe(route));
  open.shift()?.answer(with_);
}

afterAll(() => vi.unstubAllGlobals());
beforeEach(() => {
  kept.clear();
  open = [];
});

test("what the server has taken is shown before it is read from there, and an answer asked for before is not shown after", async () => {
  const early = meetWork();
  await vi.waitFor(() => expect(open).toHaveLength(1));
  keepChange(change("sewn"));
  const late = meetWork();
  // The first is answered as it was before the change; the second is asked only then.
  expect(open).toHaveLength(1);
  await answered("work", { shades: work("cut") });
  expect(states(await early)).toEqual(["sewn"]);
  await answered("changeWork", {});
  await vi.waitFor(() => expect(open[0]?.route).toBe("work"));
  expect(states(keptWork())).toEqual(["sewn"]);
  await answered("work", { shades: work("sewn") });
  expect(states(await late)).toEqual(["sewn"]);
});

test("where the server does not answer one, the next is asked all the same", async () => {
  const lost = meetWork();
  const failed = expect(lost).rejects.toThrow("offline");
  await vi.waitFor(() => expect(open).toHaveLength(1));
  open.shift()?.fail(new Error("offline"));
  await failed;
  const next = meetWork();
  await answered("work", { shades: work("hung") });
  expect(states(await next)).toEqual(["hung"]);
});
