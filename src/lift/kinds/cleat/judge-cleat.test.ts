import { describe, expect, it } from "vitest";
import { handShade } from "../../../../test/hand-shade.ts";
import type { Finding } from "../../../figures/index.ts";
import { CATALOGUE } from "../../../job/index.ts";
import { crowdedLastEye, judgeCleat } from "./judge-cleat.ts";

const { resolved } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const plain = (text = "") => text.replaceAll("\u00a0", " ");
const said = (findings: readonly Finding[]) =>
  findings.map(({ id, severity, path, text, remedies }) => ({
    ...{ id, severity, setting: path?.split("/").at(-1), text: plain(text) },
    remedies: remedies.map(({ label, patch }) => [plain(label), patch.at(-1)]),
  }));
const set = (key: string, value: unknown) => ({
  ...{ op: "add", path: `/rooms/0/windows/0/shade/making/lift/${key}`, value },
});

/** The last eye 1,800 mm above the floor, the cleat 300 mm below it: 1,500 mm. A figure of eight takes 250 mm. */
const judge = (lift: object = {}, tail: object = {}) =>
  said(
    judgeCleat(
      resolved,
      { holdN: 12, tailLoweredMm: 550, tailRaisedMm: 1800, cords: [1, 2, 3], ...lift } as never,
      { loweredMm: 0, raisedMm: 0, eyeAboveFloorMm: 1800, toCleatMm: 300, windMm: 1500, ...tail },
    ),
  );
const [HOLD, ...NOTHING_ELSE] = judge();

describe("cords on a cleat", () => {
  it("are all that holds the shade", () => {
    expect(NOTHING_ELSE).toEqual([]);
    expect(HOLD).toEqual({
      ...{ id: "lift.held-by-cleat", severity: "note", setting: "kind", remedies: [] },
      text: "There is no lock: at every height the shade is held by its cords on the cleat alone, raised with 12 N. Let go, it falls at once.",
    });
    const unknown = judge({ tailRaisedMm: 9000 }, { eyeAboveFloorMm: undefined });
    expect(unknown).toEqual([HOLD]);
    expect(judge({}, { toCleatMm: undefined })).toEqual([HOLD]);
    expect(judge({}, { windMm: undefined })).toEqual([HOLD]);
  });

  it("never come to one that is above the last eye, or level with it", () => {
    for (const [toCleatMm, above] of [
      [0, "0 mm"],
      [-120, "120 mm"],
    ] as const)
      expect(judge({ tailRaisedMm: 9000 }, { toCleatMm, windMm: 9000 }).slice(1)).toEqual([
        {
          ...{ id: "rig.cleat-above-eye", severity: "fix", setting: "cleatAboveFloorMm" },
          text: `The cleat is planned ${above} above the last eye, where no cord comes to it: on a window as low as this no cleat can hold the shade and be out of a child’s reach.`,
          remedies: [["Raise it by a spring instead", set("kind", "spring")]],
        },
      ]);
    expect(judge({}, { toCleatMm: 1 })).toEqual([HOLD]);
  });

  it("go once round it with the shade lowered: 300 + 250 mm", () => {
    expect(judge({ tailLoweredMm: 549.1 })).toEqual([HOLD]);
    expect(judge({ tailLoweredMm: 549 }).map(({ id }) => id)).toContain("rig.tail-short-of-cleat");
    expect(judge({ tailLoweredMm: 400 }).slice(1)).toEqual([
      {
        ...{ id: "rig.tail-short-of-cleat", severity: "fix", setting: "tailMm" },
        text: "With the shade lowered the cords end 150 mm short of one figure of eight on their cleat: until it has risen so far nothing holds it.",
        remedies: [["Let 550 mm hang below the last eye", set("tailMm", 550)]],
      },
    ]);
  });

  it("end where a hand takes hold of them, 1.9 m above the floor", () => {
    const high = { eyeAboveFloorMm: 2600, toCleatMm: 100 };
    expect(judge({ tailLoweredMm: 700 }, high)).toEqual([HOLD]);
    expect(judge({ tailLoweredMm: 699 }, high).slice(1)).toEqual([
      {
        ...{ id: "rig.tail-out-of-reach", severity: "fix", setting: "cleatAboveFloorMm" },
        text: "With the shade lowered the cords end 1901 mm above the floor, above the reach of many hands.",
        remedies: [["Let 700 mm hang below the last eye", set("tailMm", 700)]],
      },
    ]);
  });

  it("lie on the floor before they are wound where they hang longer than the eye is high", () => {
    expect(judge({ tailRaisedMm: 1800 })).toEqual([HOLD]);
    expect(judge({ tailRaisedMm: 1850 }).slice(1)).toEqual([
      {
        ...{ id: "rig.tail-on-floor", severity: "note", setting: "tailMm", remedies: [] },
        text: "Raised and not yet wound, 50 mm of the cords lies on the floor: wind them on the cleat as the shade goes up, and leave none hanging for a moment.",
      },
    ]);
  });

  it("fill it after eight figures of eight, 2,000 mm", () => {
    expect(judge({}, { windMm: 2000 })).toEqual([HOLD]);
    const full = (cords: number[]) => judge({ cords }, { windMm: 2500 }).slice(1);
    expect(full([1, 2, 3])).toEqual([
      {
        ...{ id: "rig.cleat-full", severity: "note", setting: "cleatAboveFloorMm", remedies: [] },
        text: "With the shade raised 2500 mm of 3 cords goes on the cleat, about 10 figures of eight. A cleat of 100 mm (4 in) keeps about 8, 2000 mm: take a longer cleat, and see that every turn stays on.",
      },
    ]);
    expect(full([1])[0]?.text).toContain("2500 mm of cord goes on the cleat");
  });
});

describe("all cords through the last eye", () => {
  /** Nine cords of 1.4 mm fill 70 % of a bundle 1.4·√(9 / 0.7) = 5.02 mm across; an eye opens 0.6 of its diameter. */
  const eyes = [30, 9, 8.3, 8.4, 12].map((outsideDiameterMm) => ({
    ...{ id: `eye-${outsideDiameterMm}`, name: `Eye ${outsideDiameterMm}`, outsideDiameterMm },
  }));
  const crowded = (diameterMm: number, parts: object = { ...CATALOGUE, eyes }) =>
    said(
      crowdedLastEye(
        { ...resolved, parts } as never,
        { cords: Array.from({ length: 9 }), turn: { diameterMm }, cordDiameterMm: 1.4 } as never,
      ),
    );

  it("need an opening as wide as their bundle, and the smallest eye that has it is offered", () => {
    expect(crowded(8.37)).toEqual([]);
    expect(crowded(8.36)).toEqual([
      {
        ...{ id: "rig.crowded-eye", severity: "fix", setting: "turnEye" },
        text: "9 cords of 1.4 mm run through the last eye: a bundle of about 5.02 mm in an opening of about 5.02 mm.",
        remedies: [["Use “Eye 8.4” as the last eye", set("turnEye", "eye-8.4")]],
      },
    ]);
    expect(crowded(6)[0]?.text).toContain("in an opening of about 3.6 mm");
    expect(crowded(6, { ...CATALOGUE, eyes: [] })[0]?.remedies).toEqual([]);
  });
});
