import { type Cite, cite, sourced } from "../sources/index.ts";
import { QUARTER_TURN_RAD } from "./bench-formulas.ts";
import type { Eye } from "./parts.ts";

/** Cord on a steel screw eye, where the eye's friction was not given. */
const EYE_FRICTION = sourced(0.25, "ratio", cite("roping-physics", "0.24 on a 12 mm bar, rounded up"));

/**
 * Friction of cord on this eye, with its source. A pulley that passes on the share v at a quarter turn counts as an
 * eye of the friction that does the same, e^(−μ·π/2) = v. Without an eye, that of a steel one.
 */
export function frictionOf({ friction, pulleyShare }: Pick<Eye, "friction" | "pulleyShare"> = {}): {
  value: number;
  cite: Cite;
} {
  if (pulleyShare !== undefined) {
    return {
      value: -Math.log(pulleyShare) / QUARTER_TURN_RAD,
      cite: cite("maker", "share that the pulley passes on, as friction over a quarter turn"),
    };
  }
  return friction === undefined
    ? EYE_FRICTION
    : { value: friction, cite: cite("maker", "friction of the eye") };
}
