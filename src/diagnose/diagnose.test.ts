import fc from "fast-check";
import { immutableJSONPatch, type JSONPatchDocument } from "immutable-json-patch";
import { describe, expect, test } from "vitest";
import { anyJob } from "../../test/arbitrary-job.ts";
import { jobWith } from "../../test/job-with.ts";
import { CATALOGUE, jobSchema } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import { inches, RULERS } from "../units/index.ts";
import { askLock, CAUSES, diagnose, levelHem, SYMPTOMS } from "./index.ts";

const plain = (making: object = {}, hardware: object = {}) =>
  jobWith(
    { opening: { widthsMm: [1100], heightsMm: [1500] }, shade: { mount: "outside", making } },
    { hardware, units: { system: "metric", ruler: "1 mm" } },
  );

describe("symptoms and causes", () => {
  test.each(SYMPTOMS)("%s has a cause for some lift", (symptom) => {
    const kinds = ["cord-lock", "spring", "tube-loop"] as const;
    const found = kinds.flatMap((kind) => diagnose(plain({ lift: { kind } }), 0, 0, symptom));
    expect(found.length).toBeGreaterThan(0);
  });

  test("a cord thinner than the gap is what the numbers point to, and its remedy cures it", () => {
    // “Hardware instruction and gallery pages”: thin cord wedges between roller and housing.
    const gap = { ...CATALOGUE.locks[0], id: "own", name: "Own lock", endGapMm: 1.6 };
    const job = plain({ lift: { kind: "cord-lock", lock: "own", cord: "cord-1-4" } }, { locks: [gap] });
    const [first] = diagnose(job, 0, 0, "lock-jams");
    expect(first?.id).toBe("cord-thinner-than-gap");
    expect(first?.evidence).toBe("points-to-it");
    expect(first?.why).toContain("1.6");
    const safe = plain({ lift: { kind: "cord-lock", lock: "own", cord: "cord-1-8" } }, { locks: [gap] });
    const again = diagnose(safe, 0, 0, "lock-jams").find(({ id }) => id === "cord-thinner-than-gap");
    expect(again?.evidence).toBe("speaks-against");
  });

  test("a headrail allowance that is too short is named for a shade that will not rise, with its remedy", () => {
    const job = plain({ fold: { headrailMm: 20 } });
    const [first] = diagnose(job, 0, 0, "will-not-rise");
    expect(first?.id).toBe("headrail-short");
    expect(first?.evidence).toBe("points-to-it");
    const [remedy] = first?.remedies ?? [];
    const cured = jobSchema.parse(immutableJSONPatch(job, (remedy?.patch ?? []) as JSONPatchDocument));
    expect(diagnose(cured, 0, 0, "will-not-rise").find(({ id }) => id === "headrail-short")?.evidence).toBe(
      "speaks-against",
    );
  });

  test("any job, any symptom: whole sentences, no number that is none, what the numbers point to first", () => {
    const order = ["points-to-it", "cannot-tell", "speaks-against"];
    fc.assert(
      fc.property(anyJob, fc.constantFrom(...SYMPTOMS), (job, symptom) => {
        const causes = diagnose(job, 0, 0, symptom);
        const ranks = causes.map(({ evidence }) => order.indexOf(evidence));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        for (const { why, test: how, cure, title } of causes) {
          expect(`${title} ${why} ${how} ${cure}`).not.toMatch(/NaN|Infinity|undefined|\bsafe\b|compliant/);
          for (const words of [why, how, cure]) expect(words).toMatch(/^[A-Z“0-9].*[.?]$/);
        }
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    // “How far apart do I space my rings”: 10 to 12 in without ribs, 12 to 14 with.
    ["13 in, no ribs", {}, "points-to-it"],
    ["13 in with ribs", { ribs: { kind: "strip-pocket" } }, "cannot-tell"],
  ] as const)("columns %s", (_, making, evidence) => {
    const job = jobWith(
      {
        opening: { widthsMm: [inches(43)], heightsMm: [1500] },
        shade: {
          mount: "to-size",
          style: "ribs" in making ? "ribbed" : "flat",
          making: { columns: { count: 4, edgeInsetMm: inches(2) }, ...making },
        },
      },
      { units: { system: "metric", ruler: "1 mm" } },
    );
    const found = diagnose(job, 0, 0, "folds-sag").find(({ id }) => id === "columns-too-far");
    expect(found?.why).toMatch(/330\smm/);
    expect(found?.evidence).toBe(evidence);
  });

  test("ribs are counted as they are made, those midway between two rows too", () => {
    const ribbed = { kind: "bare", face: "front", at: "half-folds" } as const;
    const job = jobWith({ shade: { style: "ribbed", making: { ribs: ribbed } } });
    const [shade] = plan(job).shades;
    const ribs = shade?.cloth.ribLines.length ?? 0;
    expect(ribs).toBeGreaterThan(shade?.form.ribs.rows.length ?? 0);
    const found = diagnose(job, 0, 0, "folds-sag").find(({ id }) => id === "no-ribs");
    expect(found?.why).toContain(` ${ribs} ribs.`);
  });

  test("each cause belongs to a symptom that people know", () => {
    for (const { symptoms } of CAUSES) expect(SYMPTOMS).toEqual(expect.arrayContaining([...symptoms]));
  });
});

describe("levelling the hem", () => {
  const at = (...heights: number[]) =>
    heights.map((heightMm, i) => ({ column: i + 1, xMm: 300 * i, heightMm }));

  test("by hand: one knot of five is low, and only that one moves", () => {
    const found = levelHem(at(20, 20, 14, 20, 20), "1 mm");
    expect(found.moves).toEqual([{ column: 3, upMm: 6 }]);
    expect(found.straight).toBe(false);
  });

  test("by hand: a straight slope is the board", () => {
    const found = levelHem(at(10, 12.5, 15, 17.5, 20), "1 mm");
    expect(found.straight).toBe(true);
    expect(found.slopeMm).toBeCloseTo(10, 9);
  });

  test("after the moves the hem is level within two marks, and a level hem asks for none", () => {
    const heights = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(heights, fc.constantFrom(...RULERS), (list, ruler) => {
        const found = levelHem(at(...list), ruler);
        const after = list.map(
          (height, i) => height + (found.moves.find(({ column }) => column === i + 1)?.upMm ?? 0),
        );
        const mark = { "1 mm": 1, "1/8 in": 3.175, "1/16 in": 1.5875 }[ruler as "1 mm"] ?? 3.175;
        expect(Math.max(...after) - Math.min(...after)).toBeLessThanOrEqual(2 * mark + 1e-6);
        expect(levelHem(at(...list.map(() => 7)), ruler).moves).toEqual([]);
      }),
    );
  });

  test("one column cannot be levelled", () => {
    expect(() => levelHem(at(3), "1 mm")).toThrow("invalid measured");
  });
});

test("eight cords of 1.4 mm, with no shade at all: the six-slot lock, and why not the other", () => {
  const [first, second] = askLock(8, 1.4, CATALOGUE.locks);
  expect([first?.lock.id, first?.takes]).toEqual(["lock-6-slot", true]);
  expect([second?.lock.id, second?.takes]).toEqual(["lock-4-slot", false]);
  expect(second?.remarks[0]?.text).toBe("The lock takes at most 7 cords; you have 8.");
});
