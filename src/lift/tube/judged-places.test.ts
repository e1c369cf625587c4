import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { saidOf } from "../../../test/said.ts";
import { CATALOGUE, type Drive } from "../../job/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import type { TubeInput } from "../lift-input.ts";
import { judgePositions } from "./judge-positions.ts";
import type { TubeRig } from "./tube-parts.ts";

const { resolved, size } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const drive = (id: string, lengthMm: number, over: Partial<Drive> = {}): Drive => ({
  ...{ id, name: `Drive ${id}`, kind: "loop", lengthMm, heightMm: 40, depthMm: 30, ratio: 1, screws: 2 },
  ...{ massMaxKg: 9, ...over },
});

interface Asked {
  columns?: number[];
  kind?: string;
  widthMm?: number;
  drives?: Drive[];
  own?: Drive;
  lift?: object;
  faults?: TubeRig["placed"]["faults"];
  tubes?: object[];
}

/**
 * A shade 900 mm wide under a board of 890 mm, worked on the right; spools of 30 mm, a drive of 60 mm, 3 mm between parts:
 * outside the last spool a drive takes 3 + 60 + 3 + 15 = 81 mm of board.
 */
function judge({ columns = [100, 450, 800], kind = "tube-loop", widthMm = 900, ...asked }: Asked = {}) {
  const { drives = [], own = drive("own", 60), lift = {}, faults = [], tubes = [] } = asked;
  const places = columns.map((xMm, i) => ({ number: i + 1, xMm }));
  const input = {
    shade: { ...resolved, drives, parts: { ...CATALOGUE, tubes } },
    size: { ...size, finishedWidthMm: widthMm, boardLengthMm: widthMm - 10 },
    grid: { columns: places },
    mass: { totalKg: 2 },
    liftParts: {
      kind,
      drive: own,
      spool: { lengthMm: 30 },
      tube: { id: "tube", name: "Tube", stockMm: 2000 },
    },
  } as unknown as TubeInput;
  const drawn = {
    ...{ drive: { name: own.name, forced: false, place: "outside" }, controlSide: "right", spools: places },
    ...{
      tube: { name: "Tube", lengthMm: 800 },
      hangs: kind === "tube-loop" ? "loop" : "nothing",
      supportLengthMm: 12,
    },
    ...lift,
  } as unknown as TubeLift;
  return saidOf(judgePositions(input, drawn, { placed: { faults } } as unknown as TubeRig));
}
const forced = (asked: Asked = {}) =>
  judge({ ...asked, lift: { drive: { name: "Drive own", forced: true, place: "between" } } });
const labels = (found: ReturnType<typeof judge>) =>
  found.flatMap(({ remedies }) => remedies.map(([label]) => label));

it("nothing is said where all have their places", () => {
  expect(judge()).toEqual([]);
});

