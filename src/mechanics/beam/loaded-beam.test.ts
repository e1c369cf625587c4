import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { continuousBeam } from "../continuous-beam.ts";
import { type LoadedBeam, solveBeam } from "./loaded-beam.ts";
import { bendingStressNPerMm2, massKgPerM, rectangle, roundTube } from "./section.ts";

const BOARD = rectangle(38, 19);
const STIFF = 8500 * BOARD.inertiaMm4;
const beam = (part: Partial<LoadedBeam>): LoadedBeam => ({
  supportsMm: [0, 1000],
  fromMm: 0,
  toMm: 1000,
  spread: [],
  points: [],
  stiffnessNmm2: STIFF,
  ...part,
});
const even = (loadNPerMm: number, toMm: number, fromMm = 0) => [{ fromMm, toMm, loadNPerMm }];
const published = new Map(casesOf("beam").map(([, one]) => [one.id, one]));
const figure = (id: string, name: string) => given(published.get(id)?.outputs ?? {}, name);

describe("AWC Design Aid 6 (2007), board 38 × 19 mm flat, E 8500 MPa, 1 m", () => {
  test("fig. 1: 5wL⁴/384EI", () => {
    const { largestDeflection, deflectionMm } = solveBeam(beam({ spread: even(0.01, 1000) }));
    expectNear(deflectionMm(500), 0.705272, 5e-7);
    expectNear(largestDeflection.atMm, 500, 1e-6);
  });

  test("fig. 7: point load in the middle", () => {
    const { largestDeflection, largestMoment } = solveBeam(beam({ points: [{ atMm: 500, loadN: 20 }] }));
    expectNear(largestDeflection.value, figure("beam_ss_center", "delta_mm"), 1e-6);
    expectNear(largestMoment.value, 1000 * figure("beam_ss_center", "M"), 1e-9);
  });

  test("fig. 8: point load anywhere", () => {
    const found = solveBeam(beam({ points: [{ atMm: 300, loadN: 20 }] }));
    expectNear(found.deflectionMm(300), figure("beam_ss_any", "delta_at_load_mm"), 1e-6);
    expectNear(found.largestDeflection.value, figure("beam_ss_any", "delta_max_mm"), 1e-6);
    const far = figure("beam_ss_any", "x_of_max_from_far_end_of_long_segment");
    expectNear(found.largestDeflection.atMm, 1000 * (1 - far), 1e-4);
    expectNear(found.largestMoment.value, 1000 * figure("beam_ss_any", "M"), 1e-9);
    expectNear(found.reactionsN[0] ?? Number.NaN, figure("beam_ss_any", "R_near"), 1e-9);
    expectNear(found.reactionsN[1] ?? Number.NaN, figure("beam_ss_any", "R_far"), 1e-9);
  });

  test("fig. 20: point load on an overhanging end", () => {
    const found = solveBeam(beam({ toMm: 1200, points: [{ atMm: 1200, loadN: 20 }] }));
    expectNear(found.largestDeflection.value, figure("beam_overhang_P_end", "tip_mm"), 1e-6);
    expectNear(
      found.deflectionMm(1000 / Math.sqrt(3)),
      -figure("beam_overhang_P_end", "uplift_mid_mm"),
      1e-6,
    );
    expectNear(found.reactionsN[0] ?? Number.NaN, figure("beam_overhang_P_end", "R1"), 1e-9);
    expectNear(found.reactionsN[1] ?? Number.NaN, figure("beam_overhang_P_end", "R2"), 1e-9);
  });

  test("fig. 18: overhanging and loaded all along, the tip lifts", () => {
    const found = solveBeam(beam({ toMm: 1200, spread: even(0.01, 1200) }));
    expectNear(found.deflectionMm(1200), figure("beam_overhang_udl_full", "tip_mm"), 1e-6);
    expectNear(found.largestMoment.value, 1000 * figure("beam_overhang_udl_full", "M1"), 1e-6);
    expectNear(-found.momentNmm(1000), 1000 * figure("beam_overhang_udl_full", "M2"), 1e-6);
    expectNear(found.reactionsN[0] ?? Number.NaN, figure("beam_overhang_udl_full", "R1"), 1e-9);
  });

  test("fig. 19: loaded on the overhang alone", () => {
    const found = solveBeam(beam({ toMm: 1200, spread: even(0.01, 1200, 1000) }));
    expectNear(found.deflectionMm(1200), figure("beam_overhang_udl_on_overhang", "tip_mm"), 1e-6);
    const uplift = -figure("beam_overhang_udl_on_overhang", "uplift_mid_mm");
    expectNear(found.deflectionMm(1000 / Math.sqrt(3)), uplift, 1e-6);
  });

  test("fig. 29: two spans, wL⁴/184.634EI at 0.421535 L", () => {
    const two = beam({ supportsMm: [0, 1000, 2000], toMm: 2000, spread: even(0.01, 2000) });
    const { largestDeflection, momentNmm } = solveBeam(two);
    expectNear(largestDeflection.value, 0.293364, 5e-7);
    expectNear(Math.min(largestDeflection.atMm, 2000 - largestDeflection.atMm), 421.535, 1e-3);
    expectNear(momentNmm(1000), -1250, 1e-6);
  });
});

