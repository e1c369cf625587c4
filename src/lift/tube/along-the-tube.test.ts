import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectNear } from "../../../test/near.ts";
import type { BoardLine } from "../gaps.ts";
import { placeSupports } from "./place-supports.ts";
import { type SeatedDrive, seatDrive } from "./seat-drive.ts";

/**
 * Spools of 30 mm and a drive of 60 mm, 3 mm kept between parts and at the ends of the board. A drive's middle is 48 mm or more
 * from a spool's and 33 mm from an end, a support's (12 mm long) 24 mm from a spool's and 9 mm from an end.
 */
const line = (eyesMm: readonly number[], boardFromMm = 5, boardToMm = 895): BoardLine => ({
  ...{ eyesMm, boardFromMm, boardToMm, eyeRadiusMm: 15, straightRunMm: 3, housingLengthMm: 60 },
});

describe("where a drive sits", () => {
  const seat = (
    ...[at, kind = "tube-loop", ruler = "1 mm"]: [BoardLine, ("tube-loop" | "spring")?, ("1 mm" | "1/8 in")?]
  ) => {
    const { tried, ...found } = seatDrive(at, kind, ruler);
    return { ...found, tried: tried.length };
  };

  it("is at the control end where it has room there, against the end of the board", () => {
    expect(seat(line([86, 450, 850]))).toEqual({ atMm: 38, place: "outside", forced: false, tried: 2 });
  });

  it("is else in the middle of the next bay, on a mark of the ruler", () => {
    expect(seat(line([85, 450, 850]))).toEqual({ atMm: 268, place: "between", forced: false, tried: 2 });
    // From 98 to 402 mm: 250 mm lies between the marks of 249.24 and 250.83 mm… the nearer one.
    expectNear(seat(line([50, 450, 850]), "tube-loop", "1/8 in").atMm, 79 * 3.175, 1e-9);
  });

  it("is anywhere for what no hand works: in the first bay that is wide enough, or at the far end", () => {
    expect(seat(line([50, 130, 290]), "spring")).toEqual({
      atMm: 210,
      place: "between",
      forced: false,
      tried: 4,
    });
    expect(seat(line([50, 130, 210]), "spring")).toEqual({
      atMm: 862,
      place: "far",
      forced: false,
      tried: 4,
    });
    // A loop would hang behind the cloth there. Outside it lacks 36 mm, in the bay 16 mm.
    expect(seat(line([50, 130, 210]))).toEqual({ atMm: 90, place: "between", forced: true, tried: 2 });
    expect(seat(line([50]))).toEqual({ atMm: 20, place: "outside", forced: true, tried: 1 });
  });

  it("keeps within its stretch: the first and the last mark of it, and the place itself where it has none", () => {
    const marks = (eyes: number[], from = 5, to = 895) => seat(line(eyes, from, to), "spring", "1/8 in").atMm;
    expectNear(marks([120, 500]), 12 * 3.175, 1e-9);
    expectNear(marks([50, 60]), 271 * 3.175, 1e-9);
    // From 38.5 to 40 mm, between the marks of 38.1 and 41.275 mm.
    expect(marks([88, 500], 5.5)).toBe(38.5);
  });

  it("of two bays that lack as much, but for rounding, is in the first", () => {
    const alike = line([50, 110, 170 + 1e-9], 40, 100);
    expect(seat({ ...alike, boardFromMm: 47, boardToMm: 173 }, "spring").atMm).toBe(80);
  });
});

const drive = (atMm: number, place: SeatedDrive["place"]): SeatedDrive => ({
  atMm,
  place,
  tried: [],
  forced: false,
});
const placed = (...given: Parameters<typeof placeSupports>) => {
  const { supportsMm, tubeFromMm, tubeToMm, faults } = placeSupports(...given);
  return { supports: supportsMm, tube: [tubeFromMm, tubeToMm], faults };
};

