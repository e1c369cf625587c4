import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { plan, planCutting } from "../../plan/index.ts";
import { tryByHand } from "./try-by-hand.ts";

/** Windows and remnants of which one's id is the end, or the beginning, of another's. */
function cottonOf() {
  const windows = ["east", "north-east"].map((id) => ({
    id,
    name: id === "east" ? "Morning" : "Corner",
    opening: { widthsMm: [700], heightsMm: [1200] },
    shade: { face: "own", lining: null, mount: "to-size" as const },
  }));
  const held = ["end", "end-2"].map((id) => ({
    id,
    name: id === "end" ? "First end" : "Second end",
    cloth: "own",
    lengthMm: 1800,
  }));
  const job = jobWith(
    {},
    {
      cloths: [{ id: "own", name: "Own", usableWidthMm: 900, massGsm: 200 }],
      rooms: [{ id: "r", name: "Room", windows }],
      stock: { cloth: held },
    },
  );
  const cloth = planCutting(job, plan(job)).cloths.find(({ clothId }) => clothId === "own");
  if (cloth === undefined || !("bolts" in cloth.answer)) throw new Error("no plan");
  return { cloth, found: cloth.answer };
}

test("what is wrong by hand is told by the names of window and bolt, never by half an id", () => {
  const { cloth, found } = cottonOf();
  const words = found.bolts.flatMap(({ boltId, placements }) =>
    placements.flatMap(
      (placement) =>
        tryByHand(cloth, found, found.bolts, boltId, { ...placement, xMm: placement.xMm + 900 }).faults,
    ),
  );
  const outside = words.filter((text) => text.includes("lies outside"));
  expect(outside.some((text) => text.startsWith("Corner: "))).toBe(true);
  expect(outside.some((text) => text.endsWith("Second end"))).toBe(true);
  for (const text of outside) {
    expect(text).toMatch(/^(?:Morning|Corner): [^/]+ lies outside (?:First end|Second end|New cloth)$/);
  }
});
