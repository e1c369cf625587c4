import { describe, expect, test } from "vitest";
import type { JobInput } from "../../src/job/index.ts";
import { patched, plan, proveRemedies } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";

type Hardware = NonNullable<JobInput["hardware"]>;
type Lock = NonNullable<Hardware["locks"]>[number];

const SIZES = { housingLengthMm: 32, housingWidthMm: 26, housingHeightMm: 22, dividerWires: 3 };
const lock = (more: Partial<Lock> = {}): Lock => ({ id: "mine", name: "My lock", ...SIZES, ...more });

/** Five columns, with cord of 1.4 mm. */
function jobOf(hardware: Hardware, lift: object = {}) {
  return jobWith(
    { shade: { mount: "to-size", making: { columns: { count: 5 }, lift } } },
    { hardware, units: { system: "metric", ruler: "1 mm" } },
  );
}

function planned(hardware: Hardware, lift: object = {}) {
  const job = jobOf(hardware, lift);
  const [shade] = proveRemedies(job, plan(job)).shades;
  if (shade?.lift.takeUp !== "lock") throw new Error("invalid test job: no lock");
  return { job, shade, lift: shade.lift, ids: shade.findings.map(({ id }) => id) };
}

function finding(from: ReturnType<typeof planned>, id: string) {
  const found = from.shade.findings.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no ${id} among ${from.ids.join(", ")}`);
  return { ...found, text: found.text.replaceAll("\u00a0", " ") };
}

describe("locks of one's own", () => {
  test("one that fits is planned with, and none of the catalogue", () => {
    const one = planned({ locks: [lock({ cordsMax: 8, cordMinMm: 1.2, cordMaxMm: 1.6 })] });
    expect(one.lift.lockId).toBe("mine");
    expect(one.ids).not.toContain("lift.no-own-lock");
    expect(one.ids).not.toContain("lift.demo-lock");
  });

  test("where none fits no example stands in: each is refused with its reasons, and what would do is told", () => {
    const one = planned({
      locks: [
        lock({ id: "small", name: "Small", cordsMax: 3, cordNominalMm: 1.4 }),
        lock({ id: "thick", name: "Thick", cordsMax: 8, cordMinMm: 2, cordMaxMm: 3 }),
      ],
    });
    expect(["small", "thick"]).toContain(one.lift.lockId);
    const { severity, text } = finding(one, "lift.no-own-lock");
    expect(severity).toBe("stop");
    expect(text).toMatch(/“Small” takes at most 3 cords; this shade has 5/);
    expect(text).toMatch(/“Thick” is made for cord of 2 mm to 3 mm; this cord is 1\.4 mm/);
    expect(text).toMatch(
      /What would do: a lock for cord of 1\.4 mm that takes 5 cords, with 3 slots or more/,
    );
    expect(one.ids).not.toContain("lift.too-many-cords");
  });

  test("a cord of one's own that a lock takes is a remedy, and cures", () => {
    const one = planned({
      locks: [lock({ cordsMax: 8, cordMinMm: 2, cordMaxMm: 3 })],
      cords: [
        { id: "thin", name: "Thin cord", diameterMm: 1.2, breakingN: 900 },
        { id: "stout", name: "Stout cord", diameterMm: 2.2, breakingN: 900 },
      ],
    });
    const { remedies } = finding(one, "lift.no-own-lock");
    const remedy = remedies.find(({ label }) => label === "Use “Stout cord”");
    if (remedy === undefined) throw new Error("not offered");
    const [after] = plan(patched(one.job, remedy.patch)).shades;
    expect(after?.findings.filter(({ severity, stage }) => severity === "stop" && stage === "lift")).toEqual(
      [],
    );
  });

  test("a lock of which nothing is measured still gives a plan, which says what is not known", () => {
    const one = planned({ locks: [{ id: "mine", name: "My lock" }] });
    const { severity, text } = finding(one, "lift.lock-unmeasured");
    expect(severity).toBe("unproven");
    expect(text).toMatch(/length along the board.*width.*height.*number of slots/);
    expect(one.lift.lockId).toBe("mine");
  });

  test("without a stated capacity it is judged by diameter, gap and a hold test", () => {
    const bare = lock({ cordMinMm: 1.2, cordMaxMm: 1.6 });
    const untested = planned({ locks: [bare] });
    expect(untested.ids).toEqual(expect.arrayContaining(["lift.capacity-unknown", "lift.hold-untested"]));
    expect(untested.ids).not.toContain("lift.no-own-lock");
    const needed = untested.shade.workings.find(({ id }) => id === "lift.hold-needed")?.value ?? 0;
    const largest = Math.max(...untested.lift.cords.map(({ loadN }) => loadN));
    expect(needed).toBeCloseTo(2 * largest, 9);
    const tested = (leastN: number, cordDiameterMm = 1.4) =>
      planned({ locks: [{ ...bare, tests: { hold: { readingsN: [leastN + 5, leastN], cordDiameterMm } } }] });
    expect(tested(needed + 0.01).ids.filter((id) => /lift\.(?:hold|capacity)/.test(id))).toEqual([]);
    expect(finding(tested(needed - 0.01), "lift.hold-short").severity).toBe("fix");
    expect(finding(tested(needed / 2 - 0.01), "lift.hold-short").severity).toBe("stop");
    expect(finding(tested(needed * 3, 1.8), "lift.hold-other-cord").severity).toBe("unproven");
  });

  test("the gap found by feeler sends thin cord to the inner slots", () => {
    const one = planned({
      locks: [lock({ cordsMax: 8, cordMinMm: 1.2, cordMaxMm: 1.6, tests: { gap: { gapMm: 1.5 } } })],
    });
    expect(one.ids).toContain("lift.no-own-lock");
    const four = planned({
      locks: [lock({ dividerWires: 5, cordsMax: 12, tests: { gap: { gapMm: 1.5 } }, cordNominalMm: 1.4 })],
    });
    expect(four.ids).toContain("lift.inner-slots-only");
    expect(four.lift.slots.filter(({ cords }) => cords.length > 0).every(({ usable }) => usable)).toBe(true);
  });

  test("a cord of one's own without a diameter is named, and says that it is not planned with", () => {
    const one = planned({ cords: [{ id: "mine", name: "My cord" }] }, { cord: "mine" });
    const { severity, text } = finding(one, "cloth.unknown-part");
    expect(severity).toBe("stop");
    expect(text).toMatch(/“My cord” cannot be planned with yet: not known is its diameter/);
  });
});

describe("cords, eyes and rings of one's own", () => {
  const cords = [{ id: "mine", name: "My cord", diameterMm: 1.6, breakingN: 900 }];
  const eyes = [
    { id: "pulley", name: "My pulley", outsideDiameterMm: 18, pulleyShare: 0.6 },
    { id: "ring-eye", name: "My eye", outsideDiameterMm: 14 },
  ];
  const rings = [{ id: "hoop", name: "My ring", diameterMm: 15 }];
  const bought = (one: ReturnType<typeof planned>) =>
    one.shade.cost.shopping.map(({ label }) => label).join();

  test("are planned with where none was chosen, a plain eye before a pulley, and bought", () => {
    const one = planned({ cords, eyes, rings });
    expect(one.lift.cordId).toBe("mine");
    expect(one.lift.eyeDiameterMm).toBe(14);
    expect(bought(one)).toMatch(/My cord.*My eye|My eye.*My cord/);
    expect(bought(one)).toContain("My ring");
    expect(one.ids).not.toContain("lift.example-parts");
  });

  test("give way to what the shade or the workshop chose", () => {
    expect(planned({ cords }, { cord: "cord-0-9" }).lift.cordId).toBe("cord-0-9");
    const job = jobWith(
      { shade: { mount: "to-size" } },
      { hardware: { cords }, workshop: { lift: { cord: "cord-1-8" } } },
    );
    expect(plan(job).shades[0]?.lift.cordId).toBe("cord-1-8");
  });

  test("what is still an example is named to who has parts, and to nobody else", () => {
    expect(planned({}).ids).not.toContain("lift.example-parts");
    const { severity, text } = finding(planned({ cords }), "lift.example-parts");
    expect(severity).toBe("note");
    expect(text).not.toContain("My cord");
    expect(text).toMatch(/“Ring 12 mm”.* are invented for demonstration/);
  });

  test("one of which too little is known is named, with the example in its place", () => {
    const one = planned({ cords: [{ id: "half", name: "Half-known cord" }] });
    expect(one.lift.cordId).toBe("cord-1-4");
    expect(finding(one, "lift.example-parts").text).toMatch(
      /Too little is known of “Half-known cord”, your own: measure what is missing/,
    );
  });

  test("a part that is asked for is not taken for one of another kind with its id", () => {
    const one = planned({ cords: [{ id: "half", name: "Half-known cord" }] }, { ring: "half" });
    expect(finding(one, "cloth.unknown-part").text).toContain("There is no ring “half” in this job");
  });
});
