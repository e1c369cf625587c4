import { describe, expect, it } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectWholeFinding, expectWholeRemedies, expectWholeWorking } from "../../test/whole-findings.ts";
import { type JobInput, LIFT_KINDS, PLACES, PURPOSES } from "../job/index.ts";
import { plan } from "../plan/index.ts";

type Window = Parameters<typeof jobWith>[0];
type Making = NonNullable<NonNullable<Window["shade"]>["making"]>;

const BESIDE = { shade: true, wallMm: 100, angleDeg: 180 };
/** Windows with something to be asked or said of their cords, each worked by every kind of lift. */
const WINDOWS: [string, NonNullable<Window["opening"]>, Making][] = [
  ["no height, a top that comes down", { widthsMm: [900], heightsMm: [1500] }, { fold: { topDropMm: 300 } }],
  [
    "low, a shade beside",
    { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 300, footholds: [], left: BESIDE },
    { fold: { rows: 4 }, lift: { cleatAboveFloorMm: 2100 } },
  ],
  [
    "high, worked together, beside a bed",
    {
      ...{
        widthsMm: [900],
        heightsMm: [700],
        sillAboveFloorMm: 2000,
        footholds: [{ kind: "bed", heightMm: 600 }],
      },
      right: { ...BESIDE, together: true },
    },
    { lift: { tailMm: 200, leadLooseMm: 300 } },
  ],
];

const SHADES = LIFT_KINDS.flatMap((kind, k) =>
  WINDOWS.map(([name, opening, making], w) => {
    const job = jobWith(
      {
        opening,
        shade: {
          ...{ style: (k + w) % 2 === 0 ? "flat" : "hobbled", mount: "to-size" },
          making: { hobble: { rule: "folds-of-six" }, ...making, lift: { kind, ...making.lift } },
        },
      },
      {
        units: { system: "metric", ruler: "1 mm" },
        place: PLACES[(3 * k + w) % PLACES.length],
        purpose: PURPOSES[(k + w) % PURPOSES.length],
      } satisfies Partial<JobInput>,
    );
    const [shade] = plan(job).shades;
    if (shade === undefined) throw new Error("invalid test job: no shade");
    return { name: `${kind}, ${name}`, job, shade };
  }),
);

describe.each(SHADES.map((one) => [one.name, one] as const))("%s", (_, { job, shade }) => {
  const isOfSafety = ({ id }: { id: string }) => id.startsWith("safety.");

  it("is told in whole sentences, each with its source, its setting and changes that leave a job that opens", () => {
    const known = new Set(shade.workings.map(({ id }) => id));
    const findings = shade.findings.filter(isOfSafety);
    expect(findings.length).toBeGreaterThan(0);
    for (const finding of findings) {
      expect(finding.shadeId, finding.id).toBe("window-1");
      expectWholeFinding(finding, ["safety"], known);
      expectWholeRemedies(finding, job);
    }
    for (const working of shade.workings.filter(isOfSafety)) expectWholeWorking(working);
  });

  it("has results that say why, on what shade, with their numbers where there are any", () => {
    for (const result of shade.safety.results) {
      const { ruleId, outcome, why, value, valueText, limit, limitText, words } = result;
      expect(why, ruleId).toMatch(/^[\p{Lu}\d].{10,}\.$/u);
      expect(why, ruleId).not.toMatch(/ {2}|undefined|NaN|Infinity|\.\./);
      expect(words, ruleId).toMatch(/^\p{Lu}.{15,}\.$/u);
      expect(valueText === undefined, ruleId).toBe(value === undefined);
      expect(limitText === undefined, ruleId).toBe(limit === undefined);
      if (outcome === "does-not-apply") expect(value, ruleId).toBeUndefined();
      if (outcome === "failed") expect(value, ruleId).toBeDefined();
      if (outcome === "not-proven") expect(result.test ?? result.open ?? why, ruleId).not.toBe("");
    }
  });

  it("cautions in whole sentences, each under its title and with its source", () => {
    for (const { id, title, text, cite } of [...shade.cautions, ...shade.safety.cautions]) {
      expect(title, id).toMatch(/^\p{Lu}.{3}/u);
      expect(text, id).toMatch(/^[\p{Lu}\d].{30,}\.$/u);
      expect(text, id).not.toMatch(/ {2}|undefined|NaN|\.\./);
      expect(cite?.source ?? "", id).not.toBe("");
    }
  });
});
