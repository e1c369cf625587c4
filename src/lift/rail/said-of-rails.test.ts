import { expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../../test/hand-shade.ts";
import { wholeSaid } from "../../../test/said.ts";
import type { LiftShade } from "../lift-input.ts";
import { judgeTopRail } from "./judge-top-rail.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
const { resolved } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });

function shade(over: object = {}, topDropMm = 300): LiftShade {
  const fold = { ...resolved.making.fold, topDropMm };
  return {
    ...{ ...resolved, cord: { id: "cord", name: "Cord", diameterMm: 1.4, breakingN: 500 }, parts: NO_PARTS },
    ...{ making: { ...resolved.making, fold }, style: "flat", board: { ...resolved.board, depthMm: 38 } },
    ...over,
  } as LiftShade;
}

/** Two cords of 8 and 12 N, pulled by 22 N in all: at its knot the heavier asks for 5 · 12 / 0.5 = 120 N. */
const RAIL = {
  ...{ dropMm: 300, side: "left", heldN: 20, pullN: 22, lockName: "Rail lock" },
  cords: [
    { loadN: 8, pullN: 9 },
    { loadN: 12, pullN: 13 },
  ],
};
const RIG = { eyesMeetLift: false, cordsMeetLock: false, seat: { forced: false }, misfits: [] as string[] };

const said = (over: object = {}, rail: object = {}, rig: object = {}, askedMm = 300) =>
  judgeTopRail(shade(over, askedMm), { rail: { ...RAIL, ...rail }, rig: { ...RIG, ...rig } } as never)
    .map(wholeSaid)
    .map(({ id, severity, path, text, figures, remedies }) => ({
      ...{ id, severity, setting: path?.split("/").slice(-2).join("/"), figures, text: plain(text) },
      remedies: remedies.map(({ label }) => plain(label)),
    }));
const BOARD = "Hang it from the board";
const [DOWN] = said();

it("a top that comes down tells how far, on what, and what its cords carry and take", () => {
  expect(judgeTopRail(shade({}, 0), undefined)).toEqual([]);
  expect(judgeTopRail(shade(), undefined)).toEqual([]);
  expect(said()).toEqual([
    {
      ...{ id: "rig.top-down", severity: "note", setting: "fold/topDropMm" },
      figures: ["rig.rail-held", "rig.rail-pull"],
      text: "Its top comes down by 300 mm on 2 cords of its own, over a second lock at the left end of the board, seen from the room. With the top down 300 mm of cord run bare between board and rail, whatever encloses them further down: the review of cords counts them. Up, they carry 20 N, all of shade and rail while the lift cords are slack, and take a pull of about 22 N.",
      remedies: [BOARD],
    },
  ]);
});

it("is not for gathered cloth, nor under a head that is not level", () => {
  expect(said({ style: "austrian" })).toMatchObject([
    {
      ...{ id: "rig.top-not-for-style", severity: "fix", remedies: [BOARD] },
      text: "The top of an Austrian shade cannot be let down: only flat cloth hangs from a rail as it hangs from a board. It is planned from the board.",
    },
  ]);
  const opening = { ...resolved.opening, head: { kind: "angled", fallMm: 100, high: "left" } };
  expect(said({ opening })).toMatchObject([
    {
      ...{ id: "rig.top-under-head", severity: "stop", remedies: [BOARD] },
      text: "Under a head that is not level no rail can hang: the top of this shade must stay at its board.",
    },
  ]);
});

it("comes down as far as the raised stack lets it, and says so from a millimetre on", () => {
  expect(said({}, { dropMm: 299 })).toHaveLength(1);
  expect(said({}, { dropMm: 240 }).at(-1)).toEqual({
    ...{
      id: "rig.top-drop-limited",
      severity: "note",
      setting: "fold/topDropMm",
      figures: undefined,
      remedies: [],
    },
    text: "The top can come down 240 mm at most, to where the raised stack hangs; 300 mm was asked for.",
  });
});

