import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { type CordLock, plannedLock } from "../../job/index.ts";
import type { Lift } from "../../shade-plan/index.ts";
import { railRig } from "./rail-rig.ts";

const { resolved, size } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
/** 30 mm long, 22 mm wide: behind the lift it takes 24 mm of the board's depth. */
const lock = (id: string, over: Partial<CordLock> = {}): CordLock =>
  plannedLock({
    ...{ id, name: `Lock ${id}`, housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
    ...{ dividerWires: 2, cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.4, ...over },
  } as never);

interface Asked {
  depthMm?: number;
  own?: CordLock;
  locks?: CordLock[];
  columns?: number[];
  side?: "left" | "right";
}
function rig(
  lift: object,
  { depthMm = 140, own = lock("own"), locks = [], columns = [100, 500, 900], side = "left" }: Asked = {},
) {
  const takeUp = (lift as { takeUp: string }).takeUp;
  return railRig(
    {
      shade: {
        ...{ ...resolved, cord: { id: "cord", name: "Cord", diameterMm: 1.4 }, locks },
        ...{ eye: { ...resolved.eye, outsideDiameterMm: 12 }, board: { ...resolved.board, depthMm } },
      },
      size: { ...size, finishedWidthMm: 1000, boardLengthMm: 994 },
      liftParts: takeUp === "lock" ? { takeUp, lock: own } : { takeUp },
    } as never,
    lift as Lift,
    columns.map((xMm, i) => ({ number: i + 1, xMm })),
    side,
  );
}
/** Eyes of 12 mm on one line, one cord that keeps to a lane on its way to the lock, the lock's housing 22 mm wide. */
const overLock = (eyeZ: number, laneZ = eyeZ, lockZ = eyeZ) => ({
  ...{ takeUp: "lock", eyes: [{ zMm: eyeZ }], eyeDiameterMm: 12, seat: { zMm: lockZ }, housingWidthMm: 22 },
  cords: [{ path: [{ zMm: eyeZ }, { zMm: laneZ }, { zMm: 0 }, { zMm: 0 }] }],
});

describe("a rail's own rig", () => {
  it("has its eyes midway between the wall edge and what hangs there for the lift, as near as they are thick", () => {
    // A lift's eye of 12 mm at 60 mm reaches to 54 mm.
    expect(rig(overLock(60)).eyes).toEqual([100, 500, 900].map((xMm) => ({ xMm, zMm: 27 })));
    expect(rig(overLock(19)).eyes[0]?.zMm).toBe(6.5);
    expect(rig(overLock(16)).eyes[0]?.zMm).toBe(6);
    // Two eyes of 12 mm beside each other: the lift's begins 12 mm from the wall.
    expect([18, 17.9].map((z) => rig(overLock(z)).eyesMeetLift)).toEqual([false, true]);
  });

  it("sits behind the lift where 24 mm are free there, just inside its last eye; else outside the last eye of all", () => {
    // Eyes reach to 24 mm; the cord's lane at 24.7 mm less half of 1.4 mm.
    expect(rig(overLock(30, 24.7)).seat).toMatchObject({ zMm: 12, forced: false });
    expect(rig(overLock(30, 24.7)).seat.xMm).toBe(100 + 6 + 12 + 15);
    for (const lift of [overLock(29.9), overLock(40, 24.6)]) {
      const { seat } = rig(lift);
      // 3 mm of board, and 3 more kept to its end.
      expect(seat).toMatchObject({ zMm: 70, xMm: 3 + 3 + 15, forced: false });
    }
    expect(rig(overLock(30, 24.7), { side: "right" }).seat.xMm).toBe(1000 - 133);
    expect(rig(overLock(30, 24.7)).seat.screwsMm.map(({ zMm }) => zMm)).toEqual([12, 12]);
  });

  it("touches the lift's lock where its own lanes come within 1 mm of the housing", () => {
    // Its eyes on 27 mm, the cord to 27.7 mm, and 1 mm kept: a housing of 22 mm from 28.7 mm on.
    expect([39.7, 39.6].map((z) => rig(overLock(60, 60, z), { columns: [500] }).cordsMeetLock)).toEqual([
      false,
      true,
    ]);
  });

  it("under a tube has no end that is free of it: it must go behind tube, spools and drive", () => {
    const tube = (z: number, flangeMm: number, driveDepth: number) => ({
      ...{ takeUp: "tube", tube: { diameterMm: 20, zMm: z }, spools: [{ flangeMm }] },
      drive: { zMm: z, depthMm: driveDepth },
    });
    expect(rig(tube(60, 36, 40), { locks: [lock("a")] })).toMatchObject({
      ...{ seat: { forced: false, zMm: 12 }, eyesMeetLift: false, cordsMeetLock: false },
      eyes: [{ zMm: 20 }, { zMm: 20 }, { zMm: 20 }],
    });
    expect(rig(tube(60, 50, 40), { locks: [lock("a")] }).eyes[0]?.zMm).toBe(17.5);
    expect(rig(tube(60, 10, 0), { locks: [lock("a")] }).eyes[0]?.zMm).toBe(25);
    expect(rig(tube(44, 36, 40), { locks: [lock("a")] }).seat.forced).toBe(false);
    expect(rig(tube(43.9, 36, 40), { locks: [lock("a")] }).seat.forced).toBe(true);
  });

  it("over a cleat keeps clear of the last eye as well", () => {
    const cleat = (turnZ: number, turnMm: number) => ({
      ...{
        takeUp: "cleat",
        eyes: [{ zMm: 60 }, { zMm: 58 }],
        eyeDiameterMm: 12,
        turn: { zMm: turnZ, diameterMm: turnMm },
      },
    });
    const eye = (...given: Parameters<typeof cleat>) =>
      rig(cleat(...given), { locks: [lock("a")] }).eyes[0]?.zMm;
    expect([eye(60, 12), eye(60, 30), eye(50, 12)]).toEqual([26, 22.5, 22]);
    expect(rig(cleat(60, 12), { locks: [lock("a")] })).toMatchObject({
      seat: { zMm: 12 },
      cordsMeetLock: false,
    });
  });

  it("takes the lift's own lock where these cords fit it, else the first that takes them, else the first of all", () => {
    const few = { cordsMax: 2 };
    const chosen = (own: CordLock, ...locks: CordLock[]) => rig(overLock(60), { own, locks }).lock.id;
    expect(chosen(lock("own"), lock("a"))).toBe("own");
    expect(chosen(lock("own", few), lock("few", few), lock("a"), lock("b"))).toBe("a");
    const none = rig(overLock(60), { own: lock("own", few), locks: [lock("few", few)] });
    expect([none.lock.id, none.misfits]).toEqual(["own", ["takes at most 2 cords; this shade has 3"]]);
    expect(rig(overLock(60)).misfits).toEqual([]);
    // What is only to be looked at is no misfit.
    const off = { cordMinMm: undefined, cordMaxMm: undefined, cordNominalMm: 1.6 };
    expect(rig(overLock(60), { own: lock("off", off) })).toMatchObject({ lock: { id: "off" }, misfits: [] });
    expect(
      rig(
        { takeUp: "cleat", eyes: [{ zMm: 60 }], eyeDiameterMm: 12, turn: { zMm: 60, diameterMm: 12 } },
        { locks: [lock("a")] },
      ).lock.id,
    ).toBe("a");
    expect(() =>
      rig({ takeUp: "cleat", eyes: [], eyeDiameterMm: 12, turn: { zMm: 60, diameterMm: 12 } }),
    ).toThrow("invalid parts: no lock");
  });

  it("runs each cord from its column to the lock, in the columns' order", () => {
    for (const side of ["left", "right"] as const) {
      const { strands, seat } = rig(overLock(60), { side });
      expect(strands.map(({ column, xMm }) => [column, xMm])).toEqual([
        [1, 100],
        [2, 500],
        [3, 900],
      ]);
      for (const { path, xMm, turns } of strands) {
        expect([path[0]?.xMm, path[0]?.zMm, path.at(-1)?.xMm]).toEqual([xMm, 27, seat.xMm]);
        expect(turns.ownEyeRad).toBeCloseTo(Math.PI / 2, 9);
      }
    }
  });
});
