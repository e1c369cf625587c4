import { describe, expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../../test/hand-shade.ts";
import { expectNear } from "../../../test/near.ts";
import { wholeSaid } from "../../../test/said.ts";
import { type Finding, figureId } from "../../figures/index.ts";
import type { TubeInput } from "../lift-input.ts";
import { controlDrop, endAboveFloor, type HangingControl } from "./control-drop.ts";
import { judgeReach } from "./judge-reach.ts";
import { judgeSpools } from "./judge-spools.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
const { resolved, size } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const said = (findings: readonly Finding[]) =>
  findings.map(wholeSaid).map(({ id, severity, path, text, figures, remedies }) => ({
    ...{ id, severity, setting: path?.split("/").at(-1), figures, text: plain(text) },
    remedies: remedies.map(({ label }) => plain(label)),
  }));
const LOOP: HangingControl = { what: "loop", key: "loopDropMm", drop: "Loop", end: "Loop’s end" };

/** A board of 20 mm, the tube’s axis 15 mm below it: a drive 35 mm below the top line, of a shade 1,500 mm long. */
function hung(topAboveFloorMm: number | undefined, lift: object = {}): TubeInput {
  const shade = {
    ...resolved,
    board: { ...resolved.board, thicknessMm: 20 },
    making: { ...resolved.making, lift: { ...resolved.making.lift, cleatAboveFloorMm: 1600, ...lift } },
  };
  const { topAboveFloorMm: _top, ...rest } = { ...size, finishedLengthMm: 1500 };
  const high = topAboveFloorMm === undefined ? rest : { ...rest, topAboveFloorMm };
  return { shade, size: high, liftParts: { axisMm: 15 } } as unknown as TubeInput;
}

describe("how far a loop hangs", () => {
  const drop = (topMm: number | undefined, lift: object = {}) => controlDrop(hung(topMm, lift), LOOP, 100);

  it("is as the maker sets it, else half of the shade, or down to 1.6 m above the floor where that is less", () => {
    expect(drop(2400, { loopDropMm: 640 })).toEqual({ values: 640, workings: [] });
    expect(drop(undefined).values).toBe(750);
    // The drive 2,365 mm above the floor: 765 mm down to 1,600 mm, and half of the shade is less.
    expect(drop(2400).values).toBe(750);
    expectNear(drop(2300).values, 2265 - 1600, 1e-9);
    // 150 mm are nothing to take hold of.
    expectNear(drop(1786).values, 151, 1e-9);
    expect(drop(1785).values).toBe(750);
    expect(drop(2300).workings.map(figureId)).toEqual(["rig.loop"]);
  });

  it("tells where it ends, on the floor at the lowest", () => {
    expect(endAboveFloor(hung(2400), 700, LOOP, 100)?.value).toBe(1665);
    expect(endAboveFloor(hung(700), 700, LOOP, 100)?.value).toBe(0);
    expect(endAboveFloor(hung(undefined), 700, LOOP, 100)).toBeUndefined();
  });

  const reach = (topMm: number | undefined, dropMm: number) =>
    said(judgeReach(hung(topMm), LOOP, { dropMm, driveX: 100 }));

  it("must end above the floor", () => {
    expect(reach(undefined, 9000)).toEqual([]);
    expect(reach(1735, 1699)).toEqual([]);
    expect(reach(1735, 1700)).toEqual([
      {
        ...{ id: "rig.loop-on-floor", severity: "stop", setting: "loopDropMm", figures: ["rig.loop-end"] },
        text: "The loop is 1700 mm long and its drive 1700 mm above the floor: it does not fit.",
        remedies: ["Make the loop 100 mm long"],
      },
    ]);
    // Below the height at which it would end, nothing is offered.
    expect(reach(1635, 1700)[0]?.remedies).toEqual([]);
    expect(reach(20, 1700)[0]?.text).toContain("its drive 0 mm above the floor");
  });

  it("and no higher than a hand reaches, 1.9 m", () => {
    expect(reach(2735, 800)).toEqual([]);
    expect(reach(2735, 799)).toEqual([
      {
        ...{ id: "rig.loop-out-of-reach", severity: "fix", setting: "loopDropMm", figures: ["rig.loop-end"] },
        text: "The loop ends 1901 mm above the floor, above the reach of many hands.",
        remedies: ["Make the loop 1100 mm long"],
      },
    ]);
  });
});

describe("spools and their tube", () => {
  const tube = (id: string, diameterMm: number, spoolFlangeMm?: number, wallMm?: number) => ({
    ...{ id, name: `Tube ${id}`, diameterMm, spoolFlangeMm, wallMm },
  });
  const parts = {
    cords: [
      { id: "thick", name: "Thick", diameterMm: 2 },
      { id: "thin", name: "Thin", diameterMm: 0.9 },
      { id: "thinner", name: "Thinner", diameterMm: 0.5 },
    ],
    tubes: [tube("own", 20, 40, 1), tube("wide", 40, 60, 2), tube("bare", 25, 30), tube("next", 25, 50, 2)],
  };
  const judge = (lift: object = {}, raisedMm = 19, over: object = {}) =>
    said(
      judgeSpools(
        {
          shade: { ...resolved, cord: { id: "cord", name: "Cord", diameterMm: 1.4 }, parts, ...over },
          liftParts: { tube: tube("own", 20, 40, 1), spool: { flangeMm: 40 } },
        } as unknown as TubeInput,
        {
          ...{ tube: { name: "Tube own" }, cords: [{ loadN: 4 }, { loadN: 6 }], heldN: 10, spools: [1, 2] },
          ...{ stiffness: { bendMm: 1, twistMm: 1 }, ...lift },
        } as never,
        { winding: { cordDiameterMm: 1.4 }, raisedMm } as never,
      ),
    );

  it("hold the cord inside their flanges of 40 mm: axis to cord twice, and the cord", () => {
    expect(judge({}, 19.3)).toEqual([]);
    expect(judge({}, 19.5)).toEqual([
      {
        ...{ id: "rig.spool-full", severity: "fix", setting: "tube", figures: ["lift.wound-raised"] },
        text: "With the shade raised the cord on a spool of “Tube own” is 40.4 mm across, and the flanges are 40 mm: it would spill over.",
        remedies: ["Use “Thin”", "Use “Tube wide”"],
      },
    ]);
    expect(judge({}, 19.5, { parts: NO_PARTS })[0]?.remedies).toEqual([]);
  });

  it("carry 5 lb each as the one sheet that was read allows, 22.24 N", () => {
    expect(judge({ cords: [{ loadN: 4 }, { loadN: 22.24 }] })).toEqual([]);
    expect(judge({ cords: [{ loadN: 23 }, { loadN: 4 }] })).toEqual([
      {
        ...{ id: "lift.heavy-spool", severity: "note", setting: "columns", figures: ["lift.heaviest-cord"] },
        text: "One spool carries up to 23 N. The one sheet that was read allows 22.2 N for each cord; ask the maker of yours. More columns share the weight.",
        remedies: [],
      },
    ]);
  });

  it("rub where the tube bends by more than 1.5 mm; it lets the hem hang askew where it twists it by more than 3 mm", () => {
    const stiff = (bendMm: number, twistMm: number) => judge({ stiffness: { bendMm, twistMm } });
    expect(stiff(1.5, 3)).toEqual([]);
    expect(stiff(1.6, 9)).toEqual([
      {
        ...{ id: "rig.tube-bends", severity: "fix", setting: "tube", figures: ["lift.tube-bend"] },
        text: "“Tube own” bends 1.6 mm between its supports under the raised shade; beyond 1.5 mm spools begin to rub. A thicker tube, or another support, helps.",
        // The next thicker whose wall is known.
        remedies: ["Use “Tube next”"],
      },
    ]);
    expect(stiff(1.5, 3.1)).toEqual([
      {
        ...{ id: "rig.tube-twists", severity: "fix", setting: "tube", figures: ["lift.tube-twist"] },
        text: "“Tube own” twists so far under the raised shade that the hem hangs 3.1 mm out of level. A thicker tube helps, or a drive nearer to the middle.",
        remedies: ["Use “Tube next”"],
      },
    ]);
  });

  it("of a tube whose wall nobody measured nothing is judged", () => {
    expect(judge({ stiffness: undefined })).toEqual([
      {
        ...{ id: "rig.tube-not-judged", severity: "unproven", setting: "tube", figures: ["lift.held"] },
        text: "The wall of “Tube own” is not given, so how far it bends and twists is not judged. Measure it, or keep to what its maker allows for 10 N on 2 spools.",
        remedies: [],
      },
    ]);
    expect(judge({ stiffness: undefined, spools: [1] })[0]?.text).toContain("for 10 N on 1 spool.");
  });
});
