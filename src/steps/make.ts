import type { Step } from "../shade-plan/index.ts";
import type { Bench } from "./bench.ts";
import { clothSteps } from "./make-cloth.ts";
import {
  facePocketSteps,
  liningPocketSteps,
  ribSteps,
  stripPocketSteps,
  throughPocketSteps,
} from "./make-pockets.ts";
import { ringSteps } from "./make-rings.ts";
import { sleeveSteps } from "./make-sleeves.ts";
import { topSteps } from "./make-top.ts";

/**
 * From cut pieces to a shade with its rings. Pockets on the lining come before the layers meet;
 * pockets on the face come once the hem gives a line to measure from.
 */
export function makeSteps(bench: Bench): Step[] {
  const { joins, hemsPressed, layers, bottomHem } = clothSteps(bench);
  switch (bench.ribbed ? bench.resolved.making.ribs.kind : "none") {
    case "lining-pocket":
      return order(bench, [joins, hemsPressed, liningPocketSteps(bench), layers, bottomHem]);
    case "strip-pocket":
      return bench.layer("lining") === undefined && bench.resolved.making.ribs.face === "back"
        ? order(bench, [joins, hemsPressed, layers, bottomHem, stripPocketSteps(bench)])
        : order(bench, [joins, hemsPressed, stripPocketSteps(bench), layers, bottomHem]);
    case "face-pocket":
      return order(bench, [joins, hemsPressed, facePocketSteps(bench), layers, bottomHem]);
    case "through-pocket":
      return order(bench, [joins, hemsPressed, layers, bottomHem, throughPocketSteps(bench)]);
    case "bare":
    case "none":
      return order(bench, [joins, hemsPressed, layers, bottomHem]);
  }
}

function order(bench: Bench, parts: Step[][]): Step[] {
  return [
    ...parts.flat(),
    ...ringSteps(bench),
    ...sleeveSteps(bench),
    ...ribSteps(bench),
    ...topSteps(bench),
  ];
}