describe("a drive without a place", () => {
  it("is told what it takes and what there is, with the inset that gives it room", () => {
    expect(forced({ columns: [50, 450, 850] })).toEqual([
      {
        ...{
          id: "rig.no-drive-place",
          stage: "rig",
          severity: "stop",
          setting: "lift/drive",
          figures: undefined,
        },
        text: "There is no place for “Drive own” under the board: outside the last spool on the right it needs 81 mm and has 45 mm, and it does not fit between two spools either. It is drawn where it misses by least.",
        remedies: [["Set the edge columns in by 86 mm", "columns/edgeInsetMm", 86]],
      },
    ]);
    expect(forced({ columns: [2, 898] })[0]?.text).toContain("needs 81 mm and has 0 mm");
  });

  it("is offered a longer board where that alone is enough", () => {
    // 3 mm are lacking at the one end and are taken from both: 4 of the 10 mm stay.
    expect(forced({ columns: [83, 817] })[0]?.remedies).toContainEqual([
      ...["Make the board only 4 mm shorter than the shade", "mount/boardShorterMm", 4],
    ]);
    expect(labels(forced({ columns: [81, 819] }))).toContain("Make the board as long as the shade is wide");
    expect(labels(forced({ columns: [80, 820] })).join()).not.toContain("board");
  });

  it("is offered two shorter drives of its kind at most that take the shade and find a place", () => {
    // Outside the spool at 50 mm: 45 − 3 − 3 − 15 mm; in a bay of 80 mm: 80 − 2 · (15 + 3) mm.
    const columns = [50, 130, 850];
    const offered = (...drives: Drive[]) =>
      forced({ columns, drives }).flatMap(({ remedies }) =>
        remedies.filter(([, setting]) => setting === "lift/drive"),
      );
    expect(offered(drive("a", 24), drive("b", 20), drive("c", 10))).toEqual([
      ["Use the shorter “Drive a”", "lift/drive", "a"],
      ["Use the shorter “Drive b”", "lift/drive", "b"],
    ]);
    // In the bay nearest to the control side there is room for any.
    const narrow = (one: Drive) =>
      forced({ columns: [770, 850], drives: [one] }).flatMap(({ remedies }) =>
        remedies.filter(([, setting]) => setting === "lift/drive"),
      ).length;
    expect([narrow(drive("fits", 44)), narrow(drive("long", 45))]).toEqual([1, 0]);
    const kept = { columns: [770, 850], own: drive("own", 40) };
    const others = (one: Drive) =>
      labels(forced({ ...kept, drives: [one] })).some((label) => `${label}`.includes("shorter “"));
    expect(others(drive("alike", 40))).toBe(false);
    expect(others(drive("wand", 30, { kind: "wand" }))).toBe(false);
    expect([2, 1.9, undefined].map((massMaxKg) => others(drive("weak", 30, { massMaxKg })))).toEqual([
      true,
      false,
      false,
    ]);
  });

  it("that no hand works is offered wider bays: a drive, a spool and 3 mm on both sides, 96 mm", () => {
    const at = (apart: number, count: number) => Array.from({ length: count }, (_, i) => 50 + apart * i);
    const fewer = (kind: string, columns: number[]) =>
      forced({ kind, columns }).flatMap(({ remedies }) =>
        remedies.filter(([, setting]) => setting === "columns/count"),
      );
    expect(fewer("motor", at(80, 11))).toEqual([["Use 9 columns", "columns/count", 9]]);
    expect(fewer("spring", at(48, 3))).toEqual([["Use 2 columns", "columns/count", 2]]);
    expect([fewer("spring", at(47.9, 3)), fewer("motor", at(96, 3)), fewer("tube-loop", at(80, 11))]).toEqual(
      [[], [], []],
    );
  });

  it("that nothing of this helps is told what would", () => {
    const [found] = forced({ widthMm: 300, columns: [50, 250] });
    expect(found?.remedies).toEqual([]);
    expect(found?.text).toMatch(
      /misses by least\. Use fewer columns, a shorter drive, or an inset that leaves it room\.$/,
    );
  });
});

it("a loop between two spools hangs behind the cloth; what hangs from nothing does not", () => {
  const between = { drive: { name: "Drive own", forced: false, place: "between" } };
  expect(judge({ lift: between })).toEqual([
    {
      ...{
        id: "rig.control-behind",
        stage: "rig",
        severity: "fix",
        setting: "columns/edgeInsetMm",
        figures: undefined,
      },
      text: "Outside the last spool there is no room for “Drive own”, so it sits between two spools, and its loop hangs behind the cloth.",
      remedies: [["Set the edge columns in by 86 mm", "columns/edgeInsetMm", 86]],
    },
  ]);
  expect(judge({ kind: "motor", lift: between })).toEqual([]);
  expect(judge({ lift: { drive: { ...between.drive, place: "far" } } })).toEqual([]);
});

