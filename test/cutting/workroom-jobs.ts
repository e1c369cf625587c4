import { chance } from "../../src/cutting/chance.ts";
import { type Job, type JobInput, STYLES } from "../../src/job/index.ts";
import { jobWith } from "../job-with.ts";

type ClothInput = NonNullable<JobInput["cloths"]>[number];
type ClothInStock = NonNullable<NonNullable<JobInput["stock"]>["cloth"]>[number];

const INCH_MM = 25.4;
/** Usual widths of furnishing cloth and lining in both systems (from memory). */
const WIDTHS_MM = {
  metric: [1370, 1400, 1500, 2800],
  imperial: [54 * INCH_MM, 45 * INCH_MM, 60 * INCH_MM, 110 * INCH_MM],
};

/**
 * An invented job of a few windows as a workroom might have it: styles and systems mixed, cloth plain, with a nap or
 * printed, straight or in half drop, with leftovers and flaws at times. The same for the same seed.
 */
export function workroomJob(seed: number): Job {
  const draw = chance(seed);
  const one = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)] as T;
  const system = one(["metric", "imperial"] as const);
  const step = system === "metric" ? 5 : INCH_MM / 4;
  const size = (min: number, max: number) => step * Math.round((min + draw() * (max - min)) / step);
  const sort = one(["plain", "plain", "nap", "straight", "half-drop"] as const);
  const print = sort === "straight" || sort === "half-drop";
  const face: ClothInput = {
    id: "face",
    name: "Face",
    usableWidthMm: one(WIDTHS_MM[system]),
    massGsm: 220,
    ...(sort === "nap" ? { nap: true } : {}),
    ...(print
      ? {
          repeat: {
            verticalMm: size(150, 700),
            match: sort,
            ...(draw() < 0.6 ? { horizontalMm: size(150, 650) } : {}),
          },
        }
      : {}),
  };
  const lining: ClothInput = {
    id: "lining",
    name: "Lining",
    usableWidthMm: one(WIDTHS_MM[system]),
    massGsm: 130,
  };
  const windows = Array.from({ length: 1 + Math.floor(draw() * 6) }, (_, n) => ({
    id: `w${n}`,
    name: `Window ${n + 1}`,
    opening: { widthsMm: [size(450, 1900)], heightsMm: [size(700, 2100)] },
    shade: {
      face: "face",
      lining: draw() < 0.8 ? "lining" : null,
      style: draw() < 0.5 ? ("flat" as const) : one(STYLES),
      mount: one(["inside", "outside"] as const),
    },
  }));
  const stock: ClothInStock[] = [];
  for (const { id, usableWidthMm = 0 } of [face, lining]) {
    for (let n = draw() < 0.35 ? 1 + Math.floor(draw() * 2) : 0; n > 0; n--) {
      const lengthMm = size(600, 3000);
      stock.push({
        id: `${id}-${n}`,
        name: `Left ${n} of ${id}`,
        cloth: id,
        lengthMm,
        ...(draw() < 0.4 ? { widthMm: Math.min(usableWidthMm, size(400, 1200)) } : {}),
        ...(draw() < 0.4
          ? { flaws: [{ fromMm: Math.round(draw() * lengthMm), lengthMm: 10 + Math.round(40 * draw()) }] }
          : {}),
      });
    }
  }
  return jobWith(
    {},
    {
      units: { system, ruler: system === "metric" ? "1 mm" : "1/8 in" },
      cloths: [face, lining],
      stock: { cloth: stock },
      rooms: [{ id: "room", name: "Room", windows }],
    },
  );
}
