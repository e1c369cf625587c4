import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { describe, expect, it } from "vitest";
import { frillWidths } from "../src/cloth/frill.ts";
import { type JobInput, jobSchema } from "../src/job/index.ts";
import { plan, type ShadePlan } from "../src/plan/index.ts";
import { frillOf } from "../src/styles/gathering/gathered-form.ts";
import { inches } from "../src/units/index.ts";
import { jobWith } from "./job-with.ts";
import { expectNear } from "./near.ts";

type ShadeInput = NonNullable<JobInput["rooms"][number]["windows"][number]["shade"]>;

const WIDTH = inches(36);
const LENGTH = inches(60);

/** A shade 36 × 60 in to size, with single side hems of 1 1/2 in: 3 in for both sides, as published. */
function shadeOf({ making, ...shade }: ShadeInput, job: Partial<JobInput> = {}): ShadePlan {
  const [planned] = plan(
    jobWith(
      {
        opening: { widthsMm: [WIDTH], heightsMm: [LENGTH] },
        shade: {
          mount: "to-size",
          lining: null,
          ...shade,
          making: { ...making, hems: { sideTurns: 1, ...making?.hems } },
        },
      },
      job,
    ),
  ).shades;
  if (planned === undefined) throw new Error("invalid test job: no shade");
  return planned;
}

function faceOf({ cloth }: ShadePlan) {
  const face = cloth.layers.find(({ layer }) => layer === "face");
  if (face === undefined) throw new Error("invalid test job: no face");
  return face;
}

const SHEER = {
  id: "voile",
  name: "Voile",
  usableWidthMm: 1500,
  massGsm: 60,
  shrinkLength: 0,
  shrinkWidth: 0,
};

// “How-to: Austrian shades” (2008).
describe("Austrian shade by its published formulas", () => {
  const austrian = (scallopExtraMm: number, mount = {}) =>
    shadeOf({
      style: "austrian",
      making: { columns: { count: 5 }, gather: { scallopExtraMm, drawInMm: 0 }, mount },
    });

  it.each([3, 4])("cut width = W + %i in for each scallop + 3 in", (extraIn) => {
    expectNear(faceOf(austrian(inches(extraIn))).cutWidthMm, inches(36 + 4 * extraIn + 3), 1e-6);
  });

  it("board at W − 1/4 in, a rod of 3/8 in at W − 1/2 in", () => {
    // The source strings its shade over screw eyes. Spools at the edge tapes want the board as long as the shade, which
    // is what is taken where nobody says.
    expectNear(austrian(inches(3)).board.lengthMm, WIDTH, 1e-6);
    const { board, form } = austrian(inches(3), { boardShorterMm: inches(0.25) });
    expectNear(board.lengthMm, WIDTH - inches(0.25), 1e-6);
    expectNear(board.barLengthMm ?? 0, WIDTH - inches(0.5), 1e-6);
    expectNear((form.bar?.toMm ?? 0) - (form.bar?.fromMm ?? 0), WIDTH - inches(0.5), 1e-6);
    expect(board.barName).toContain("3/8 in");
  });

  it("three times the length of a sheer, twice that of an opaque cloth", () => {
    const cloth = (shade: ShadePlan) => shade.form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0);
    expectNear(cloth(austrian(inches(3))), 2 * LENGTH, 1e-6);
    const sheer = shadeOf({ style: "austrian", face: "voile" }, { cloths: [SHEER] });
    expectNear(cloth(sheer), 3 * LENGTH, 1e-6);
  });

  it("the bottom loop hangs about 3 in below the corners, and the tapes end there", () => {
    const { form, grid } = austrian(inches(3));
    expectNear(form.swags[0]?.sagMm ?? 0, inches(3), inches(1), "sag");
    expectNear(grid.rows[0]?.yMm ?? 0, LENGTH - (form.swags[0]?.sagMm ?? 0), 1e-6, "lowest ring");
  });

  it("scallops of 10 to 12 in pass, wider ones are said", () => {
    const ids = (count: number) => {
      const shade = shadeOf({ style: "austrian", making: { columns: { count } } });
      return shade.findings.map(({ id }) => id);
    };
    expect(ids(4)).not.toContain("shape.scallops-too-wide");
    expect(ids(3)).toContain("shape.scallops-too-wide");
  });

  it("a sag given takes the cloth that the catenary says", () => {
    // f/L = 0.5026333 at S/L = 1.5: catenary table, S/L = sinh u / u, f/L = (cosh u − 1)/2u.
    const spanMm = (WIDTH - inches(1)) / 4;
    const shade = shadeOf({
      style: "austrian",
      making: { columns: { count: 5 }, gather: { sagMm: 0.5026333 * spanMm, drawInMm: 0 } },
    });
    expectNear(shade.form.swags[0]?.arcMm ?? 0, 1.5 * spanMm, 0.01);
    expectNear(faceOf(shade).cutWidthMm, WIDTH + 4 * 0.5 * spanMm + inches(3), 0.05);
  });
});

