import { threeMoments } from "./three-moments.ts";

/** A straight beam of one section on rigid supports at one level, loaded evenly from end to end. */
export interface ContinuousBeam {
  /** Supports from left to right, mm, no two at one place. */
  supportsMm: readonly number[];
  /** Ends of the beam, mm; they may overhang the outer supports. */
  fromMm: number;
  toMm: number;
  loadNPerMm: number;
}

export interface BeamReactions {
  /** Upward reaction of each support, N. */
  reactionsN: number[];
  /** Bending moment over each support, N·mm, sagging positive. */
  momentsNmm: number[];
}

/**
 * Support reactions by the three-moment equation (Clapeyron) for unequal bays:
 * l₁M₀ + 2(l₁ + l₂)M₁ + l₂M₂ = −q(l₁³ + l₂³)/4, with −qa²/2 over the outer supports where the beam overhangs by a.
 * Exact for small deflections without shear.
 *
 * @throws where supports lie past an end or are out of order
 */
export function continuousBeam(beam: ContinuousBeam): BeamReactions {
  const { supportsMm, fromMm, toMm, loadNPerMm: q } = beam;
  const spans = spansOf(beam);
  if (spans.length === 0) return { reactionsN: [q * (toMm - fromMm)], momentsNmm: [0] };
  const overhangs: [number, number] = [at(supportsMm, 0) - fromMm, toMm - at(supportsMm, spans.length)];
  const [left, right] = overhangs;
  const moments = threeMoments(
    spans,
    [(-q * left ** 2) / 2, (-q * right ** 2) / 2],
    (i) => (-q * (at(spans, i - 1) ** 3 + at(spans, i) ** 3)) / 4,
  );
  return { reactionsN: reactions(spans, overhangs, moments, q), momentsNmm: moments };
}

function spansOf({ supportsMm, fromMm, toMm }: ContinuousBeam): number[] {
  const spans: number[] = [];
  for (let i = 1; i < supportsMm.length; i++) spans.push(at(supportsMm, i) - at(supportsMm, i - 1));
  const inside = at(supportsMm, 0) >= fromMm && at(supportsMm, supportsMm.length - 1) <= toMm;
  if (!inside || spans.some((span) => !(span > 0))) {
    throw new Error(`invalid supportsMm: ${supportsMm.join(", ")} on a beam from ${fromMm} to ${toMm}`);
  }
  return spans;
}

function reactions(spans: number[], [left, right]: [number, number], moments: number[], q: number): number[] {
  return moments.map((moment, i) => {
    const before = spans[i - 1];
    const after = spans[i];
    const fromBefore =
      before === undefined ? q * left : (q * before) / 2 + (at(moments, i - 1) - moment) / before;
    const fromAfter =
      after === undefined ? q * right : (q * after) / 2 + (at(moments, i + 1) - moment) / after;
    return fromBefore + fromAfter;
  });
}

function at(list: readonly number[], index: number): number {
  const value = list[index];
  if (value === undefined) throw new Error(`invalid supportsMm: no support ${index}`);
  return value;
}
