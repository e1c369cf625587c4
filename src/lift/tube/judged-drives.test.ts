import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { saidOf } from "../../../test/said.ts";
import { CATALOGUE, type Drive } from "../../job/index.ts";
import { judgeDrive } from "./judge-drive.ts";
import type { TubeKind } from "./tube-lift-parts.ts";

const { resolved } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const drive = (id: string, over: Partial<Drive> = {}): Drive => ({
  ...{ id, name: `Drive ${id}`, kind: "loop", lengthMm: 60, heightMm: 40, depthMm: 30, ratio: 1, screws: 2 },
  ...{ massMaxKg: 9, ...over },
});
const POWERED = { spring: "spring", motor: "motor", "tube-loop": "hand", "tube-wand": "hand" } as const;

/** A shade of 2 kg that takes 0.4 N·m lowered and 0.7 N·m raised. */
function judge(
  own: Drive,
  over: { kind?: TubeKind; drives?: Drive[]; asked?: Drive; raisedNm?: number } = {},
) {
  const { kind = "tube-loop", drives = [], asked, raisedNm = 0.7 } = over;
  const shade = { ...resolved, drives, bar: { ...resolved.bar, material: "wood" }, parts: CATALOGUE };
  return saidOf(
    judgeDrive(
      { shade, mass: { totalKg: 2 }, liftParts: { kind, drive: own, asked } } as never,
      { poweredBy: POWERED[kind], torqueLoweredNm: 0.4, torqueRaisedNm: raisedNm } as never,
    ),
  );
}
const BASE = { stage: "lift", setting: "lift/drive", figures: undefined };

it("nothing is said of one that takes the shade", () => {
  expect(judge(drive("own", { massMaxKg: 2 }))).toEqual([]);
});

it("one of another kind is not planned: that kind of lift is offered, or the one in its place", () => {
  expect(judge(drive("own"), { asked: drive("crank", { kind: "wand" }) })).toEqual([
    {
      ...{ ...BASE, id: "lift.drive-of-other-kind", severity: "fix" },
      text: "“Drive crank” is a wand, and this lift asks for a loop. “Drive own” is planned in its place.",
      remedies: [
        ["Let a wand raise it", "lift/kind", "tube-wand"],
        ["Use “Drive own”", "lift/drive", "own"],
      ],
    },
  ]);
});

it("one whose limit nobody states is not proven", () => {
  expect(judge(drive("own", { massMaxKg: undefined }))).toEqual([
    {
      ...{ ...BASE, id: "lift.drive-limit-unknown", severity: "unproven", remedies: [] },
      text: "How heavy a shade “Drive own” takes is not stated. This one weighs 2 kg: ask the maker of the drive, and enter the limit.",
    },
  ]);
});

describe("another one", () => {
  const others = (kind: TubeKind, own: Partial<Drive>, ...drives: Drive[]) =>
    judge(drive("own", own), { kind, drives })[0]?.remedies.map(([, , id]) => id);

  it("is offered to an overloaded one: of its kind, not itself, and strong enough; two at most", () => {
    expect(judge(drive("own", { massMaxKg: 1 }))).toEqual([
      {
        ...{ ...BASE, id: "lift.drive-overloaded", severity: "stop", remedies: [] },
        text: "“Drive own” takes at most 1 kg; this shade weighs 2 kg. It would slip, or wear out and let the shade fall.",
      },
    ]);
    const weak = { massMaxKg: 1 };
    expect(
      others(
        ...(["tube-loop", weak] as const),
        ...[drive("own", { massMaxKg: 5 }), drive("wand", { kind: "wand" })],
        ...[drive("unknown", { massMaxKg: undefined }), drive("weak", { massMaxKg: 1.9 })],
        ...[drive("just", { massMaxKg: 2, massMinKg: 3 }), drive("b"), drive("c")],
      ),
    ).toEqual(["just", "b"]);
  });

  it("is offered to a spring that is too strong: from its lightest shade on, where that is stated", () => {
    const spring = (id: string, massMinKg?: number) => drive(id, { kind: "spring", massMinKg });
    expect(judge(spring("own", 3), { kind: "spring" })).toEqual([
      {
        ...{ ...BASE, id: "lift.spring-too-strong", severity: "fix", remedies: [] },
        text: "“Drive own” is made for 3 kg and more; this shade weighs 2 kg. The spring would pull it up by itself. Take a lighter spring or a heavier bar.",
      },
    ]);
    const strong = { kind: "spring", massMinKg: 3 } as const;
    expect(others("spring", strong, spring("b", 2.1), spring("just", 2), spring("any"))).toEqual([
      "just",
      "any",
    ]);
    expect(judge(drive("own", { massMinKg: 3 }))).toEqual([]);
    expect(judge(spring("own", 2), { kind: "spring" })).toEqual([]);
  });
});

it("a motor is held to its torque, and two stronger motors at most are offered", () => {
  const motor = (id: string, torqueNm?: number) => drive(id, { kind: "motor", torqueNm });
  const drives = [drive("loop", { torqueNm: 5 }), motor("weak", 0.69), motor("unknown")];
  const judged = (own: Drive, raisedNm?: number) =>
    judge(own, {
      kind: "motor",
      drives: [...drives, motor("just", 0.7), motor("b", 2), motor("c", 2)],
      ...(raisedNm === undefined ? {} : { raisedNm }),
    });
  expect([judged(motor("own", 0.7)), judged(motor("own"))]).toEqual([[], []]);
  expect(judged(motor("own", 0.5))).toEqual([
    {
      ...{ ...BASE, id: "lift.motor-torque", severity: "stop" },
      figures: ["lift.torque-raised", "lift.torque-lowered"],
      text: "Raising it takes 0.7 N·m on the tube; “Drive own” is rated for 0.5 N·m.",
      remedies: [
        ["Use “Drive just”", "lift/drive", "just"],
        ["Use “Drive b”", "lift/drive", "b"],
      ],
    },
  ]);
  // Where the lowered shade takes more, that counts.
  expect(judged(motor("own", 0.3), 0.2)[0]?.text).toContain("takes 0.4 N·m");
  expect(judge(drive("own", { torqueNm: 0.1 }))).toEqual([]);
});

it("an example of the catalogue says so", () => {
  expect(judge(drive("own", { demo: true }))).toEqual([
    {
      ...{ ...BASE, id: "lift.demo-drive", severity: "note", remedies: [] },
      text: "The sizes and limits of “Drive own” are invented for demonstration. Enter the drive in your hand before the board is drilled: its length decides where it sits, its height the headrail allowance.",
    },
  ]);
});
