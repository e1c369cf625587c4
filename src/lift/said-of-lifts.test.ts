import { describe, expect, it } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectWholeFinding, expectWholeRemedies, expectWholeWorking } from "../../test/whole-findings.ts";
import { type JobInput, LIFT_KINDS, REAR_GUIDES } from "../job/index.ts";
import { figuresOf, plan } from "../plan/index.ts";

type Window = Parameters<typeof jobWith>[0];
type Making = NonNullable<NonNullable<Window["shade"]>["making"]>;

/** Windows and settings with something to be said of them, each worked by every kind of lift. */
const TROUBLED: [string, Omit<Window, "shade">, Making][] = [
  ["usual", { opening: { widthsMm: [940], heightsMm: [1500], sillAboveFloorMm: 800 } }, {}],
  ["no height", {}, { fold: { topDropMm: 300 } }],
  [
    "crowded",
    { opening: { widthsMm: [600], heightsMm: [1500], sillAboveFloorMm: 300 } },
    { columns: { count: 10 } },
  ],
  [
    "wide",
    { opening: { widthsMm: [3200], heightsMm: [2400], sillAboveFloorMm: 100 } },
    { board: { bar: "bar-steel-19x3" } },
  ],
  [
    "high",
    { opening: { widthsMm: [900], heightsMm: [600], sillAboveFloorMm: 2300 } },
    { lift: { tailMm: 200 } },
  ],
  [
    "narrow",
    { opening: { widthsMm: [300], heightsMm: [900], sillAboveFloorMm: 900 } },
    { columns: { count: 2 } },
  ],
  [
    "far in",
    { opening: { widthsMm: [900], heightsMm: [1500] } },
    { columns: { edgeInsetMm: 140 }, fold: { topDropMm: 400 } },
  ],
  [
    "under a slope, too low for a cleat",
    {
      opening: {
        ...{ widthsMm: [900], heightsMm: [1200], sillAboveFloorMm: 0 },
        head: { kind: "angled", fallMm: 200, high: "left" },
      },
    },
    { fold: { topDropMm: 2000 }, lift: { cleatAboveFloorMm: 1700 } },
  ],
];

const OPENINGS = ["left", "right"] as const;

function planned() {
  return LIFT_KINDS.flatMap((kind) =>
    TROUBLED.flatMap(([name, window, making], i) => {
      const rearCords = REAR_GUIDES[i % REAR_GUIDES.length];
      const lift = { kind, rearCords, controlSide: OPENINGS[i % 2], ...making.lift } as Making["lift"];
      const job = jobWith({ ...window, shade: { mount: "to-size", making: { ...making, lift } } }, {
        units: { system: "metric", ruler: "1 mm" },
      } satisfies Partial<JobInput>);
      const [shade] = plan(job).shades;
      if (shade === undefined) throw new Error("invalid test job: no shade");
      const isOfLift = ({ id }: { id: string }) => /^(?:lift|rig)\./.test(id);
      return [
        {
          name: `${kind}, ${name}`,
          job,
          workings: shade.workings.filter(isOfLift),
          figures: [...figuresOf(shade)].filter(([id]) => isOfLift({ id })),
          known: new Set(shade.workings.map(({ id }) => id)),
          findings: shade.findings.filter(isOfLift),
        },
      ];
    }),
  );
}

const ALL = planned();

describe.each(ALL.map((one) => [one.name, one] as const))("%s", (_, shade) => {
  const { workings, figures, findings, known, job } = shade;

  it("prints formulas that give their figures when mathjs reads them", () => {
    expect(workings.length).toBeGreaterThan(5);
    for (const working of workings) expectWholeWorking(working);
    expect(new Set(workings.map(({ id }) => id)).size).toBe(workings.length);
  });

  it("names for each figure settings and figures that there are", () => {
    for (const [id, figure] of figures)
      for (const on of figure.rule.restsOn(figure.of))
        expect(on, id).toMatch(/^(?:figure:[a-z]+\.[a-z*][a-z0-9*-]*|[a-z]+\/(?:\*|[a-zA-Z]+))$/);
  });

  it("says whole sentences of what is amiss, and offers changes that leave a job that opens", () => {
    expect(findings.length).toBeGreaterThan(0);
    for (const finding of findings) {
      expect(finding.shadeId, finding.id).toBe("window-1");
      expectWholeFinding(finding, ["lift", "rig"], known);
      expectWholeRemedies(finding, job);
    }
  });
});

/** What each of these is judged by. */
const JUDGED_BY: Record<string, string[]> = {
  "lift.held-by-cleat": ["lift.held", "lift.pull"],
  "lift.loop-tensioner": ["rig.loop-perimeter"],
  "lift.spring-unproven": ["lift.held-lowered", "lift.held", "lift.spring-band"],
  "lift.shares-differ": ["lift.heaviest-cord"],
  "lift.stretch-out-of-level": ["lift.level"],
  "lift.motor-torque": ["lift.torque-raised", "lift.torque-lowered"],
  "rig.cleat-above-eye": ["rig.to-cleat"],
  "rig.cleat-full": ["rig.cord-to-wind"],
  "rig.tail-out-of-reach": ["rig.tail-end-lowered"],
};

it("names the figures that a judgement leans on", () => {
  const met = ALL.flatMap(({ name, findings }) =>
    findings.flatMap(({ id, figures }) => (id in JUDGED_BY ? [{ name, id, figures }] : [])),
  );
  for (const { name, id, figures } of met)
    expect([name, id, figures].flat()).toEqual([name, id, ...(JUDGED_BY[id] ?? [])]);
  expect(new Set(met.map(({ id }) => id)).size).toBeGreaterThanOrEqual(7);
});