const bays = fc.array(fc.double({ min: 100, max: 900, noNaN: true }), { minLength: 1, maxLength: 6 });
const load = fc.double({ min: 0.001, max: 1, noNaN: true });

function supportsOf(first: number, spans: number[]): number[] {
  const places = [first];
  for (const span of spans) places.push((places.at(-1) ?? first) + span);
  return places;
}

describe("far from both ends of a long row of equal bays", () => {
  // By symmetry the beam is level over each support, as if it were built in: AWC Design Aid 6, fig. 23: qL²/12, qL²/24, qL⁴/384EI.
  const supportsMm = Array.from({ length: 61 }, (_, i) => 500 * i);
  const found = solveBeam(beam({ supportsMm, toMm: 30_000, spread: even(0.02, 30_000) }));

  test.each([25, 30, 35])("bay %i bends as between two walls", (bay) => {
    expectNear(found.momentNmm(500 * bay), (-0.02 * 500 ** 2) / 12, 1e-3);
    expectNear(found.momentNmm(500 * bay + 250), (0.02 * 500 ** 2) / 24, 1e-3);
    expectNear(found.deflectionMm(500 * bay + 250), (0.02 * 500 ** 4) / (384 * STIFF), 1e-8);
    expectNear(found.reactionsN[bay] ?? Number.NaN, 0.02 * 500, 1e-5);
  });
});

