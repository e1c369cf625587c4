import { describe, expect, it } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import type { LiftKind } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import type { Lift } from "../../shade-plan/index.ts";

const METRIC = { system: "metric", ruler: "1 mm" } as const;
const plain = (text = "") => text.replaceAll("\u00a0", " ");

function planned<K extends LiftKind>(kind: K, drive: object = {}, lift: object = {}) {
  const own = {
    id: "own",
    name: "Own drive",
    kind: { spring: "spring", "tube-wand": "wand", "tube-loop": "loop", motor: "motor" }[kind as string],
  };
  const sizes = { lengthMm: 80, heightMm: 40, depthMm: 30, ratio: 1, efficiency: 1, massMaxKg: 9, ...drive };
  const [shade] = plan(
    jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: { mount: "to-size", making: { lift: { kind, drive: "own", ...lift } } },
      },
      { units: METRIC, hardware: { drives: [{ ...own, ...sizes }] as never } },
    ),
  ).shades;
  if (shade?.lift.kind !== kind) throw new Error(`invalid test job: ${shade?.lift.kind}`);
  const said = (id: string) => shade.findings.find((one) => one.id === id);
  return { shade, lift: shade.lift as Extract<Lift, { kind: K }>, said };
}

describe("a spring set half way between the two torques", () => {
  const { lift } = planned("spring");
  const { torqueLoweredNm, torqueRaisedNm, woundLoweredMm, woundRaisedMm, bandN } = lift;
  const halfN = (500 * (torqueRaisedNm - torqueLoweredNm)) as number;

  it("is pulled by nothing lowered, and raised by what the load is over it and by what friction holds", () => {
    expect(torqueRaisedNm).toBeGreaterThan(torqueLoweredNm);
    const { heights } = lift.course;
    expectNear(bandN, halfN / woundLoweredMm, 1e-9);
    expectNear(heights[0]?.pullN ?? Number.NaN, 0, 1e-6);
    expectNear(heights.at(-1)?.pullN ?? 0, halfN / woundRaisedMm + bandN, 1e-3);
    expectNear(heights.at(-1)?.holdN ?? 0, halfN / woundRaisedMm, 1e-3);
    for (const { pullN, holdN } of heights) expect(Math.min(pullN, holdN)).toBeGreaterThanOrEqual(0);
    expectNear(lift.pullN, 2 * bandN, 1e-9);
  });

  it("has the lightest shade that its maker states, where one is stated", () => {
    expect(planned("spring", { massMinKg: 0.4 }).lift.massMinKg).toBe(0.4);
    expect(lift).not.toHaveProperty("massMinKg");
  });
});

describe("a loop and a wand", () => {
  // Torque over the radius of the wheel or the crank, without losses and geared one to one.
  it("are pulled by the larger torque over their radius: that of the drive, or 15 and 8 mm where it states none", () => {
    for (const [kind, field, statedMm, radiusMm, usualMm] of [
      ["tube-loop", "wheelMm", 60, 30, 15],
      ["tube-wand", "crankMm", 40, 40, 8],
    ] as const) {
      const stated = planned(kind, { [field]: statedMm }).lift;
      const most = (lift: typeof stated) => 1000 * Math.max(lift.torqueLoweredNm, lift.torqueRaisedNm);
      expectNear(stated.pullN, most(stated) / radiusMm, 1e-9);
      const bare = planned(kind).lift;
      expectNear(bare.pullN, most(bare) / usualMm, 1e-9);
    }
  });

  it("turn as often as their drive is geared, and a loop runs by its wheel for each turn", () => {
    const wand = planned("tube-wand", { ratio: 3 }).lift;
    expectNear(wand.handTurns / planned("tube-wand").lift.handTurns, 3, 1e-9);
    const loop = planned("tube-loop", { wheelMm: 60, ratio: 2 }).lift;
    expectNear(loop.loopTravelMm, wand.handTurns * (2 / 3) * Math.PI * 60, 1e-6);
    // Round two wheels alike: two straight sides and one wheel's circumference, its radii taken off at both ends.
    expectNear(loop.loopPerimeterMm, 2 * (loop.loopDropMm - 60 / 2 - 60 / 2 + 60 / 2) + Math.PI * 60, 1e-6);
  });

  it("come apart or come off only where they are said to", () => {
    expect(planned("tube-loop").lift).not.toHaveProperty("breakaway");
    expect(planned("tube-loop", {}, { loopJoint: "breakaway" }).lift.breakaway).toBe(true);
    expect(planned("tube-wand").lift.detachable).toBe(false);
    expect(planned("tube-wand", { detachable: true }).lift.detachable).toBe(true);
  });

  it("a loop asks for its tensioner at its lower end, where that is", () => {
    const { lift, said } = planned("tube-loop", {}, { loopDropMm: 640 });
    const above = Math.round(lift.loopEndAboveFloorMm ?? Number.NaN);
    expect(plain(said("lift.loop-tensioner")?.text)).toBe(
      `The loop is to be worked only with its lower end held by a tensioner that is screwed to the wall, 640 mm below the drive. That is ${above} mm above the floor. A loop that hangs free can strangle a child: no tensioner, no loop.`,
    );
  });
});

describe("a motor", () => {
  const power = (drive: object) => {
    const found = planned("motor", drive).said("lift.motor-power");
    return [found?.severity, plain(found?.text)];
  };
  const end = "Set its ends of travel by its instructions before the shade is left alone with it.";

  it("moves by itself, and its wiring is for whoever is licensed for it", () => {
    expect(power({ power: "mains" })).toEqual([
      "unproven",
      `“Own drive” moves by itself. It is wired by a licensed electrician, by the code of the place and the motor’s own instructions, and never by this plan. ${end}`,
    ]);
    expect(power({ power: "low-voltage" })).toEqual([
      "note",
      `“Own drive” moves by itself. Its charger or power supply is used as its maker says; anything that joins it to the mains is a licensed electrician’s work. ${end}`,
    ]);
    expect(power({})).toEqual([
      "unproven",
      `“Own drive” moves by itself. Whether it runs on the mains is not said. If it does, a licensed electrician wires it, by the code of the place and the motor’s own instructions. ${end}`,
    ]);
  });

  it("takes a minute for as many turns as its maker states", () => {
    const { lift } = planned("motor", { turnsPerMin: 30 });
    const turns = planned("tube-wand").lift.handTurns;
    expectNear(lift.raiseSeconds ?? 0, 2 * turns, 1e-6);
    expect(planned("motor").lift).not.toHaveProperty("raiseSeconds");
    expect(lift.pullN).toBe(0);
  });
});