// “How to make Austrian blinds/shades” and a UK curtain page, “Austrian”: what is called a gathered festoon here.
describe("gathered festoon by its published formulas", () => {
  it("width × 2, length + 50 cm", () => {
    const { form } = shadeOf({ style: "festoon" });
    const [across] = form.allowances;
    expectNear(WIDTH + (across?.widthMm ?? 0), 2 * WIDTH, 1e-6);
    const length = form.allowances.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    expectNear(length, 500, 10, "50 cm, or 20 in");
  });

  it("72 in of frill are two widths of 36 in cloth", () => {
    expect(frillWidths(inches(72), inches(36))).toBe(2);
  });

  // A workroom’s order: frill round both sides and the hem of a 60 in drop, twice as full, made double. By hand: the flat
  // hem is P, so 2·(P + 2·60 in) of frill; each strip is twice its depth and two seams of half an inch.
  it("472 in of frill for sides and hem of a 60 in drop, made double", () => {
    const frilled = (gather: object) =>
      shadeOf({
        style: "festoon",
        mount: "to-size",
        making: { gather: { frillMm: inches(3), widthFullness: 2, ...gather } },
      });
    const shade = frilled({ frillEdges: "sides-and-hem", frillDouble: true });
    const { form, size, cloth, mass, workings } = shade;
    const flatMm = 2 * size.finishedWidthMm;
    expectNear(form.frill?.clothMm ?? 0, 2 * (flatMm + 2 * size.finishedLengthMm), 1e-6);
    const trim = cloth.trims.find(({ id }) => id === "frill");
    expectNear(trim?.widthMm ?? 0, 2 * (inches(3) + inches(0.5)), 1e-6);
    const face = cloth.layers[0];
    expect(trim?.count).toBe(Math.ceil((form.frill?.clothMm ?? 0) / (face?.usableWidthMm ?? 1)));
    // Its cloth is on the bolt and on the cords.
    const plain = frilled({ frillMm: 0 });
    const laid = cloth.trimBolts.flatMap(({ lays }) => lays).filter(({ panelId }) => panelId === "frill");
    expect(laid.length).toBe(trim?.count);
    expect(face?.buyMm).toBeGreaterThan(plain.cloth.layers[0]?.buyMm ?? 0);
    expect(mass.totalKg).toBeGreaterThan(plain.mass.totalKg);
    expect(workings.map(({ id }) => id)).toContain("shape.frill");
    expect(frilled({ frillEdges: "sides" }).form.frill?.clothMm).toBeCloseTo(4 * size.finishedLengthMm, 6);
  });

  it("472 in: 116 in of flat hem and two sides of 60 in, twice as full", () => {
    const { values } = frillOf(
      {
        making: {
          gather: { frillMm: 1, frillEdges: "sides-and-hem", frillDouble: true, frillFullness: 2 },
        } as Parameters<typeof frillOf>[0]["making"],
      },
      { finishedLengthMm: inches(60) },
      inches(116),
    );
    expectNear(values.frill?.clothMm ?? 0, inches(472), 1e-6);
  });
});

// “Making balloon shades”, parts 1 and 2 (2009).
describe("gathered balloon by its published formulas", () => {
  const poufs = 3;
  const shade = shadeOf({
    style: "gathered-balloon",
    making: {
      columns: { count: poufs + 1 },
      gather: { hemExtraMm: 0 },
      hems: { bottomTurnMm: inches(1.5), bottomTurns: 2, boardAllowanceMm: inches(1) },
    },
  });
  const panelMm = 2.5 * WIDTH;

  it("width × 2.5, length + 4 in", () => {
    expectNear(faceOf(shade).cutWidthMm, panelMm + inches(3), 1e-6, "side hems of 1 1/2 in beside");
    expectNear(faceOf(shade).cutLengthMm, LENGTH + inches(4), 1e-6);
  });

  it("columns (panel − 2 in) ÷ poufs apart on the cloth, one more than poufs, the outer ones 1 in from the edges", () => {
    const marks = shade.form.marks.filter(({ along }) => along === "x").map(({ atMm }) => atMm);
    expect(marks).toHaveLength(poufs + 1);
    marks.forEach((atMm, i) => {
      expectNear(atMm, inches(1) + (i * (panelMm - inches(2))) / poufs, 1e-6, `column ${i + 1}`);
    });
  });

  it("rows 7 to 10 in apart", () => {
    for (const spacing of shade.grid.spacingsMm) {
      expect(spacing).toBeGreaterThanOrEqual(inches(7) - 1e-6);
      expect(spacing).toBeLessThanOrEqual(inches(10) + 1e-6);
    }
  });

  it("with nothing drawn up the hem hangs straight when lowered, and in scallops when raised", () => {
    expect(shade.form.swags.every(({ sagMm }) => sagMm === 0)).toBe(true);
    expect(shade.grid.raisedHeightMm).toBeGreaterThan(shade.grid.headrailMm + inches(4));
  });
});

