import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HARDWARE_NEED } from "../../../test/hardware-need.ts";
import { expectNear } from "../../../test/near.ts";
import { CATALOGUE, type Cord, type CordLock, type Drive, type Eye, type Tube } from "../../job/index.ts";
import { bareBoard } from "./bare-board.ts";
import { BestSets, better, type Scored } from "./best-sets.ts";
import type { HardwareNeed, PartShelf } from "./need.ts";
import { cordPrice, packPrice } from "./prices.ts";
import { searchHardware } from "./search-hardware.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
/** Two cords that carry 6 N each, with 2,850 mm of cord: 1,400 up, half of the width of 1,100 and 900 to spare. */
const need = (over: Partial<HardwareNeed> = {}): HardwareNeed => ({
  ...HARDWARE_NEED,
  columnsMm: [50, 1050],
  ...over,
});
function only<T>(list: readonly T[], over: Partial<T>): T {
  const [first] = list;
  if (first === undefined) throw new Error("invalid test: an empty list");
  return { ...first, ...over };
}
const CORD: Cord = { id: "cord", name: "Cord", diameterMm: 1.4, breakingN: 600, pricePerM: 0.5 };
const EYE: Eye = { id: "eye", name: "Eye", outsideDiameterMm: 12, friction: 0, price: 4, packOf: 10 };
const LOCK: CordLock = only(CATALOGUE.locks, { id: "lock", name: "Lock", price: 9 });
const TUBE: Tube = only(CATALOGUE.tubes, {
  id: "tube",
  name: "Tube",
  price: 10,
  spoolPrice: 2,
  stockMm: 500,
});
const NONE: PartShelf = { locks: [], cords: [], eyes: [], tubes: [], drives: [] };

function drive(kind: Drive["kind"], over: Partial<Drive> = {}): Drive {
  const same = CATALOGUE.drives.filter((one) => one.kind === kind);
  return { ...only(same, {}), id: kind, name: `The ${kind}`, price: 50, massMaxKg: 1.5, ...over };
}

const refused = (shelf: Partial<PartShelf>, over: Partial<HardwareNeed> = {}) =>
  searchHardware(need(over), { ...NONE, ...shelf }).refusals.map(({ id, text, sets, partIds }) => ({
    ...{ id, sets, partIds },
    text: plain(text),
  }));
const ids = (shelf: Partial<PartShelf>, over: Partial<HardwareNeed> = {}) =>
  refused(shelf, over).map(({ id }) => id);

describe("what a set costs", () => {
  it("is its cords by the metre, its eyes by the piece and what holds them", () => {
    expectNear(cordPrice(CORD, 2, need()), (0.5 * 2 * 2850) / 1000, 1e-12);
    expectNear(packPrice(EYE, 3), 1.2, 1e-12);
    expect(packPrice({ price: 4 }, 3)).toBe(12);
    const { pricePerM: _none, ...unpriced } = CORD;
    expect([cordPrice(unpriced, 2, need()), packPrice({}, 3)]).toEqual([
      Number.POSITIVE_INFINITY,
      Number.POSITIVE_INFINITY,
    ]);
    const { sets } = searchHardware(need(), { ...NONE, locks: [LOCK], cords: [CORD], eyes: [EYE] });
    const told = sets.map(({ kind, price, pieces }) => [kind, Number(price?.toFixed(6)), pieces]);
    // A lock takes an eye for each column, a cleat one more; a lock or cleat, and two pieces for each column.
    expect(told).toEqual([
      ["cleat", 2.85 + 1.2, 5],
      ["cord-lock", 9 + 2.85 + 0.8, 5],
    ]);
    // A quarter turn over an eye without friction, and a roller that passes on 91.7 %.
    expectNear(sets[1]?.pullN ?? 0, 12 / 0.917, 1e-9);
    expectNear(sets[0]?.pullN ?? 0, 12, 1e-12);
  });

  it("is not told where a part has no price", () => {
    const { price: _none, ...unpriced } = LOCK;
    const shelf = { ...NONE, locks: [unpriced], cords: [CORD], eyes: [EYE] };
    const lock = searchHardware(need(), shelf).sets.find(({ kind }) => kind === "cord-lock");
    expect(lock?.price).toBeUndefined();
  });

  it("of a tube is its lengths, its spools and its drive: 1,094 mm of board take three lengths of 500 mm", () => {
    const shelf = { ...NONE, cords: [CORD], tubes: [TUBE], drives: [drive("motor")] };
    const [set] = searchHardware(need(), shelf).sets;
    expectNear(set?.price ?? 0, 3 * 10 + 2 * 2 + 50 + 2.85, 1e-9);
    expect(set).toMatchObject({ kind: "motor", pieces: 6, pullN: 0 });
    const priceOf = (tube: Partial<Tube>, boardLengthMm = 1094) =>
      searchHardware(need({ boardLengthMm }), { ...shelf, tubes: [{ ...TUBE, ...tube }] }).sets[0]?.price;
    expectNear(priceOf({ stockMm: 547 }) ?? 0, 76.85, 1e-9);
    expectNear(priceOf({ stockMm: 546 }) ?? 0, 86.85, 1e-9);
    const { stockMm: _stock, ...endless } = TUBE;
    const one = searchHardware(need(), { ...shelf, tubes: [endless] }).sets[0]?.price;
    expectNear(one ?? 0, 66.85, 1e-9);
    const { spoolPrice: _spool, ...bare } = TUBE;
    expect(searchHardware(need(), { ...shelf, tubes: [bare] }).sets[0]?.price).toBeUndefined();
  });
});

