import type { CornerLine, CornerPoint, HemCorner } from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";
import type { ClothShade } from "./cloth-input.ts";
import { hemDepthsMm, isBagged } from "./make-up.ts";

/** Beyond the fold of the mitre so much cloth is left when the corner is cut away. */
const TRIM_MM = inches(0.25);
/** So far into the shade the lines of the corner are drawn. */
const INTO = 1.5;

/**
 * Fold lines of a bottom corner of the face, laid flat, mm from the finished corner: out to the side and down.
 *
 * With turns s at the side and b at the bottom the mitre folds along the line through the finished corner with the
 * direction (s, −b). Reflected in the side crease and in the hem crease, its halves both come to lie on the line from
 * the finished corner to (−s, −b), where the inner edges of the two hems cross: so they meet, whatever the turns.
 */
export function hemCorner(shade: ClothShade): HemCorner {
  const { hems } = shade.making;
  const { sideMm, bottomMm } = hemDepthsMm(shade);
  const bagged = isBagged(shade);
  const s = bagged ? sideMm : hems.sideTurnMm;
  const b = bagged ? bottomMm : hems.bottomTurnMm;
  const mitred = hems.corner === "mitred" && !bagged && s > 0 && b > 0;
  const inMm = INTO * Math.max(sideMm, bottomMm, 1);
  const turns = (each: number, count: number) => Array.from({ length: count }, (_, i) => each * i);
  const lines: CornerLine[] = [
    line("edge", "cut edge, side", [sideMm, -inMm], [sideMm, bottomMm]),
    line("edge", "cut edge, bottom", [-inMm, bottomMm], [sideMm, bottomMm]),
    ...turns(s, bagged ? 1 : hems.sideTurns).map((out, i) =>
      line("crease", i === 0 ? "side edge" : "first turn of the side hem", [out, -inMm], [out, bottomMm]),
    ),
    ...turns(b, bagged ? 1 : hems.bottomTurns).map((down, i) =>
      line("crease", i === 0 ? "hem line" : "first turn of the bottom hem", [-inMm, down], [sideMm, down]),
    ),
  ];
  const corner = { outMm: sideMm, downMm: bottomMm };
  if (!mitred) return { kind: "square", ...corner, lines };
  const mitre = through([0, 0], [s, -b], sideMm, bottomMm);
  const away = TRIM_MM / Math.hypot(s, b);
  const tipMm = (sideMm * b + bottomMm * s) / Math.hypot(s, b);
  const trim = through([b * away, s * away], [s, -b], sideMm, bottomMm);
  return {
    kind: "mitred",
    ...corner,
    lines: [
      ...lines,
      line("mitre", "fold of the corner", ...mitre),
      ...(tipMm > TRIM_MM ? [line("trim", "cut the corner off here", ...trim)] : []),
    ],
    angleDeg: (Math.atan2(b, s) * 180) / Math.PI,
    insideMm: [s, b],
  };
}

function line(kind: CornerLine["kind"], label: string, from: CornerPoint, to: CornerPoint): CornerLine {
  return { kind, label, from, to };
}

/** The line through a point, from the side edge of the cloth to its lower edge. */
function through(
  [x, y]: CornerPoint,
  [dx, dy]: CornerPoint,
  outMm: number,
  downMm: number,
): [CornerPoint, CornerPoint] {
  const toSide = (outMm - x) / dx;
  const toBottom = (downMm - y) / dy;
  return [
    [outMm, y + dy * toSide],
    [x + dx * toBottom, downMm],
  ];
}