describe("fullness on the cords", () => {
  const austrian = (lengthFullness: number) =>
    shadeOf({ style: "austrian", making: { gather: { lengthFullness } } });

  it("more cloth weighs more, pulls more and stacks deeper, and hangs no less", () => {
    const [thin, full] = [austrian(1.5), austrian(3)];
    expect(full.mass.totalKg).toBeGreaterThan(thin.mass.totalKg);
    expect(full.lift.heldN).toBeGreaterThan(thin.lift.heldN);
    expect(full.lift.pullN).toBeGreaterThan(thin.lift.pullN);
    const depth = ({ board }: ShadePlan) => board.stackDepthMm;
    expectNear(depth(full), 2 * depth(thin), 1e-6, "twice the cloth, twice the stack");
    expect(full.form.swags[0]?.sagMm).toBe(thin.form.swags[0]?.sagMm);
  });

  it("never more hangs on the cords than the shade weighs", () => {
    for (const style of ["austrian", "gathered-balloon", "festoon"] as const) {
      const { lift, mass } = shadeOf({ style });
      expect(lift.heldN).toBeLessThan(mass.totalKg * 9.80665);
    }
  });

  it("rings that are tied to the lowest are sewn, weighed and bought", () => {
    const { form, grid, mass, cost } = shadeOf({ style: "festoon" });
    const rings = (grid.rows.length + (form.tiedRings ?? 0)) * grid.columns.length;
    expect(form.tiedRings).toBeGreaterThan(0);
    expect(mass.parts.find(({ part }) => part === "rings")?.label).toBe(`${rings} rings`);
    const bought = cost.shopping.find(({ id }) => id.startsWith("ring-"));
    expect(bought?.needText).toContain(String(rings));
  });
});

describe("findings on what does not go with gathers", () => {
  const idsOf = (shade: ShadeInput, job: Partial<JobInput> = {}) =>
    shadeOf(shade, job).findings.map(({ id }) => id);
  const cloth = (rest: Partial<typeof SHEER> & Record<string, unknown>) => ({
    cloths: [{ ...SHEER, id: "own", ...rest }],
  });

  it.each([
    ["shape.gathered-blackout", { blackout: "blackout-lining" }, {}],
    ["shape.gathered-interlining", { interlining: "domett" }, {}],
    ["shape.no-rod", { making: { gather: { weight: "none" as const } } }, {}],
    ["shape.loose-weights", { making: { gather: { weight: "shot-bags" as const } } }, {}],
    ["shape.shirred-heavy", { face: "own" }, cloth({ massGsm: 380 })],
    ["shape.shirred-pile", { face: "own" }, cloth({ nap: true })],
    ["shape.repeat-lost", { face: "own" }, cloth({ repeat: { verticalMm: 300 } })],
    ["shape.ribs-left-out", { making: { ribs: { kind: "strip-pocket" as const } } }, {}],
    ["shape.edge-cords-near-edge", {}, {}],
    ["shape.scallop-too-deep", { making: { gather: { sagMm: 700 } } }, {}],
  ])("%s", (id, shade, job) => {
    expect(idsOf({ style: "austrian", ...shade }, job)).toContain(id);
    expect(idsOf({ style: "austrian", making: { columns: { edgeInsetMm: 60 } } })).not.toContain(id);
  });

  it.each([
    ["shape.gathered-blackout", { blackout: "blackout-lining" }, {}],
    ["shape.no-rod", { making: { gather: { weight: "none" as const } } }, {}],
    ["shape.shirred-heavy", { face: "own" }, cloth({ massGsm: 380 })],
    ["shape.shirred-thin", { face: "own", making: { gather: { lengthFullness: 1.2 } } }, cloth({})],
    ["shape.scallops-too-wide", { making: { columns: { count: 2 } } }, {}],
    ["shape.rows-too-few", { making: { fold: { rows: 2 } } }, {}],
    ["shape.rows-too-many", { making: { fold: { rows: 60 } } }, {}],
    ["shape.headrail-short", { making: { fold: { headrailMm: 5 } } }, {}],
    ["shape.stack-over-limit", { making: { fold: { stackMm: 50 } } }, {}],
    ["shape.edge-cords-near-edge", {}, {}],
  ])("%s is cured by its remedy", (id, shade, more) => {
    const job = jobWith(
      {
        opening: { widthsMm: [WIDTH], heightsMm: [LENGTH] },
        shade: { mount: "to-size", lining: null, style: "austrian", ...shade },
      },
      more,
    );
    const found = plan(job).shades[0]?.findings.find((finding) => finding.id === id);
    const patch = found?.remedies[0]?.patch;
    if (patch === undefined) throw new Error(`no remedy for ${id}`);
    const cured = jobSchema.parse(applyPatch(JSON.parse(JSON.stringify(job)), patch as never));
    expect(plan(cured).shades[0]?.findings.map((finding) => finding.id)).not.toContain(id);
  });
});