describe("the better of two sets", () => {
  const set = (over: Partial<Scored> = {}): Scored => ({
    ...{ pullN: 10, price: 20, pieces: 5, first: 1, cord: 1, third: 1 },
    ...over,
  });

  it("pulls easier; among those alike to a hand it costs less, then has fewer pieces, then stands first in its list", () => {
    const isBetter = (a: Partial<Scored>, b: Partial<Scored>) => Math.sign(better(set(a), set(b)));
    expect(isBetter({ pullN: 9, price: 90 }, {})).toBe(-1);
    expect(isBetter({ pullN: 10.01, price: 19 }, {})).toBe(-1);
    expect(isBetter({ price: Number.POSITIVE_INFINITY }, {})).toBe(1);
    expect(isBetter({}, { price: Number.POSITIVE_INFINITY })).toBe(-1);
    expect(isBetter({ pieces: 4, first: 2 }, {})).toBe(-1);
    expect(isBetter({ first: 0, third: 2 }, {})).toBe(-1);
    expect(isBetter({ third: 0, cord: 2 }, {})).toBe(-1);
    expect(isBetter({ cord: 0 }, {})).toBe(-1);
    expect(isBetter({}, {})).toBe(0);
  });

  it("is kept: the best so many of any number, as sorting all of them gives", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 9 })), {
          maxLength: 200,
        }),
        fc.integer({ min: 1, max: 12 }),
        (list, most) => {
          const all = list.map(([pull, price], i) => set({ pullN: pull / 10, price, first: i }));
          const best = new BestSets(most);
          for (const one of all) if (best.admits(one.pullN)) best.add(one);
          expect(best.sorted).toEqual([...all].sort(better).slice(0, most));
        },
      ),
    );
  });
});

