import { describe, expect, it } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { rears } from "../../../test/safety/cords.ts";
import type { RearCords, RearSpan } from "./cord-geometry.ts";
import { canFeed, drawnAtBoardMm, drawnMm, risesToMm } from "./feed.ts";

const spans = [200, 200, 200];
/** 4, 8 and 40 N on the least loaded cord while the three folds gather. */
const growing = { heldN: [8, 16, 80], leastShare: 0.5 };
const at = (rear: RearCords, i: number): RearSpan => {
  const span = rear.spans[i];
  if (span === undefined) throw new Error(`invalid span: ${i}`);
  return span;
};

describe("cord that a pull draws out", () => {
  it("is all that the shade can still rise by, as far up as the pull lifts what the cord carries", () => {
    const rear = rears(spans, growing);
    expect(risesToMm(rear, 35, 600)).toBe(400);
    expect(drawnMm(rear, at(rear, 0), 35, 0, 600)).toBe(400);
    expect(drawnMm(rear, at(rear, 0), 35, 150, 600)).toBe(250);
    expect(canFeed(rear, 35, 600)).toBe(true);
  });

  it("is the whole travel where every load is under the pull", () => {
    const rear = rears(spans, { heldN: [8, 16, 24], leastShare: 0.5 });
    expect(drawnMm(rear, at(rear, 2), 35, 0, 600)).toBe(600);
  });

  it("is less where the cord turns in the rings below: e^(0.25 · π/2) = 1.481 (Morton & Hearle, eq. 25.2)", () => {
    // 8 N · 1.481 = 11.8 N is over a pull of 11 N, 8 N alone is not.
    const straight = rears(spans, growing);
    const turned = rears(spans, { ...growing, wrapBelowRad: Math.PI / 2 });
    expect(risesToMm(straight, 11, 600)).toBe(400);
    expect(risesToMm(turned, 11, 600)).toBe(200);
  });

  it("is what a taut cord gives sideways where nothing slides: 40 N against 35 N, sin ε = 35 / 80", () => {
    const rear = rears([200], { heldN: [40], leastShare: 1 });
    const epsilon = Math.asin(35 / 80);
    expectNear(drawnMm(rear, at(rear, 0), 35, 0, 200), 200 / Math.cos(epsilon) - 200, 1e-9);
    expect(canFeed(rear, 35, 200)).toBe(false);
  });

  it("comes off a spool too, whose spring balances the load: then raised as much as lowered", () => {
    const rear = rears(spans, { heldN: [8, 8, 8], leastShare: 0.5, top: { holds: false, wrapRad: 0 } });
    expect(drawnMm(rear, at(rear, 0), 35, 0, 600)).toBe(600);
    expect(drawnMm(rear, at(rear, 2), 35, 500, 600)).toBe(600);
    expect(canFeed({ ...rear, heldN: [200, 200, 200] }, 35, 600)).toBe(false);
  });

  it("stays on a spool whose spring balances as much as the pull, the turn above it taken along", () => {
    const spool = (heldN: number, wrapRad = 0) =>
      rears([200, 200], {
        heldN: [heldN, 900],
        leastShare: 0.5,
        friction: 0.25,
        top: { holds: false, wrapRad },
      });
    const drawn = (rear: RearCords) => drawnMm(rear, at(rear, 0), 35, 150, 400);
    // 34.9 N in the cord: risen by 150 mm it pays them out, and the shade rises by 50 mm more.
    expect(drawn(spool(69.8))).toBe(200);
    for (const held of [70, 80]) expect(drawn(spool(held))).toBeLessThan(20);
    // A quarter turn above it: 34.9 · 1.481 N are more than the pull, and the shade still rises by itself.
    expect(drawn(spool(69.8, Math.PI / 2))).toBe(50);
    expect(canFeed(spool(70), 35, 400)).toBe(false);
    expect(canFeed(spool(69.8), 35, 400)).toBe(true);
  });

  it("is none in a sleeve, gripped or sewn", () => {
    for (const guide of ["ring-locked", "enclosed"] as const) {
      const rear = rears(spans, { ...growing, guide });
      expect(drawnMm(rear, at(rear, 0), 35, 0, 600)).toBe(0);
      expect(canFeed(rear, 35, 600)).toBe(false);
    }
  });

  it("stops where the load is as large as the pull", () => {
    const rises = (heldN: number) =>
      risesToMm(rears([200, 200], { heldN: [20, heldN], leastShare: 0.5, friction: 0 }), 35, 400);
    expect([rises(69.9), rises(70), rises(70.1)]).toEqual([400, 200, 200]);
  });

  it("is bent aside by what each cord carries while its own fold gathers", () => {
    // 40 N lowered, 100 N from 200 mm on: two legs at asin(35/80) and at asin(35/200).
    const rear = rears([200, 200], { heldN: [40, 100], leastShare: 1 });
    const longer = (sine: number) => 200 / Math.sqrt(1 - sine ** 2) - 200;
    for (const [liftMm, sine] of [
      [0, 35 / 80],
      [199, 35 / 80],
      [200, 35 / 200],
      [300, 35 / 200],
    ] as const)
      expectNear(drawnAtBoardMm(rear, 200, 35, liftMm, 400), longer(sine), 1e-9, `${liftMm}`);
  });

  it("comes out along the board by as much as the shade can still rise", () => {
    const rear = rears(spans, growing);
    expect(drawnAtBoardMm(rear, 200, 35, 0, 600)).toBe(400);
    expect(drawnAtBoardMm(rear, 200, 35, 399, 600)).toBe(1);
    // Risen so far it slides no more: 40 N in the cord against 35 N.
    expectNear(drawnAtBoardMm(rear, 200, 35, 400, 600), 200 / Math.sqrt(1 - (35 / 80) ** 2) - 200, 1e-9);
  });

  it("still comes out between eyes on the board, where no sleeve reaches", () => {
    const rear = rears(spans, { ...growing, guide: "enclosed", boardSpansMm: [200] });
    expect(canFeed(rear, 35, 600)).toBe(true);
  });
});