describe("spools", () => {
  it("rub where their columns are less than a spool and 3 mm apart", () => {
    const at = (apart: number, count = 5) =>
      judge({ columns: Array.from({ length: count }, (_, i) => 100 + apart * i) });
    expect(at(33)).toEqual([]);
    expect(at(32, 9)).toEqual([
      {
        ...{ id: "rig.spools-touch", stage: "rig", severity: "stop", setting: "columns", figures: undefined },
        text: "The columns are 32 mm apart, and a spool of “Tube” takes 33 mm of the tube: neighbours would rub.",
        // 8 · 32 = 256 mm take seven bays of 33 mm.
        remedies: [["Use 8 columns", "columns/count", 8]],
      },
    ]);
    // Of bays unlike the narrowest counts.
    expect(judge({ columns: [100, 300, 332, 800] })[0]?.text).toContain("are 32 mm apart");
    expect(at(16.5, 3)[0]?.remedies).toEqual([["Use 2 columns", "columns/count", 2]]);
    expect([at(16.4, 3)[0]?.remedies, at(32, 2)[0]?.remedies]).toEqual([[], []]);
    expect(judge({ columns: [100, 132, 800] })[0]?.remedies).toEqual([]);
  });

  it("must not reach beyond either end of the board", () => {
    expect(judge({ columns: [20, 880] })).toEqual([]);
    const found = {
      ...{
        id: "rig.spool-off-board",
        stage: "rig",
        severity: "stop",
        setting: "columns/edgeInsetMm",
        figures: undefined,
      },
      text: "The spool of the edge column reaches 1 mm beyond the end of the board.",
      remedies: [["Set the edge columns in by 23 mm", "columns/edgeInsetMm", 23]],
    };
    expect(judge({ columns: [19, 880] })).toEqual([found]);
    expect(judge({ columns: [20, 881] })).toEqual([found]);
    // No farther in than a quarter of the width.
    const narrow = (widthMm: number) => judge({ widthMm, columns: [19, widthMm - 20] })[0]?.remedies.length;
    expect([narrow(92), narrow(91)]).toEqual([1, 0]);
  });
});

it("supports without a clear place, or pushed too far apart, are told", () => {
  const found = {
    id: "rig.supports",
    stage: "rig",
    severity: "fix",
    setting: "columns",
    figures: undefined,
    remedies: [],
  };
  // 12 mm of support and 3 mm on either side of it.
  const clear = "A support of the tube finds no place clear of the spools: it takes 18 mm beside one.";
  expect(judge({ faults: ["clear"] })).toEqual([{ ...found, text: clear }]);
  expect(judge({ faults: ["spacing", "clear"] })).toEqual([{ ...found, text: clear }]);
  expect(judge({ faults: ["spacing"] })).toEqual([
    { ...found, text: "Spools and drive push two supports of the tube more than 600 mm apart." },
  ]);
});

it("a tube longer than it is sold would be coupled, and the first that is long enough is offered", () => {
  const long = (lengthMm: number, ...stocks: (number | undefined)[]) =>
    judge({
      lift: { tube: { name: "Tube", lengthMm } },
      tubes: [
        { id: "tube", name: "Tube", stockMm: 9000 },
        ...stocks.map((stockMm, i) => ({ id: `tube-${i}`, name: `Tube ${i}`, stockMm })),
      ],
    });
  expect(long(2000, 3000)).toEqual([]);
  expect(long(2001, undefined, 2000, 2001, 4000)).toEqual([
    {
      ...{ id: "rig.tube-too-long", stage: "rig", severity: "fix", setting: "lift/tube", figures: undefined },
      text: "The tube is 2001 mm long, and “Tube” is sold in lengths of 2 m. It would have to be coupled, which only its maker can say how to do.",
      remedies: [["Use “Tube 2”", "lift/tube", "tube-2"]],
    },
  ]);
  expect(long(5000, 3000)[0]?.remedies).toEqual([]);
});