describe("what is refused, with its figure", () => {
  const locked = { locks: [LOCK], cords: [CORD], eyes: [EYE] };

  it("a cord that breaks below five times what its knot leaves it: 6 N over a knot that keeps half", () => {
    const broken = (breakingN: number) =>
      refused({ cords: [{ ...CORD, breakingN }], eyes: [EYE] }).filter(
        ({ id }) => id === "lift.cord-too-weak",
      );
    expect(broken(60.01)).toEqual([]);
    expect(broken(59.9)).toEqual([
      {
        ...{ id: "lift.cord-too-weak", sets: 1, partIds: ["cord", "eye"] },
        text: "“Cord” breaks at 59.9 N, 4.9 times what it carries over “Eye”; 5 times is asked for.",
      },
    ]);
    const { breakingN: _unknown, ...unknown } = CORD;
    expect(ids({ cords: [unknown], eyes: [EYE] })).toEqual([]);
  });

  it("a cord that runs over a rough eye under more than its knot carries", () => {
    // e^(0.5·π) = 4.81: 6 N become 28.9 N at the hand, of each cord.
    const rough = { ...EYE, friction: 0.5 };
    const carriesN = 6 * Math.exp(0.5 * Math.PI);
    const at = (breakingN: number) =>
      ids({ cords: [{ ...CORD, breakingN }], eyes: [rough] }, { handMostN: 99 });
    expect(at(5.001 * carriesN)).toEqual([]);
    expect(at(4.999 * carriesN)).toEqual(["lift.cord-too-weak"]);
  });

  it("a pull beyond what is asked of one arm", () => {
    const cleats = { cords: [CORD], eyes: [EYE] };
    expect(ids(cleats, { handMostN: 12.01 })).toEqual([]);
    expect(refused(cleats, { handMostN: 11.5 })).toEqual([
      {
        ...{ id: "lift.hard-pull", sets: 1, partIds: ["cord", "eye"] },
        text: "Over “Eye” the hand would pull 12 N; 11.5 N is the most that is asked of one arm.",
      },
    ]);
  });

  it("a lock wider than the board is deep, and one that finds no place on it", () => {
    const depth = LOCK.housingWidthMm;
    expect(ids(locked, { boardDepthMm: depth })).toEqual([]);
    expect(refused(locked, { boardDepthMm: depth - 1 })).toEqual([
      {
        ...{ id: "rig.deeper-than-board", sets: 1, partIds: ["lock", "eye"] },
        text: `“Lock” is ${depth} mm wide, and the board is ${depth - 1} mm deep.`,
      },
    ]);
    const long = { ...locked, locks: [{ ...LOCK, housingLengthMm: 2000 }] };
    expect(refused(long)).toEqual([
      {
        ...{ id: "rig.no-seat", sets: 1, partIds: ["lock", "eye"] },
        text: "“Lock”, 2000 mm long, finds no place on the board beside “Eye” with 12 mm of straight run.",
      },
    ]);
  });

  it("counts the sets that one sentence refuses, the most first, and names the parts that all of them have", () => {
    const eyes = [EYE, { ...EYE, id: "eye-2", name: "Other" }];
    const long = {
      locks: [{ ...LOCK, housingLengthMm: 2000 }],
      cords: [CORD, { ...CORD, id: "cord-2" }],
      eyes,
    };
    expect(refused(long).map(({ sets, partIds }) => [sets, partIds])).toEqual([
      [2, ["lock", "eye"]],
      [2, ["lock", "eye-2"]],
    ]);
    const alike = { ...long, eyes: [EYE, { ...EYE, id: "eye-2" }] };
    expect(refused(alike).map(({ sets, partIds }) => [sets, partIds])).toEqual([[4, ["lock"]]]);
  });

  const turned = { cords: [CORD], tubes: [TUBE] };

  it("a drive over its limit, and a spring that the shade is too light for; a motor has no lightest shade", () => {
    expect(ids({ ...turned, drives: [drive("motor", { massMaxKg: 1.5 })] })).toEqual([]);
    expect(refused({ ...turned, drives: [drive("motor", { massMaxKg: 1.4 })] })).toEqual([
      {
        ...{ id: "lift.drive-overloaded", sets: 1, partIds: ["tube", "motor"] },
        text: "“The motor” takes at most 1.4 kg; this shade weighs 1.5 kg.",
      },
    ]);
    const spring = (massMinKg: number) => refused({ ...turned, drives: [drive("spring", { massMinKg })] });
    expect(spring(1.5)).toEqual([]);
    expect(spring(1.6)).toEqual([
      {
        ...{ id: "lift.spring-too-strong", sets: 1, partIds: ["tube", "spring"] },
        text: "“The spring” is made for 1.6 kg and more; this shade weighs 1.5 kg.",
      },
    ]);
    expect(ids({ ...turned, drives: [drive("motor", { massMinKg: 1.6 })] })).toEqual([]);
  });

  it("a drive that finds no place beside the spools", () => {
    expect(refused({ ...turned, drives: [drive("motor", { lengthMm: 3000 })] })).toEqual([
      {
        ...{ id: "rig.no-drive-seat", sets: 1, partIds: ["tube", "motor"] },
        text: "“The motor” finds no place beside the spools of “Tube”.",
      },
    ]);
  });

  it("a motor below the torque that the shade takes: 12 N on a radius between the core’s and the flange’s", () => {
    const [weak] = refused({ ...turned, drives: [drive("motor", { torqueNm: 0.01 })] });
    expect(weak).toMatchObject({ id: "lift.motor-torque", sets: 1, partIds: ["motor"] });
    const [, rated, asked] =
      /rated for ([\d.]+) N·m; the shade takes ([\d.]+) N·m or more/.exec(weak?.text ?? "") ?? [];
    expect(Number(rated)).toBe(0.01);
    expect(Number(asked)).toBeGreaterThanOrEqual(0.12 - 0.005);
    expect(Number(asked)).toBeLessThanOrEqual(0.204);
    expect(ids({ ...turned, drives: [drive("motor", { torqueNm: 0.21 })] })).toEqual([]);
  });

  it("a cord that fills its spool over the flanges, and one whose knot is too weak for its load", () => {
    const thick = refused({
      cords: [{ ...CORD, diameterMm: 9, breakingN: 900 }],
      tubes: [TUBE],
      drives: [drive("motor")],
    });
    expect(thick.map(({ id }) => id)).toEqual(["rig.spool-full"]);
    expect(thick[0]?.text).toMatch(
      /^Raised, “Cord” stands [\d.]+ mm across on a spool of “Tube”, whose flanges are 34 mm\.$/,
    );
    const weak = (breakingN: number) =>
      refused({ cords: [{ ...CORD, breakingN }], tubes: [TUBE], drives: [drive("motor")] });
    expect(weak(60.01)).toEqual([]);
    expect(weak(59.9).map(({ text }) => text)).toEqual([
      "“Cord” breaks at 59.9 N, 4.9 times what its knot carries; 5 times is asked for.",
    ]);
  });
});

it("the bare board lies as seen from the side that the cords hang on", () => {
  const lop = { columnsMm: [100, 300, 1000], widthMm: 1100, boardLengthMm: 1080 };
  expect(bareBoard(need(lop))).toEqual({ eyesMm: [100, 800, 1000], boardFromMm: 10, boardToMm: 1090 });
  expect(bareBoard(need({ ...lop, controlSide: "left" })).eyesMm).toEqual([100, 300, 1000]);
});