describe("where a tube is borne", () => {
  it("is in the drive's face at its end, beyond the last spool at the other, and half way between them", () => {
    // The face is at 38 + 30 mm; the support at 850 + 24 mm; 806 mm are too far to run free.
    expect(placed(line([150, 500, 850]), drive(38, "outside"))).toEqual({
      ...{ supports: [471, 874], tube: [68, 880], faults: [] },
    });
  });

  it("is beyond the spools at both ends where the drive sits between two, which needs no more where neither side is over 600 mm", () => {
    expect(placed(line([50, 450, 850]), drive(250, "between"))).toEqual({
      ...{ supports: [26, 874], tube: [20, 880], faults: [] },
    });
    // From 280 to 880 mm it is just 600 mm, from 280 to 881 mm one more.
    expect(placed(line([50, 450, 856]), drive(250, "between")).supports).toEqual([26, 880]);
    expect(placed(line([50, 450, 857]), drive(250, "between")).supports).toEqual([26, 580.5, 881]);
    // The bay on the near side of the drive counts as well.
    expect(placed(line([50, 450, 850]), drive(660, "between")).supports).toEqual([26, 328, 874]);
  });

  it("is inside the last spool where the board ends too soon, and there the tube ends with spool or board", () => {
    // The support would reach from 20 mm: 3 mm from an end at 17 mm.
    expect(placed(line([50, 450], 17), drive(250, "between")).supports[0]).toBe(26);
    expect(placed(line([50, 450], 17.1), drive(250, "between"))).toEqual({
      ...{ supports: [74, 474], tube: [35, 480], faults: [] },
    });
    expect(placed(line([50, 450], 40), drive(250, "between")).tube).toEqual([40, 480]);
    // A spool at 80 mm is in the way up to 104 mm.
    expect(placed(line([50, 80, 450], 40), drive(250, "between")).supports[0]).toBe(104);
  });

  it("finds no clear place where spools fill the board", () => {
    const short = (to: number) => placed(line([50], 40, to), drive(500, "between"));
    // Inside the one spool: at 74 mm, 6 mm before the end of the board at 80 mm.
    expect(short(80).supports[0]).toBe(74);
    expect(short(79)).toMatchObject({ faults: ["clear"] });
    expect(short(79).supports[0]).toBe(74);
    // Both ends bear inside, at 74 and 85 mm: nearer than a support is long.
    const both = (second: number) =>
      placed(line([50, second], 30, second + 21), drive(900, "between")).faults;
    expect([both(109), both(110)]).toEqual([["clear"], []]);
  });

  it("moves off a spool to its nearer side, before it where both are as near", () => {
    const middle = (eye: number) => placed(line([150, eye, 850]), drive(38, "outside")).supports[0];
    // Wished at 471 mm; a spool keeps 24 mm either way.
    expect([middle(471), middle(470), middle(472)]).toEqual([447, 494, 448]);
    expect([middle(447), middle(446.9), middle(495), middle(495.1)]).toEqual([471, 471, 471, 471]);
  });

  it("takes more supports where those clear of the spools stand too far apart", () => {
    // Spools all the way from 200 to 760 mm: blocked from 176 to 784 mm. Face at 68 mm, far end at 874 mm.
    const full = Array.from({ length: 19 }, (_, i) => 200 + (i * 560) / 18);
    const wide = placed(line([150, ...full, 850]), drive(38, "outside"));
    expect(wide.faults).toEqual(["spacing"]);
    // Blocked from 300 to 784 mm alone: one at 300 mm leaves 574 mm, which will do.
    const less = Array.from({ length: 15 }, (_, i) => 324 + (i * 436) / 14);
    expect(placed(line([150, ...less, 850]), drive(38, "outside"))).toMatchObject({
      ...{ supports: [300, 874], faults: [] },
    });
    // Blocked from 260 to 784 mm: that leaves 614 mm, and with two at a third each the second goes to 784 mm.
    const more = Array.from({ length: 16 }, (_, i) => 284 + (i * 476) / 15);
    expect(placed(line([150, ...more, 850]), drive(38, "outside"))).toMatchObject({
      ...{ supports: [260, 784, 874], faults: [] },
    });
  });

  it("the other way about is the mirror image, and every support is clear of spools and drive and on the board", () => {
    const gaps = fc.array(fc.integer({ min: 34, max: 500 }), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(
        gaps,
        fc.integer({ min: 20, max: 160 }),
        fc.integer({ min: 0, max: 7 }),
        (apart, inset, bay) => {
          const eyes = [inset];
          for (const gap of apart) eyes.push((eyes.at(-1) ?? 0) + gap);
          const toMm = (eyes.at(-1) ?? 0) + inset;
          const board = line(eyes, 0, toMm);
          const at = seatDrive({ ...board, housingLengthMm: 30 }, bay > 3 ? "spring" : "tube-loop", "1 mm");
          fc.pre(!at.forced);
          const short = { ...board, housingLengthMm: 30 };
          const there = placeSupports(short, at);
          const turn = { outside: "far", far: "outside", between: "between" } as const;
          const back = placeSupports(
            { ...short, eyesMm: eyes.map((x) => toMm - x).reverse() },
            { ...at, atMm: toMm - at.atMm, place: turn[at.place] },
          );
          expect(back.faults.length).toBe(there.faults.length);
          expectNear(back.tubeFromMm, toMm - there.tubeToMm, 1e-9);
          expectNear(back.tubeToMm, toMm - there.tubeFromMm, 1e-9);
          if (there.faults.length > 0) return;
          for (const support of there.supportsMm) {
            for (const eye of eyes) expect(Math.abs(support - eye)).toBeGreaterThanOrEqual(24 - 1e-3);
            expect(Math.abs(support - at.atMm)).toBeGreaterThanOrEqual(15 + 9 - 1e-3);
            expect(support).toBeGreaterThanOrEqual(6);
            expect(support).toBeLessThanOrEqual(toMm - 6);
          }
          const borne = [...there.supportsMm, at.atMm - 15, at.atMm + 15].sort((a, b) => a - b);
          borne.forEach((place, i) => {
            expect(place - (borne[i - 1] ?? place)).toBeLessThanOrEqual(600 + 1e-3);
          });
        },
      ),
      { numRuns: 200 },
    );
  });
});
