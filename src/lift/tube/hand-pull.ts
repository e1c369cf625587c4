import { type Figure, figureRuleOf } from "../../figures/index.ts";
import type { Drive } from "../../job/index.ts";
import { type Cite, cite, sourced } from "../../sources/index.ts";
import { MM_PER_M } from "../../units/index.ts";
import type { Torques } from "./torque.ts";

/** Share of the work at wheel or crank that reaches the cords, where the drive's maker states none. */
const DRIVE_EFFICIENCY = sourced(
  0.8,
  "ratio",
  cite("from-memory", "drive and bearings of the tube together, 0.7 to 0.9"),
);

/** What the hand turns: a wheel or a crank. */
interface Hand {
  label: string;
  radiusLabel: string;
  /** As the maker of the drive states it; ours where that is not known. */
  efficiencyCite: Cite;
}

const HAND_PULL = figureRuleOf<Hand>()({
  id: "lift.pull",
  label: ({ label }) => label,
  symbol: "F",
  unit: "N",
  formula: "1000·max(m, M) / (η·i·r)",
  inputs: {
    m: ["Nm", "torque on the tube, lowered", "figure:lift.torque-lowered"],
    M: ["Nm", "torque on the tube, raised", "figure:lift.torque-raised"],
    η: ["ratio", "share of the work that is passed on", "lift/drive"],
    i: ["ratio", "turns of the hand for one of the tube", "lift/drive"],
    r: ["mm", ({ radiusLabel }) => radiusLabel, "lift/drive"],
  },
  cite: ({ efficiencyCite }) => efficiencyCite,
  compute: ({ m, M, η, i, r }) => handPullN({ loweredNm: m, raisedNm: M }, { efficiency: η, ratio: i }, r),
});

/** Pull of the hand on a wheel or crank of this radius, N: torque over efficiency, ratio and radius. */
export function handPull(
  { loweredNm, raisedNm }: Torques,
  { ratio, efficiency }: Pick<Drive, "ratio" | "efficiency">,
  { label, radiusMm, radiusLabel }: { label: string; radiusMm: number; radiusLabel: string },
): Figure {
  const passedOn: { value: number; cite: Cite } =
    efficiency === undefined ? DRIVE_EFFICIENCY : { value: efficiency, cite: cite("maker", "of the drive") };
  return HAND_PULL.figure(
    { m: loweredNm, M: raisedNm, η: passedOn.value, i: ratio, r: radiusMm },
    { label, radiusLabel, efficiencyCite: passedOn.cite },
  );
}

/** The same as a bare number, N. */
export function handPullN(
  { loweredNm, raisedNm }: Pick<Torques, "loweredNm" | "raisedNm">,
  { ratio, efficiency = DRIVE_EFFICIENCY.value }: Pick<Drive, "ratio" | "efficiency">,
  radiusMm: number,
): number {
  return (MM_PER_M * Math.max(loweredNm, raisedNm)) / (efficiency * ratio * radiusMm);
}

/** What a hand pulls at any torque, by what it pulls where that is greatest; the drive holds by itself. */
export function pullWithTorque(
  pullN: number,
  { loweredNm, raisedNm }: Torques,
): (torqueNm: number) => { pullN: number; holdN: number } {
  const worstNm = Math.max(loweredNm, raisedNm);
  return (torqueNm) => ({ pullN: worstNm > 0 ? (pullN * torqueNm) / worstNm : 0, holdN: 0 });
}