it("is drawn up by hand: pulleys where it is hard", () => {
  const eyes = [
    { id: "plain", name: "Plain eye", outsideDiameterMm: 12 },
    { id: "pulley", name: "Pulley", outsideDiameterMm: 16, pulleyShare: 0.9 },
    { id: "other", name: "Other pulley", outsideDiameterMm: 16, pulleyShare: 0.9 },
  ];
  const hard = said({ parts: { ...NO_PARTS, eyes } }, { pullN: 40 }).find(
    ({ id }) => id === "rig.rail-hard-pull",
  );
  expect(hard).toMatchObject({
    ...{ severity: "note", figures: ["rig.rail-pull", "rig.rail-held"], setting: "fold/topDropMm" },
    remedies: ["Use “Pulley” in place of the eyes", BOARD],
  });
  expect(hard?.text).toMatch(
    /^Drawing the top up takes a pull of about 40 N for a weight of 20 N\. .*Pulleys in place of the eyes or a lighter bar make it lighter\.$/,
  );
});

it("asks five times of its cords what the heavier takes at its knot, 120 N", () => {
  const cord = (breakingN?: number) => ({ cord: { id: "cord", name: "Cord", diameterMm: 1.4, breakingN } });
  expect(said(cord(120))).toEqual([DOWN]);
  const cords = [100, 119, 120, 300, 400].map((breakingN) => ({
    ...{ id: String(breakingN), name: `Cord of ${breakingN}`, diameterMm: 1.4, breakingN },
  }));
  expect(said({ ...cord(119), parts: { ...NO_PARTS, cords } }).at(-1)).toEqual({
    ...{ id: "rig.rail-cord-too-weak", severity: "stop", setting: "lift/cord", figures: ["rig.rail-held"] },
    text: "The rail’s cords need a breaking strength of 120 N, 5 times what the heaviest of them takes with its knot; “Cord” breaks at 119 N.",
    remedies: ["Use “Cord of 120”", "Use “Cord of 300”"],
  });
  expect(said(cord()).at(-1)).toEqual({
    ...{
      id: "rig.rail-strength-unknown",
      severity: "unproven",
      setting: "lift/cord",
      figures: ["rig.rail-held"],
    },
    text: "The rail’s cords need a breaking strength of 120 N; that of “Cord” is not given. Ask its maker.",
    remedies: [],
  });
});

it("shares the board with the lift: each want of room is told, with the next deeper boards", () => {
  const boards = [100, 38, 60, 50].map((depthMm) => ({
    ...{ id: `board-${depthMm}`, name: `Board ${depthMm}`, depthMm, thicknessMm: 19 },
  }));
  const full = { eyesMeetLift: true, cordsMeetLock: true, seat: { forced: true } };
  expect(said({ parts: { ...NO_PARTS, boards } }, {}, full).at(-1)).toEqual({
    ...{ id: "rig.rail-no-room", severity: "stop", setting: "board/section", figures: undefined },
    text: "The top rail’s own rig does not fit on a board 38 mm deep: its eyes have no room between the wall edge and what hangs under the board; “Rail lock” has no place clear of the lift at the left end; its cords touch the housing of the lift’s lock. It is drawn all the same.",
    remedies: ["Use “Board 50”", "Use “Board 60”", BOARD],
  });
  const one = (rig: object) => said({}, {}, rig).at(-1)?.text ?? "";
  expect(one({ eyesMeetLift: true })).toContain("deep: its eyes have no room");
  expect(one({ seat: { forced: true } })).toContain("deep: “Rail lock” has no place");
  expect(one({ cordsMeetLock: true })).toContain("deep: its cords touch the housing of the lift’s lock. It");
});

it("has a lock that must take its cords", () => {
  expect(said({}, {}, { misfits: ["takes at most 1 cord; this shade has 2"] }).at(-1)).toEqual({
    ...{
      id: "rig.rail-lock-misfit",
      severity: "stop",
      setting: "lift/lock",
      figures: undefined,
      remedies: [BOARD],
    },
    text: "The top rail’s own lock, “Rail lock”, takes at most 1 cord; this shade has 2.",
  });
});
