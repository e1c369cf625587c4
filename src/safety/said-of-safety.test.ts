import { describe, expect, it } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectWholeFinding, expectWholeRemedies, expectWholeWorking } from "../../test/whole-findings.ts";
import { type JobInput, LIFT_KINDS, PLACES, PURPOSES } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import type { SafetyReview } from "../shade-plan/index.ts";

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
    expectWholeResults(shade.safety.results);
  });

  it("is stamped where a rule stops it, with how many do", () => {
    const stops = shade.findings.filter((one) => isOfSafety(one) && one.severity === "stop");
    const { stamp, stampText } = shade.safety;
    expect(stamp).toBe(stops.length > 0);
    const counted = stops.length === 1 ? "its cords fail a rule" : `its cords fail ${stops.length} rules`;
    if (stamp) expect(stampText).toContain(counted);
    else expect(stampText).toBeUndefined();
  });

  it("gathers what is open in one finding, counted, with the tests to do", () => {
    const open = shade.safety.results.filter(({ outcome }) => outcome === "not-proven");
    const found = shade.findings.find(({ id }) => id === "safety.not-proven");
    expect(found?.cases ?? 0).toBe(open.length);
    const rules = `${open.length} rule${open.length === 1 ? " is" : "s are"} not proven`;
    const { tests } = shade.safety;
    const asked = new Set(
      open.flatMap(({ test, alsoTests = [] }) => [...(test ? [test] : []), ...alsoTests]),
    );
    expect(new Set(tests.map(({ id }) => id))).toEqual(asked);
    const toDo = "Tests to do, described in the review: ";
    const titles = tests.map(({ title }) => title.charAt(0).toLowerCase() + title.slice(1)).join("; ");
    const said = `${rules}, since a plan cannot show it.${tests.length === 0 ? "" : ` ${toDo}${titles}.`}`;
    expect(found?.text).toBe(open.length === 0 ? undefined : said);
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

function expectWholeResults(results: SafetyReview["results"]): void {
  for (const result of results) {
    const { ruleId, outcome, why, value, valueText, limit, limitText, words } = result;
    expect(why, ruleId).toMatch(/^[\p{Lu}\d].{10,}\.$/u);
    expect(why, ruleId).not.toMatch(/ {2}|undefined|NaN|Infinity|\.\./);
    expect(words, ruleId).toMatch(/^\p{Lu}.{15,}\.$/u);
    expect(valueText === undefined, ruleId).toBe(value === undefined);
    expect(limitText === undefined, ruleId).toBe(limit === undefined);
    if (outcome === "does-not-apply") expect(value, ruleId).toBeUndefined();
    if (outcome === "failed") expect([value, limit], ruleId).not.toContain(undefined);
    if (outcome === "not-proven") expect(result.test ?? result.open ?? why, ruleId).not.toBe("");
  }
}

it.each(PLACES)("the results of %s are whole, of a fold that opens and of cords that hang", (place) => {
  for (const style of ["hobbled", "flat"] as const) {
    const job = jobWith({ shade: { style, mount: "to-size" } }, { place, purpose: "for-sale" });
    const [shade] = plan(job).shades;
    expect(shade?.safety.results.length).toBeGreaterThan(0);
    expectWholeResults(shade?.safety.results ?? []);
  }
});
