import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { anyJob } from "../../../test/arbitrary-job.ts";
import { handShade } from "../../../test/hand-shade.ts";
import { jobWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { afterRemedy } from "../../../test/rig-inputs.ts";
import { verdictIn } from "../../../test/words.ts";
import { type Finding, type Remedy, type Working, workingOf } from "../../figures/index.ts";
import {
  type Job,
  PLACES,
  type Place,
  PURPOSES,
  type Purpose,
  partsOf,
  resolveShade,
} from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import type { Mass, RuleResult } from "../../shade-plan/index.ts";
import { inches } from "../../units/index.ts";
import type { LiftCords } from "./lift-cords.ts";
import { reviewShade } from "./review-shade.ts";

const MASS: Mass = {
  parts: [
    { part: "face", label: "Face", massKg: 0.6 },
    { part: "bar", label: "Bar", massKg: 0.4 },
    { part: "rings", label: "Rings", massKg: 0.02 },
  ],
  totalKg: 1.02,
  clothGsm: 370,
  onBoardKg: 0,
};

/** Run X1 of the trade notes, 36 × 60 in with the sill 30 in above the floor, on a lift of choice. */
function x1(place: Place | undefined, purpose: Purpose | undefined, lift?: LiftCords) {
  const { resolved, ...made } = handShade({ job: { place, purpose } });
  return shown(
    reviewShade({
      ...made,
      shade: resolved,
      mass: MASS,
      lift: lift ?? { ...made.lift, rearCords: "open" },
    }),
  );
}

function shown({ values, findings, workings }: ReturnType<typeof reviewShade>) {
  return { review: values, findings, workings: workings.map(workingOf) };
}

/** The first window of a job as `plan` has it, reviewed. */
function planned(job: Job) {
  const shade = plan(job).shades[0];
  const room = job.rooms[0];
  const window = room?.windows[0];
  if (shade === undefined || room === undefined || window === undefined)
    throw new Error("invalid job: empty");
  const resolved = resolveShade(job, partsOf(job), room, window, "/rooms/0/windows/0");
  const { size, grid, form, mass, lift } = shade;
  return shown(reviewShade({ shade: resolved, size, grid, form, mass, lift }));
}

function resultOf(results: readonly RuleResult[], id: string): RuleResult {
  const found = results.find(({ ruleId }) => ruleId === id);
  if (found === undefined) throw new Error(`no result for ${id}`);
  return found;
}

const failedIds = (results: readonly RuleResult[]) =>
  results.filter(({ outcome }) => outcome === "failed").map(({ ruleId }) => ruleId);

describe("X1, for sale in Canada", () => {
  const { review, findings, workings } = x1("ca", "for-sale");

  it("fails by the numbers that the run gives: tail 30 in + travel 53.2 in = 83.2 in raised", () => {
    const free = resultOf(review.results, "CA-FREE");
    expect(free).toMatchObject({ outcome: "failed", limit: 220, pullN: 35, unit: "mm" });
    expectNear(free.value ?? 0, inches(83.2), 1e-6);
    expect(free.worst).toMatchObject({ raise: 1 });
    // Raised, the hem is 6.8 in below the top line and 30 + 53.2 in above the floor.
    expectNear(free.worst?.hemBelowTopMm ?? 0, inches(6.8), 1e-6);
    expectNear(free.worst?.hemAboveFloorMm ?? 0, inches(83.2), 1e-6);
  });

  it("finds the longest stretch at the back between the top ring and the board: 10.6 − 0.75 in", () => {
    const span = resultOf(review.results, "CA-SPAN");
    expectNear(span.value ?? 0, inches(10.6) - 19.05, 0.2);
    expect(span).toMatchObject({ outcome: "failed", worst: { raise: 0 } });
    expect(span.why).toContain("between the top ring and the board");
  });

  it("stops, and stamps what is printed", () => {
    expect(review.stamp).toBe(true);
    expect(review.stampText).toMatch(/its cords fail \d+ rules of Canada\.$/);
    const stops = findings.filter(({ severity }) => severity === "stop").map(({ id }) => id);
    expect(stops).toEqual([
      "safety.ca-free",
      "safety.ca-span",
      "safety.ca-loop",
      "safety.ca-join-l",
      "safety.ca-join-p",
      "safety.ca-nodev",
    ]);
  });

  it("a law that secondary sources report stops as well, and says so", () => {
    const finding = findings.find(({ id }) => id === "safety.ca-nodev");
    expect(finding?.severity).toBe("stop");
    expect(finding?.text).toContain("as reported by secondary sources");
  });

  it("gathers what is not proven in one finding, with the tests to do", () => {
    const unproven = findings.filter(({ severity }) => severity === "unproven");
    expect(unproven.map(({ id }) => id)).toEqual(["safety.not-proven", "safety.foothold-unknown"]);
    expect(unproven[0]?.text).toMatch(/^6 rules are not proven.*lead in the outer parts; labels/);
    expect(review.tests.map(({ id }) => id)).toEqual(["small-parts", "lead", "labels"]);
  });

  it("answers in one line that says what to do; counts and the heaviest stand after it", () => {
    expect(review.line).toBe(
      "As it is planned this shade fails 7 rules on cords. Change it before it is sold, given or hung: what would answer each stands beside its finding.",
    );
    expect(review.against).toBe(
      "Read against the rules of Canada, for sale: 7 rules failed, 6 not proven, 1 does not apply. The heaviest: A cord with a free end that anyone can reach is at most 22 cm long.",
    );
    expect(Object.values(review.counts).reduce((a, b) => a + b)).toBe(review.results.length);
  });

  it("writes the workings of its numbers, and no other number stands in the result", () => {
    for (const result of review.results) {
      for (const id of result.figures ?? []) {
        const working = workings.find((one) => one.id === id);
        expect(working?.value, result.ruleId).toBe(result.value);
      }
    }
    expect(workings.map(({ id }) => id)).toContain("safety.joined-cord-length");
  });
});

describe("what slides is never shown to hold", () => {
  it("rings within the limit and a cord that slides: not proven, with what the pull draws out and the test", () => {
    const { resolved, ...made } = handShade({ job: { place: "ca", purpose: "own-home" } });
    const grid = { ...made.grid, rows: made.grid.rows.slice(0, 2), travelMm: inches(11.4) };
    const rows = grid.rows.map((row, i) => ({ ...row, yMm: inches(8 - 4 * i) }));
    const { values: review } = reviewShade({
      ...made,
      shade: resolved,
      grid: { ...grid, rows, travelMm: inches(6) },
      mass: MASS,
      lift: { kind: "tube-wand" },
    });
    const span = resultOf(review.results, "CA-SPAN");
    expect(span.outcome).toBe("not-proven");
    expectNear(span.value ?? 0, inches(4), 1e-6);
    // All loads are far under 35 N, so the whole travel of 6 in can be fed into the stretch of 4 in, which itself
    // stretches by F/(EA): 4 in · 35 N · 0.12 / breaking strength.
    const { breakingN = Number.NaN } = resolved.cord;
    expectNear(span.pulledMm ?? 0, inches(10) + inches(4) * ((35 * 0.12) / breakingN), 1e-6);
    expect(review.tests.map(({ id }) => id)).toContain("pull-rear-cords");
  });

  it("in a sewn sleeve nothing is measured and nothing is proven", () => {
    const { review } = x1("ca", "for-sale", { kind: "spring", rearCords: "enclosed" });
    const span = resultOf(review.results, "CA-SPAN");
    expect(span).toMatchObject({ outcome: "not-proven", test: "pull-enclosure" });
    expect(span.value).toBeUndefined();
    expect(resultOf(review.results, "CA-HIDDEN")).toMatchObject({
      outcome: "not-proven",
      test: "pull-enclosure",
    });
    expect(failedIds(review.results)).toEqual([]);
    expect(review.stamp).toBe(false);
  });
});

describe("place and purpose", () => {
  it("not said: the caution profile, and it is said so", () => {
    for (const [place, purpose] of [
      [undefined, undefined],
      ["ca", undefined],
      [undefined, "for-sale"],
      ["elsewhere", "for-sale"],
    ] as const) {
      const { review, findings } = x1(place, purpose);
      expect(review.profile).toBe("caution");
      expect(review.readAs).toContain("our own caution profile");
      expect(review.readAs).toContain("not a legal limit");
      expect(review.against).toContain("no place’s law");
      expect(review.stamp).toBe(false);
      expect(failedIds(review.results)).toContain("CAUTION-FREE");
      expect(findings.some(({ severity }) => severity === "stop")).toBe(false);
    }
  });

  it("your own home: fixes and no stop, wherever it is", () => {
    for (const place of PLACES) {
      const { review, findings } = x1(place, "own-home");
      expect(review.stamp, place).toBe(false);
      expect(
        findings.map(({ severity }) => severity),
        place,
      ).not.toContain("stop");
      expect(
        findings.map(({ severity }) => severity),
        place,
      ).toContain("fix");
    }
  });

  it("your own home in the United States: its rules do not bind, and the caution profile is read beside them", () => {
    const { review } = x1("us", "own-home");
    expect(review.profile).toBe("place-and-caution");
    expect(resultOf(review.results, "US-NOHANG")).toMatchObject({ outcome: "does-not-apply" });
    expect(resultOf(review.results, "US-NOHANG").why).toContain("your own window is outside it");
    expect(failedIds(review.results)).toContain("CAUTION-FREE");
  });

  it("the vacated rule of the United States never gives a result, and is listed", () => {
    for (const purpose of PURPOSES) {
      const { review, findings } = x1("us", purpose);
      const inactive = ["US-1260", "US-2018-DEFAULT", "US-OLD-ROMAN", "US-OLD-PROBE", "US-NY-DAYCARE"];
      // The label contents are known from memory alone, and told as such.
      expect(review.listed.map(({ ruleId }) => ruleId)).toEqual(["US-LABEL-TEXT", ...inactive]);
      for (const id of inactive) {
        expect(review.results.map(({ ruleId }) => ruleId)).not.toContain(id);
        expect(findings.map((finding) => finding.id)).not.toContain(`safety.${id.toLowerCase()}`);
      }
      expect(review.listed.find(({ ruleId }) => ruleId === "US-1260")).toMatchObject({ status: "vacated" });
    }
  });

  it("stamps a law or the standard it points to, for goods sold, given or hung in public, and nothing else", () => {
    const forOthers = PURPOSES.filter((purpose) => purpose !== "own-home");
    const stamped = PLACES.flatMap((place) =>
      PURPOSES.filter((purpose) => x1(place, purpose).review.stamp).map((purpose) => `${place} ${purpose}`),
    );
    expect(stamped).toEqual([
      ...["us", "ca", "eu", "gb", "ni", "ie", "eea"].flatMap((place) =>
        forOthers.map((purpose) => `${place} ${purpose}`),
      ),
      // What is given away outside trade is outside the Australian standards.
      "au for-sale",
      "au public-building",
    ]);
  });

  it("says nothing that passes a verdict, on any lift, anywhere", () => {
    const lifts: (LiftCords | undefined)[] = [
      undefined,
      { kind: "spring" },
      { kind: "tube-wand", wandMm: 600, rearCords: "ring-locked" },
      { kind: "tube-loop", loopDropMm: 900, rearCords: "enclosed" },
      { kind: "tube-loop", loopDropMm: 900, loopDevice: "breakaway" },
      { kind: "motor", rearCords: "enclosed" },
    ];
    for (const place of [undefined, ...PLACES]) {
      for (const purpose of [undefined, ...PURPOSES]) {
        for (const lift of lifts) {
          const { review, findings } = x1(place, purpose, lift);
          for (const text of textsIn([review, findings])) expect(verdictIn(text), text).toBeUndefined();
        }
      }
    }
  });
});

/** Words that people read: ids, paths and enumerations left out. */
function textsIn(value: unknown): string[] {
  if (typeof value === "string") return value.includes(" ") ? [value] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(textsIn);
}

describe("ways out", () => {
  const job = (place: Place, purpose: Purpose) =>
    jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: { mount: "to-size" },
      },
      { place, purpose },
    );
  const patched = (before: Job, patch: Remedy["patch"] = []) => afterRemedy(before, { patch });

  it("closer rows do what they say, in the plan itself", () => {
    for (const [place, id] of [
      ["eu", "EU-REAR"],
      ["us", "CAUTION-GUIDE"],
      ["ca", "CA-SPAN"],
    ] as const) {
      const before = job(place, place === "us" ? "own-home" : "for-sale");
      const { findings } = planned(before);
      const remedy = remedyOf(findings, id, "closer");
      const after = planned(patched(before, remedy.patch));
      expect(resultOf(after.review.results, id).outcome, id).not.toBe("failed");
      // They are the fewest that do: with a row fewer it fails as it did.
      const rows = Number(/(\d+) rows$/.exec(remedy.label)?.[1]);
      const rowsPath = "/rooms/0/windows/0/shade/making/fold/rows";
      const fewer = patched(before, [
        {
          op: "add",
          path: rowsPath.replace("/making/fold/rows", "/making"),
          value: { fold: { rows: rows - 1 } },
        },
      ]);
      expect(resultOf(planned(fewer).review.results, id).outcome, id).toBe("failed");
    }
  });

  it("a shorter tail does what it says, in the plan itself", () => {
    const before = jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [600], sillAboveFloorMm: 1900, footholds: [] },
        shade: { mount: "to-size", making: { lift: { tailMm: 700 } } },
      },
      { place: "eu", purpose: "for-sale" },
    );
    const { review, findings } = planned(before);
    expect(resultOf(review.results, "EU-H-PULL").outcome).toBe("failed");
    const after = planned(patched(before, remedyOf(findings, "EU-H-PULL", "tail").patch));
    expect(resultOf(after.review.results, "EU-H-PULL").outcome).toBe("not-shown-to-fail");
  });

  it("a higher cleat does what it says, in the plan itself", () => {
    const low = { making: { lift: { cleatAboveFloorMm: 1200 } } };
    const before = jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900, footholds: [] },
        shade: low,
      },
      { place: "au", purpose: "for-sale" },
    );
    const { findings } = planned(before);
    const after = planned(patched(before, remedyOf(findings, "AU-CLEAT", "cleat").patch));
    expect(resultOf(after.review.results, "AU-CLEAT").outcome).toBe("not-shown-to-fail");
  });

  it("what cannot help is not offered: no tail is short enough for 22 cm on a shade that rises a metre", () => {
    const { findings } = planned(job("ca", "for-sale"));
    const free = findings.find(({ id }) => id === "safety.ca-free");
    const keys = JSON.stringify(free?.remedies.map(({ patch }) => patch));
    expect(keys).not.toContain("tailMm");
    expect(keys).not.toContain("rearCords");
    expect(keys).toContain('/making/lift/kind","value":"spring"');
  });

  it("two changes come as one patch, and only where no single one helps", () => {
    const { findings } = planned(job("ca", "for-sale"));
    const cordless = findings.find(({ id }) => id === "safety.gen-cordless");
    const after = patched(job("ca", "for-sale"), cordless?.remedies[0]?.patch);
    expect(after.rooms[0]?.windows[0]?.shade.making?.lift).toMatchObject({
      kind: "spring",
      rearCords: "enclosed",
    });
  });

  it("every way out of every failed rule is a patch that leaves a valid job", () => {
    for (const place of PLACES) {
      for (const purpose of PURPOSES) {
        const before = job(place, purpose);
        for (const { remedies } of planned(before).findings) {
          for (const { patch, label } of remedies) {
            expect(() => patched(before, patch), label).not.toThrow();
          }
        }
      }
    }
  });
});

