import { describe, expect, test } from "vitest";
import { jobWith, resolvedWith } from "../../../test/job-with.ts";
import { afterRemedy, plannedTube, resolvedShadesOf, tubeInput } from "../../../test/rig-inputs.ts";
import type { Drive, JobInput, ResolvedShade } from "../../job/index.ts";
import type { Mass } from "../../shade-plan/index.ts";
import type { TubeKind } from "./tube-lift-parts.ts";

type WindowInput = Partial<JobInput["rooms"][number]["windows"][number]>;

const SIZE: Drive = {
  id: "own",
  name: "Own drive",
  kind: "loop",
  lengthMm: 30,
  heightMm: 40,
  depthMm: 30,
  ratio: 1,
  screws: 2,
};

function massOf(totalKg: number): Mass {
  return { parts: [{ part: "face", label: "Face", massKg: totalKg }], totalKg, clothGsm: 300, onBoardKg: 0 };
}

function found(kind: TubeKind, drive: Partial<Drive>, totalKg: number) {
  const resolved: ResolvedShade = { ...resolvedWith({}), drive: { ...SIZE, ...drive } };
  return plannedTube(tubeInput(resolved, kind, massOf(totalKg))).findings;
}

const of = (id: string, findings: ReturnType<typeof found>) => findings.find((finding) => finding.id === id);

describe("limits that a drive's maker states", () => {
  test.each([
    [2.99, false],
    [3, false],
    [3.01, true],
  ])("heaviest 3 kg, shade %f kg: overloaded %s", (kg, over) => {
    expect(of("lift.drive-overloaded", found("tube-loop", { massMaxKg: 3 }, kg)) !== undefined).toBe(over);
  });

  test.each([
    [0.99, true],
    [1, false],
    [1.01, false],
  ])("spring from 1 kg, shade %f kg: too strong %s", (kg, strong) => {
    const findings = found("spring", { kind: "spring", massMinKg: 1, massMaxKg: 5 }, kg);
    expect(of("lift.spring-too-strong", findings) !== undefined).toBe(strong);
  });

  test("a limit passed by less than a text shows is never the same weight twice", () => {
    const finding = of("lift.drive-overloaded", found("tube-loop", { massMaxKg: 2.2 }, 2.2003));
    expect(finding?.text).toContain("takes at most 4.8\u00a0lb; this shade weighs 4.85\u00a0lb");
  });

  test("an unstated limit is not proven, never passed over", () => {
    const finding = of("lift.drive-limit-unknown", found("tube-wand", { kind: "wand" }, 1));
    expect(finding).toMatchObject({ severity: "unproven" });
  });

  test("a motor's rating is held against the torque: stops above it and not below", () => {
    const torqueNm = (() => {
      const resolved: ResolvedShade = { ...resolvedWith({}), drive: { ...SIZE, kind: "motor" } };
      return plannedTube(tubeInput(resolved, "motor", massOf(2))).values.torqueRaisedNm;
    })();
    const at = (factor: number) =>
      of("lift.motor-torque", found("motor", { kind: "motor", torqueNm: factor * torqueNm }, 2));
    expect(at(1.001)).toBeUndefined();
    expect(at(0.999)).toMatchObject({ severity: "stop" });
  });

  test("5 lb on one cord (“Soft-shade clutch installation sheet”): said above it and not at it", () => {
    const resolved: ResolvedShade = { ...resolvedWith({}), drive: SIZE };
    const { cords } = plannedTube(tubeInput(resolved, "tube-loop", massOf(1))).values;
    const heaviestN = Math.max(...cords.map(({ loadN }) => loadN));
    // 5 lbf is 5 × 4.4482216152605 N (NIST SP 811, appendix B.8); loads grow with the mass.
    const atLimitKg = (5 * 4.4482216152605) / heaviestN;
    expect(of("lift.heavy-spool", found("tube-loop", {}, atLimitKg * 0.999))).toBeUndefined();
    expect(of("lift.heavy-spool", found("tube-loop", {}, atLimitKg * 1.001))).toMatchObject({
      severity: "note",
    });
  });
});

describe("a drive of another kind", () => {
  const drive = { ...SIZE, kind: "spring" as const };
  const { values: lift, findings } = plannedTube(tubeInput({ ...resolvedWith({}), drive }, "tube-loop"));

  test("is not planned; the first loop drive that does stands in", () => {
    expect(lift.drive.id).toBe("loop-slim");
    expect(of("lift.drive-of-other-kind", findings)?.remedies[0]?.patch).toMatchObject([
      { path: expect.stringMatching(/\/making\/lift\/kind$/), value: "spring" },
    ]);
  });
});

/** Every remedy of a finding is pressed in the job; in each the finding must be gone. */
function pressed(window: WindowInput, kind: TubeKind, id: string): void {
  const job = jobWith(window);
  const findingsOf = (pressedJob: typeof job) => {
    const [resolved] = resolvedShadesOf(pressedJob);
    if (resolved === undefined) throw new Error("invalid test job: no window");
    return plannedTube(tubeInput(resolved, kind, massOf(1.2))).findings;
  };
  const finding = of(id, findingsOf(job));
  expect(finding?.remedies.length, id).toBeGreaterThan(0);
  for (const remedy of finding?.remedies ?? []) {
    expect(of(id, findingsOf(afterRemedy(job, remedy))), remedy.label).toBeUndefined();
  }
}

describe("remedies, each pressed", () => {
  test("no place for the drive: another inset, a longer board", () => {
    pressed(
      {
        opening: { widthsMm: [900], heightsMm: [1400] },
        shade: { making: { columns: { edgeInsetMm: 30, largestSpacingMm: 50 } } },
      },
      "tube-loop",
      "rig.no-drive-place",
    );
  });

  test("a motor longer than the bays: fewer columns", () => {
    pressed(
      { opening: { widthsMm: [610], heightsMm: [900] }, shade: { mount: "to-size" } },
      "motor",
      "rig.no-drive-place",
    );
  });

  test("a loop behind the cloth: another inset", () => {
    pressed({ shade: { making: { columns: { edgeInsetMm: 35 } } } }, "tube-loop", "rig.control-behind");
  });

  test("spools that rub: fewer columns", () => {
    pressed({ shade: { making: { columns: { count: 40 } } } }, "spring", "rig.spools-touch");
  });

  test("a spool beyond the board: another inset", () => {
    pressed({ shade: { making: { columns: { edgeInsetMm: 5 } } } }, "spring", "rig.spool-off-board");
  });

  test("a loop that reaches the floor, or nobody reaches: another length", () => {
    const window = (loopDropMm: number) => ({
      opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
      shade: { making: { lift: { loopDropMm } } },
    });
    pressed(window(2600), "tube-loop", "rig.loop-on-floor");
    pressed(window(200), "tube-loop", "rig.loop-out-of-reach");
  });
});
