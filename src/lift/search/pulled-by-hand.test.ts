import { expect, it } from "vitest";
import { HARDWARE_NEED } from "../../../test/hardware-need.ts";
import { expectNear } from "../../../test/near.ts";
import type { Drive } from "../../job/index.ts";
import { windCords } from "../tube/winding.ts";
import { searchHardware } from "./search-hardware.ts";

const CORD = { id: "cord", name: "Cord", diameterMm: 1.4, breakingN: 900 };
const TUBE = {
  id: "tube",
  name: "Tube",
  diameterMm: 20,
  spoolLengthMm: 30,
  spoolFlangeMm: 60,
  spoolWindMm: 14,
};
const NEED = { ...HARDWARE_NEED, columnsMm: [120, 980], handMostN: 999 };

function pullOf(kind: Drive["kind"], over: Partial<Drive> = {}, windMm: number | null = 14): number {
  const drive = {
    id: "own",
    name: "Own",
    kind,
    lengthMm: 60,
    heightMm: 40,
    depthMm: 30,
    ratio: 1,
    efficiency: 1,
    screws: 2,
  };
  const { spoolWindMm: _wind, ...bare } = TUBE;
  const tube = windMm === null ? bare : { ...bare, spoolWindMm: windMm };
  const shelf = { locks: [], eyes: [], cords: [CORD], tubes: [tube], drives: [{ ...drive, ...over }] };
  const [set] = searchHardware(NEED, shelf as never).sets;
  if (set === undefined) throw new Error("invalid test: no set");
  return set.pullN;
}

/** Axis to the cord as a shade is planned: ten wraps side by side, 1,200 mm wound up. */
const wound = (windMm: number | null) =>
  windCords({
    ...{ shade: { cord: CORD }, grid: { travelMm: 1200 } },
    liftParts: {
      spool: { lengthMm: 30, coreMm: 20, flangeMm: 60, ...(windMm === null ? {} : { windMm }) },
    },
  } as never).values;

it("each drive asks of the hand what a planned shade asks: torque over its wheel or crank, gear and losses", () => {
  for (const windMm of [14, null]) {
    const { loweredMm, raisedMm } = wound(windMm);
    const [lowered, raised] = [4 * loweredMm, 12 * raisedMm];
    const most = Math.max(lowered, raised);
    expectNear(pullOf("loop", { wheelMm: 40 }, windMm), most / 20, 1e-9);
    expectNear(pullOf("loop", {}, windMm), most / 15, 1e-9);
    expectNear(pullOf("loop", { wheelMm: 40, ratio: 2, efficiency: 0.5 }, windMm), most / 20, 1e-9);
    expectNear(pullOf("wand", { crankMm: 50 }, windMm), most / 50, 1e-9);
    expectNear(pullOf("wand", {}, windMm), most / 8, 1e-9);
    // A spring set half way: both halves of what the torque changes by, at the lowered radius.
    expectNear(pullOf("spring", {}, windMm), (raised - lowered) / loweredMm, 1e-9);
    expect(pullOf("motor", {}, windMm)).toBe(0);
  }
});

it("a lock asks for a quarter turn and its roller, a cleat for a half turn: Euler and Eytelwein", () => {
  const eye = { id: "eye", name: "Eye", outsideDiameterMm: 12, friction: 0.3 };
  const lock = {
    ...{
      id: "lock",
      name: "Lock",
      housingLengthMm: 30,
      housingWidthMm: 22,
      housingHeightMm: 24,
      dividerWires: 2,
    },
    ...{ cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.4, screws: 2 },
  };
  const { sets } = searchHardware(NEED, {
    locks: [lock],
    eyes: [eye],
    cords: [CORD],
    tubes: [],
    drives: [],
  } as never);
  const pull = (kind: string) => sets.find((set) => set.kind === kind)?.pullN ?? Number.NaN;
  // Two columns alike carry 6 N each: more than the beam's own 12 N is not asked for.
  expectNear(pull("cord-lock"), (12 * Math.exp((0.3 * Math.PI) / 2)) / 0.917, 1e-9);
  expectNear(pull("cleat"), 12 * Math.exp(0.3 * Math.PI), 1e-9);
});

it("a hand that may pull no more refuses what pulls harder, by drive, with the least that it would take", () => {
  const { raisedMm } = wound(14);
  const most = (12 * raisedMm) / 20;
  const drive = {
    id: "own",
    name: "Own",
    kind: "loop",
    lengthMm: 60,
    heightMm: 40,
    depthMm: 30,
    ratio: 1,
    efficiency: 1,
    wheelMm: 40,
  };
  const thick = { ...CORD, id: "thick", name: "Thick", diameterMm: 1.8 };
  const search = (handMostN: number, cords: object[]) =>
    searchHardware({ ...NEED, handMostN }, {
      locks: [],
      eyes: [],
      cords,
      tubes: [TUBE],
      drives: [drive],
    } as never);
  expect(search(most, [CORD]).feasible).toBe(1);
  const { refusals, considered, feasible } = search(most - 0.2, [thick, CORD]);
  expect([considered, feasible]).toEqual([2, 0]);
  const tooHard = refusals.filter(({ id }) => id === "lift.hard-pull");
  expect(tooHard).toMatchObject([{ partIds: ["own"], sets: 2 }]);
  const told = Number(/would pull ([\d.]+)/.exec(tooHard[0]?.text ?? "")?.[1]);
  expect(Math.abs(told - most)).toBeLessThanOrEqual(0.05 + 1e-9);
});
