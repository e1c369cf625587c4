import { CATALOGUE } from "./catalogue.ts";
import type { Window } from "./job.ts";
import type { LiftKind } from "./making.ts";
import type { Drive, Tube } from "./parts.ts";
import { roughMassKg } from "./rough-mass.ts";

/** How far a drive's limits are kept away from, as shares, our choice: the weight is only a guess as yet. */
const ABOVE_LEAST = 0.12;
const BELOW_MOST = 0.2;

/** Between parts side by side along the board, and to its end, about, mm: our choice. */
const APART_MM = 8;

/**
 * A spring holds between two weights. Where none at hand holds about what this shade will weigh, a wand is proposed in
 * its place, which turns the same tube, hangs no cord and has no least weight; where that is too weak as well, or would
 * hang behind the cloth since the edge columns leave it no room, a motor.
 */
export function liftByWeight(
  kind: LiftKind,
  opening: Pick<Window["opening"], "widthsMm" | "heightsMm">,
  shade: Parameters<typeof roughMassKg>[0] & { tube: Tube; drives: readonly Drive[] },
): LiftKind {
  if (kind !== "spring") return kind;
  const massKg = roughMassKg(shade, Math.min(...opening.widthsMm), Math.min(...opening.heightsMm));
  const insetMm = shade.making.columns.edgeInsetMm;
  const takes = (asked: Drive["kind"]) => {
    const own = shade.drives.filter((drive) => drive.kind === asked);
    const listed = own.length > 0 ? own : CATALOGUE.drives.filter((drive) => drive.kind === asked);
    return listed.some(
      ({ massMinKg, massMaxKg, lengthMm }) =>
        (asked !== "wand" || lengthMm + APART_MM + shade.tube.spoolLengthMm / 2 <= insetMm) &&
        (asked !== "spring" || (massMinKg ?? 0) <= massKg * (1 - ABOVE_LEAST)) &&
        (massMaxKg ?? Number.POSITIVE_INFINITY) >= massKg * (1 + BELOW_MOST),
    );
  };
  if (takes("spring")) return "spring";
  if (takes("wand")) return "tube-wand";
  return takes("motor") ? "motor" : "spring";
}
