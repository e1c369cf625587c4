import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { afterRemedy, PLAIN_MASS, plannedLock, resolvedShadesOf, rigInput } from "../../test/rig-inputs.ts";
import type { Finding } from "../figures/index.ts";
import type { CordLock, Job, JobInput } from "../job/index.ts";
import type { Mass } from "../shade-plan/index.ts";

type Making = NonNullable<NonNullable<Parameters<typeof jobWith>[0]["shade"]>["making"]>;

function findingsOf(job: Job, mass: Mass = PLAIN_MASS): Finding[] {
  const findings = resolvedShadesOf(job).flatMap(
    (resolved) => plannedLock(rigInput(resolved, mass)).findings,
  );
  return findings.map((finding) => ({
    ...finding,
    text: plain(finding.text),
    remedies: finding.remedies.map((remedy) => ({ ...remedy, label: plain(remedy.label) })),
  }));
}

/** Texts hold no-break spaces between number and unit. */
function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}

interface Made {
  making?: Making;
  widthMm?: number;
  job?: Partial<JobInput>;
  sillMm?: number;
}

function job({ making = {}, widthMm = 900, job: rest = {}, sillMm }: Made): Job {
  return jobWith(
    {
      opening: {
        widthsMm: [widthMm],
        heightsMm: [1500],
        ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
      },
      shade: { mount: "to-size", making },
    },
    { units: { system: "metric", ruler: "1 mm" }, ...rest },
  );
}

function find(list: Finding[], id: string): Finding {
  const found = list.find((finding) => finding.id === id);
  if (!found) throw new Error(`no finding ${id} among ${list.map((one) => one.id).join(", ")}`);
  return found;
}

/** Every remedy of the finding makes it go away, and no other stop takes its place. */
function expectCured(before: Job, id: string, mass?: Mass): Finding {
  const finding = find(findingsOf(before, mass), id);
  expect(finding.remedies.length, `remedies of ${id}`).toBeGreaterThan(0);
  for (const remedy of finding.remedies) {
    const after = findingsOf(afterRemedy(before, remedy), mass);
    expect(
      after.map((one) => one.id),
      remedy.label,
    ).not.toContain(id);
    expect(
      after.filter(({ severity }) => severity === "stop").map((one) => one.id),
      remedy.label,
    ).toEqual([]);
  }
  return finding;
}

const myLock = (more: Partial<CordLock> = {}) => ({
  id: "mine",
  name: "My lock",
  housingLengthMm: 30,
  housingWidthMm: 22,
  housingHeightMm: 24,
  dividerWires: 2,
  cordsMax: 6,
  cordNominalMm: 1.4,
  ...more,
});

describe("a lock that does not fit", () => {
  test("too many cords for the maker’s lock: another lock, or fewer columns", () => {
    const finding = expectCured(
      job({ making: { lift: { lock: "lock-4-slot" }, columns: { count: 8 } } }),
      "lift.too-many-cords",
    );
    expect(finding.text).toBe("“Four-slot lock” takes at most 7 cords; this shade has 8.");
    expect(finding.severity).toBe("stop");
  });

  test("too many for any: fewer columns alone", () => {
    const finding = expectCured(job({ making: { columns: { count: 12 } } }), "lift.too-many-cords");
    expect(finding.remedies.map(({ label }) => label)).toEqual([
      "Use 11 columns, with ribs so that the folds do not bow",
    ]);
  });

  test("cord that is too thin for the lock: another lock or another cord", () => {
    expectCured(job({ making: { lift: { lock: "lock-4-slot", cord: "cord-0-9" } } }), "lift.cord-diameter");
  });

  test("nothing said of range or gap: not proven", () => {
    const bare = job({
      making: { lift: { lock: "mine" } },
      job: { hardware: { locks: [{ ...myLock(), cordNominalMm: undefined }] } },
    });
    expect(find(findingsOf(bare), "lift.fit-untested").severity).toBe("unproven");
  });

  test("thin cord goes inside, invented parts are named, the maker’s own are not", () => {
    const thin = findingsOf(job({ making: { lift: { cord: "cord-0-9" } } }));
    expect(find(thin, "lift.inner-slots-only").severity).toBe("note");
    expect(find(thin, "lift.demo-lock").severity).toBe("note");
    const own = findingsOf(
      job({ making: { lift: { lock: "mine" } }, job: { hardware: { locks: [myLock()] } } }),
    );
    expect(own.map(({ id }) => id)).not.toContain("lift.demo-lock");
  });
});

