import { describe, expect, it } from "vitest";
import { type Job, newJob, newWindow } from "../../job/index.ts";
import { plan, type ShadePlan } from "../../plan/index.ts";
import { whatChanged } from "./what-changed.ts";

const empty = newJob({ id: "j", name: "J", system: "metric" });
const window = newWindow({ id: "w", name: "W", widthMm: 900, heightMm: 1500 });

function shadeWith(change: (one: typeof window) => typeof window): ShadePlan {
  const job: Job = { ...empty, rooms: [{ id: "r", name: "R", windows: [change(window)] }] };
  const [shade] = plan(job).shades;
  if (!shade) throw new Error("invalid test: no shade");
  return shade;
}

const same = shadeWith((one) => one);

describe("what an edit did, in words", () => {
  it("is nothing where nothing changed", () => {
    expect(whatChanged(same, same, empty.units)).toBe("");
  });

  it("tells the figures that are others now, and no others", () => {
    const wider = shadeWith((one) => ({ ...one, opening: { ...one.opening, widthsMm: [1000] } }));
    const told = whatChanged(same, wider, empty.units);
    expect(told).toContain(`Finished width ${Math.round(wider.size.finishedWidthMm)}`);
    expect(told).not.toContain("finished length");
  });

  it("tells a finding that came, and the same gone on the way back", () => {
    const leaning = shadeWith((one) => ({
      ...one,
      opening: { ...one.opening, diagonalsMm: [1735, 1760] as [number, number] },
    }));
    expect(whatChanged(same, leaning, empty.units)).toMatch(/Fix: The diagonals differ/);
    expect(whatChanged(leaning, same, empty.units)).toMatch(/1 finding gone/);
  });
});