describe("any beam", () => {
  test("reactions and moments are those of the three-moment equation", () => {
    fc.assert(
      fc.property(bays, load, load, load, (spans, left, right, q) => {
        const supportsMm = supportsOf(200 * left, spans);
        const toMm = (supportsMm.at(-1) ?? 0) + 200 * right;
        const other = continuousBeam({ supportsMm, fromMm: 0, toMm, loadNPerMm: q });
        const found = solveBeam(beam({ supportsMm, toMm, spread: even(q, toMm) }));
        const scale = q * toMm;
        other.reactionsN.forEach((r, i) => {
          expectNear(found.reactionsN[i] ?? Number.NaN, r, 1e-7 * scale);
          expectNear(
            found.momentNmm(supportsMm[i] ?? 0),
            other.momentsNmm[i] ?? Number.NaN,
            1e-7 * scale * toMm,
          );
        });
      }),
    );
  });

  test("Maxwell: what A sags by a load at B, B sags by the same load at A", () => {
    const place = fc.double({ min: 0, max: 2000, noNaN: true });
    fc.assert(
      fc.property(place, place, (a, b) => {
        const at = (atMm: number) =>
          solveBeam(beam({ supportsMm: [150, 900, 1700], toMm: 2000, points: [{ atMm, loadN: 50 }] }));
        expectNear(at(a).deflectionMm(b), at(b).deflectionMm(a), 1e-7);
      }),
    );
  });

  test("a stiffer bar never sags more, a further bracket never helps a middle", () => {
    fc.assert(
      fc.property(bays, load, fc.double({ min: 1, max: 10, noNaN: true }), (spans, q, more) => {
        const supportsMm = supportsOf(0, spans);
        const toMm = supportsMm.at(-1) ?? 0;
        const plain = beam({ supportsMm, toMm, spread: even(q, toMm) });
        const sag = (one: LoadedBeam) => Math.abs(solveBeam(one).largestDeflection.value);
        expect(sag({ ...plain, stiffnessNmm2: STIFF * more })).toBeLessThanOrEqual(sag(plain) * (1 + 1e-9));
        const wider = supportsMm.map((x) => x * more);
        expect(
          sag({ ...plain, supportsMm: wider, toMm: toMm * more, spread: even(q, toMm * more) }),
        ).toBeGreaterThanOrEqual(sag(plain) * (1 - 1e-9));
      }),
    );
  });

  test("its largest deflection and moment are there, and nowhere between is either larger", () => {
    const place = fc.double({ min: 0, max: 2000, noNaN: true });
    const points = fc.array(fc.record({ atMm: place, loadN: fc.double({ min: 0, max: 50, noNaN: true }) }), {
      maxLength: 4,
    });
    fc.assert(
      fc.property(points, load, place, (some, q, end) => {
        const found = solveBeam(
          beam({ supportsMm: [150, 900, 1700], toMm: 2000, points: some, spread: even(q, end) }),
        );
        const { largestDeflection, largestMoment } = found;
        expect(found.deflectionMm(largestDeflection.atMm)).toBe(largestDeflection.value);
        expect(found.momentNmm(largestMoment.atMm)).toBe(largestMoment.value);
        for (let x = 0; x <= 2000; x += 7.3) {
          const near = 1 + 1e-9;
          expect(Math.abs(found.deflectionMm(x))).toBeLessThanOrEqual(
            Math.abs(largestDeflection.value) * near + 1e-9,
          );
          expect(Math.abs(found.momentNmm(x))).toBeLessThanOrEqual(
            Math.abs(largestMoment.value) * near + 1e-6,
          );
        }
      }),
    );
  });

  test.each([[[500]], [[500, 400]], [[-1, 500]], [[0, 1001]]])("supports %j are refused", (supportsMm) => {
    expect(() => solveBeam(beam({ supportsMm }))).toThrow("invalid supportsMm");
  });
});

describe("sections", () => {
  test("second moment by summing strips (definition ∫y² dA)", () => {
    const strips = 2000;
    const sumOf = (widthAt: (y: number) => number, height: number) => {
      let sum = 0;
      for (let i = 0; i < strips; i++) {
        const y = ((i + 0.5) / strips - 0.5) * height;
        sum += widthAt(y) * y * y * (height / strips);
      }
      return sum;
    };
    expectNear(
      BOARD.inertiaMm4,
      sumOf(() => 38, 19),
      1e-6 * BOARD.inertiaMm4,
    );
    const chord = (d: number) => (y: number) => Math.sqrt(Math.max(0, d * d - 4 * y * y));
    const tube = sumOf(chord(20), 20) - sumOf(chord(16), 16);
    expectNear(roundTube(20, 16).inertiaMm4, tube, 1e-4 * tube);
  });

  test("stress of 1152 N·mm in the board: M/W = 6M/bh²", () => {
    expectNear(bendingStressNPerMm2(-1152, BOARD), (6 * 1152) / (38 * 19 * 19), 1e-12);
  });

  test.each(casesOf("bar_mass"))("%s", (_name, { inputs, outputs }) => {
    const section = rectangle(given(inputs, "w_mm"), given(inputs, "t_mm"));
    expectNear(massKgPerM(section, given(inputs, "rho")), given(outputs, "kg_per_m"), 1e-12);
  });
});