describe("no place for the lock", () => {
  // Ten columns on 600 mm stand 55 mm apart; a lock of 30 mm needs 66 mm between eyes and 51 mm outside.
  const crowded: Made = { widthMm: 600, making: { columns: { count: 10 } } };

  test("is told with what is needed and what is there", () => {
    const finding = find(findingsOf(job(crowded)), "rig.no-seat");
    expect(finding.severity).toBe("stop");
    expect(finding.text).toContain("between the last two eyes it needs 66 mm and has 55 mm");
    expect(finding.text).toContain("outside the last eye it needs 51 mm of board and has 48 mm");
  });

  test("each remedy makes room", () => {
    const finding = expectCured(job(crowded), "rig.no-seat");
    expect(finding.remedies.map(({ label }) => label)).toEqual([
      "Use 8 columns",
      "Set the edge columns in by 55 mm",
      "Let the cords run straight for only 8 mm",
    ]);
  });

  test("a board that is cut too short is made longer", () => {
    const finding = expectCured(
      job({
        ...crowded,
        making: { ...crowded.making, mount: { boardShorterMm: 20 }, columns: { count: 10, edgeInsetMm: 55 } },
      }),
      "rig.no-seat",
    );
    expect(finding.remedies.map(({ label }) => label)).toContain(
      "Make the board only 8 mm shorter than the shade",
    );
  });

  test("a shorter lock of the maker’s is offered", () => {
    const finding = expectCured(
      job({
        widthMm: 600,
        making: { columns: { count: 8 }, lift: { lock: "long" } },
        job: {
          hardware: {
            locks: [
              myLock({ id: "long", housingLengthMm: 60, cordsMax: 8 }),
              myLock({ id: "short", name: "Short lock", housingLengthMm: 30, cordsMax: 8 }),
            ],
          },
        },
      }),
      "rig.no-seat",
    );
    expect(finding.remedies.map(({ label }) => label)).toContain("Use the shorter “Short lock”");
  });

  test("a seat that was asked for on the wrong side of the eye", () => {
    const finding = expectCured(job({ making: { lift: { seat: "outside" } } }), "rig.no-seat");
    expect(finding.remedies[0]?.label).toBe("Seat the lock between the last two eyes");
  });

  test("a place that the maker fixed on an eye moves off it", () => {
    const finding = expectCured(job({ making: { lift: { seatMm: 849 } } }), "rig.seat-not-clear");
    expect(finding.remedies.map(({ label }) => label)).toEqual([
      "Move it to 816 mm from the left edge",
      "Let the planner seat the lock",
    ]);
  });
});

describe("where the tail hangs", () => {
  test("a lock within a hand’s reach of the edge is passed over", () => {
    expect(findingsOf(job({})).map(({ id }) => id)).not.toContain("rig.tail-behind-cloth");
  });

  test("one that the maker set far in hangs its tail behind the cloth; the planner’s seat cures it", () => {
    const finding = expectCured(job({ making: { lift: { seatMm: 500 } } }), "rig.tail-behind-cloth");
    expect(finding.remedies[0]?.label).toBe("Let the planner seat the lock");
  });

  test("edge columns far in push the lock in too; nearer ones cure it", () => {
    expectCured(job({ making: { columns: { edgeInsetMm: 140 } } }), "rig.tail-behind-cloth");
  });
});