function remedyOf(findings: readonly Finding[], id: string, word: string) {
  const finding = findings.find((one) => one.id === `safety.${id.toLowerCase()}`);
  const remedy = finding?.remedies.find(({ label }) => label.includes(word));
  if (remedy === undefined) throw new Error(`${id} offers no ${word}: ${finding?.text}`);
  return remedy;
}

describe("any shade", () => {
  it("is reviewed without NaN, infinity or a throw", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const text = JSON.stringify(planned(job));
        expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
      }),
      { numRuns: 200 },
    );
  });

  it("prints formulas that give their numbers when mathjs reads them", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const { id, formula, inputs, value } of workings(job)) {
          seen.add(id);
          const scope = Object.fromEntries(inputs.map((input) => [input.symbol, input.value]));
          const read = Number(evaluate(formula.replaceAll("−", "-").replaceAll("·", "*"), scope));
          expectNear(read, value, 1e-9 * Math.max(1, value), id);
        }
      }),
      { numRuns: 100 },
    );
    for (const { id } of x1("eu", "for-sale", { kind: "spring" }).workings) seen.add(id);
    expect([...seen]).toEqual(
      expect.arrayContaining(["safety.pull-cord-low-point", "safety.loop-perimeter", "safety.head-opening"]),
    );
  });

  function workings(job: Job): Working[] {
    return planned(job).workings;
  }

  /** Outcomes that got better though the change can only make things worse. */
  function eased(before: readonly RuleResult[], after: readonly RuleResult[]): string[] {
    return failedIds(before).filter((id) => resultOf(after, id).outcome !== "failed");
  }

  const anyShade = fc.record({
    place: fc.constantFrom(...PLACES),
    purpose: fc.constantFrom(...PURPOSES),
    tailMm: fc.integer({ min: 0, max: 3000 }),
    moreMm: fc.integer({ min: 1, max: 1500 }),
    sillMm: fc.integer({ min: 0, max: 3000 }),
    rowMm: fc.integer({ min: 60, max: 400 }),
    kind: fc.constantFrom("cord-lock", "spring", "tube-loop" as const),
    guide: fc.constantFrom("open", "ring-locked" as const),
  });
  type AnyShade = typeof anyShade extends fc.Arbitrary<infer T> ? T : never;

  function results({ place, purpose, tailMm, sillMm, rowMm, kind, guide }: AnyShade): RuleResult[] {
    const shade = handShade({ job: { place, purpose } });
    const topMm = sillMm + shade.size.finishedLengthMm;
    const size = { ...shade.size, topAboveFloorMm: topMm, hemAboveFloorMm: sillMm };
    const rows = shade.grid.rows.map((row, i) => ({ ...row, yMm: inches(4) + rowMm * (7 - i) }));
    const lift: LiftCords =
      kind === "cord-lock"
        ? {
            ...shade.lift,
            rearCords: guide,
            tailLoweredMm: tailMm,
            tailRaisedMm: tailMm + shade.grid.travelMm,
          }
        : kind === "tube-loop"
          ? { kind, loopDropMm: tailMm + 1, rearCords: guide }
          : { kind: "spring", rearCords: guide };
    const { resolved, form } = shade;
    return reviewShade({ shade: resolved, size, grid: { ...shade.grid, rows }, form, mass: MASS, lift })
      .values.results;
  }

  it.each([
    ["a longer tail", (shade: AnyShade) => ({ ...shade, tailMm: shade.tailMm + shade.moreMm })],
    ["a lower sill", (shade: AnyShade) => ({ ...shade, sillMm: Math.max(0, shade.sillMm - shade.moreMm) })],
    ["a wider spacing", (shade: AnyShade) => ({ ...shade, rowMm: shade.rowMm + shade.moreMm })],
    ["open rings", (shade: AnyShade) => ({ ...shade, guide: "open" as const })],
  ])("%s never turns what failed into something better", (_, worse) => {
    fc.assert(
      fc.property(anyShade, (shade) => {
        expect(eased(results(shade), results(worse(shade)))).toEqual([]);
      }),
      { numRuns: 250 },
    );
  });
});
