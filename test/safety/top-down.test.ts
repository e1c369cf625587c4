import { describe, expect, it } from "vitest";
import { LIFT_KINDS, type LiftKind } from "../../src/job/index.ts";
import { plan, proveRemedies } from "../../src/plan/index.ts";
import { childSafetyChoices } from "../../src/workbook/pages/client/choices.ts";
import { jobWith } from "../job-with.ts";

const job = (kind: LiftKind) =>
  jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 800 },
      shade: { mount: "to-size", making: { lift: { kind }, fold: { topDropMm: 500 } } },
    },
    { place: "ca", purpose: "for-sale", units: { system: "metric", ruler: "1 mm" } },
  );

const shadeOn = (kind: LiftKind) => {
  const [shade] = proveRemedies(job(kind), plan(job(kind))).shades;
  if (shade === undefined) throw new Error("invalid job: empty");
  return shade;
};

/** A top that comes down hangs on cords of its own, half the shade long and 500 mm more with the top up: 747 to 1247 mm. */
describe.each(LIFT_KINDS)("a top that can be let down, on a %s", (kind) => {
  const shade = shadeOn(kind);

  it("is said to have cords at the front, on the first sheet, in the steps and on the tag", () => {
    const caution = shade.cautions.find(({ id }) => id === "cords-of-this-shade")?.text ?? "";
    const rail = shade.lift.topRail;
    expect(caution).toContain("from the top rail’s own lock");
    expect(caution).toContain(`${Math.round(rail?.tailUpMm ?? 0)}\u00a0mm with it up`);
    expect(caution).not.toContain("No cord hangs at the front");
    expect(shade.cautions.map(({ id }) => id)).toContain("cleat");
    for (const { caution } of shade.steps) expect(caution ?? "").not.toContain("No cord hangs at the front");
    expect(shade.tag.lines.map(({ text }) => text).join(" ")).toContain("devices for the cords");
    expect(shade.findings.map(({ id }) => id)).toContain("safety.free-hanging-cord");
  });

  it("is said to the client to have them, by the plan’s own word for it", () => {
    expect(shade.lift.cordsAtFront).toBe(true);
    const said = childSafetyChoices(plan(job(kind)), [shade]).join(" ");
    expect(said).not.toContain("No cord hangs at the front");
    expect(said).toContain("hangs at the front");
  });

  it("offers no change that claims a front without cords", () => {
    for (const { text, remedies } of plan(job(kind)).shades[0]?.findings ?? [])
      for (const { changes = "", patch } of remedies)
        if (!JSON.stringify(patch).includes("topDropMm"))
          expect(changes, text).not.toMatch(/No cord hangs at the front|no cord with a free end/);
  });

  it("has its cleat, which is bought, fixed in a step", () => {
    expect(shade.cost.shopping.map(({ id }) => id)).toContain("rail-cleat");
    const step = shade.steps.find(({ id }) => id === "hang-rail-cleat");
    expect(step?.text).toContain("below the top rail’s own lock");
  });

  it("fails for its own cords, whatever works the shade, and only a shade hung from its board answers that", () => {
    const finding = shade.findings.find(({ id }) => id === "safety.ca-free");
    expect(finding?.text).toContain("free end");
    for (const { patch } of finding?.remedies ?? []) expect(JSON.stringify(patch)).toContain("topDropMm");
    expect(finding?.remedies.length).toBeGreaterThan(0);
  });
});