describe("pull and strength", () => {
  const heavy: Mass = {
    parts: [{ part: "bar", label: "Bar", massKg: 3 }],
    totalKg: 3,
    clothGsm: 0,
    onBoardKg: 0,
  };

  test.each([
    // 3 kg are 29.4 N; fixed eyes and the roller ask for a good 1.6 times as much.
    [1.2, undefined, undefined],
    [1.5, "note", /22\.2 N/],
    // From 70 % of 44 N a pull is to be avoided (EN 1005-3).
    [2.1, "note", /More than 30\.8 N is to be avoided/],
    [3, "fix", /44 N/],
  ])("%f kg on the cords", (massKg, weight, text) => {
    const mass: Mass = {
      parts: [{ part: "bar", label: "Bar", massKg }],
      totalKg: massKg,
      clothGsm: 0,
      onBoardKg: 0,
    };
    const finding = findingsOf(job({}), mass).find(({ id }) => id === "lift.hard-pull");
    expect(finding?.severity).toBe(weight);
    if (text) expect(finding?.text).toMatch(text);
  });

  test("in a public building the easy pull is asked for", () => {
    const mass: Mass = { ...heavy, parts: [{ part: "bar", label: "Bar", massKg: 1.5 }] };
    const there = job({ job: { purpose: "public-building" } });
    expect(find(findingsOf(there, mass), "lift.hard-pull").severity).toBe("fix");
  });

  test("pulleys for eyes, and a lighter bar in place of steel, none in place of wood", () => {
    const labels = (bar: string) =>
      find(findingsOf(job({ making: { board: { bar } } }), heavy), "lift.hard-pull").remedies.map(
        (r) => r.label,
      );
    const pulley = "Use “Pulley 16 mm on a screw” in place of the eyes";
    expect(labels("bar-steel-19x3")).toEqual([
      pulley,
      "Use the lighter “Flat aluminium bar 19 × 3 mm”",
      "Use the lighter “Flat wood lath 25 × 3 mm”",
    ]);
    expect(labels("bar-wood-25x3")).toEqual([pulley]);
  });

  const withCord = (breakingN?: number) =>
    job({
      making: { lift: { cord: "thread" } },
      job: { hardware: { cords: [{ id: "thread", name: "Thread", diameterMm: 1.4, breakingN }] } },
    });

  test("a weak cord is refused with a stronger one to press", () => {
    expect(find(findingsOf(withCord(50), heavy), "lift.cord-too-weak").severity).toBe("stop");
    expectCured(withCord(50), "lift.cord-too-weak", heavy);
    expect(findingsOf(withCord(500), heavy).map(({ id }) => id)).not.toContain("lift.cord-too-weak");
  });

  test("strength that is not given is asked for", () => {
    const { severity, text } = find(findingsOf(withCord(), heavy), "lift.strength-unknown");
    expect(severity).toBe("unproven");
    // Just what a cord whose strength is given is refused for: its knot counts as much as its pull.
    const refused = find(findingsOf(withCord(50), heavy), "lift.cord-too-weak").text;
    const needed = /([\d.]+\s*(?:N|lbf?))\.$/.exec(refused)?.[1];
    expect(needed).toBeDefined();
    expect(text).toContain(`breaks above ${needed}`);
  });

  test("stiff and limp shares are told apart only where they differ by more than a tenth", () => {
    const ids = (making: Making) => findingsOf(job({ making })).map(({ id }) => id);
    // Two bays and columns at the very edge: 10/8 against 1.
    expect(ids({ columns: { count: 3, edgeInsetMm: 1 } })).toContain("lift.shares-differ");
    expect(ids({ columns: { count: 2 } })).not.toContain("lift.shares-differ");
  });
});

describe("the tail", () => {
  test("that would lie on the floor is shortened", () => {
    const low = job({ sillMm: 300, making: { lift: { tailMm: 1200 } } });
    expectCured(low, "rig.tail-on-floor");
  });

  test("that ends above the reach of a hand is lengthened", () => {
    const high = job({ sillMm: 1500, making: { lift: { tailMm: 300 } } });
    expectCured(high, "rig.tail-out-of-reach");
  });

  test("that cannot be wound on its cleat is lengthened", () => {
    const short = job({ sillMm: 2200, making: { lift: { tailMm: 0, cleatAboveFloorMm: 1600 } } });
    const finding = find(findingsOf(short), "rig.tail-short-of-cleat");
    expect(finding.severity).toBe("note");
    expectCured(short, "rig.tail-short-of-cleat");
  });

  test("says nothing where the height above the floor is not known", () => {
    const ids = findingsOf(job({ making: { lift: { tailMm: 9000 } } })).map(({ id }) => id);
    expect(ids.filter((id) => id.startsWith("rig.tail"))).toEqual([]);
  });
});

describe("threading", () => {
  test("six cords in a three-slot lock share a slot", () => {
    const three = job({
      making: { columns: { count: 6 }, lift: { lock: "mine" } },
      job: { hardware: { locks: [myLock()] } },
    });
    const finding = find(findingsOf(three), "rig.shared-slot");
    expect(finding.text).toContain("slot 3 takes cords 5 and 6 from both");
  });

  test("nine cords crowd a small eye", () => {
    const small = job({
      widthMm: 1800,
      making: { columns: { count: 10 }, lift: { eye: "small" } },
      job: { hardware: { eyes: [{ id: "small", name: "Small eye", outsideDiameterMm: 8 }] } },
    });
    expect(find(findingsOf(small), "rig.crowded-eye").severity).toBe("fix");
    expect(findingsOf(job({})).map(({ id }) => id)).not.toContain("rig.crowded-eye");
  });

  test("a spool shorter than the longest cord", () => {
    const short = job({
      making: { lift: { cord: "short" } },
      job: { hardware: { cords: [{ id: "short", name: "Short", diameterMm: 1.4, spoolMm: 2000 }] } },
    });
    expect(find(findingsOf(short), "rig.short-spool").severity).toBe("stop");
  });
});
