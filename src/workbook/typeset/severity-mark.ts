import type { Paint } from "../../drawing/index.ts";
import type { Severity } from "../../figures/index.ts";
import type { Pen } from "./pen.ts";

/** What each severity means, and a paint for it; the mark's shape says it once more, for black and white. */
export const SEVERITY_MEANINGS: Record<Severity, string> = {
  stop: "Cannot be made, or must not be made so.",
  fix: "Will work badly.",
  note: "Worth knowing.",
  unproven: "Needs a test by hand, or a fact that was not given.",
};

export const SEVERITY_PAINTS: Record<Severity, Paint> = {
  stop: "stop",
  fix: "fix",
  note: "accent",
  unproven: "unproven",
};

/** Width that a mark takes before its word, pt. */
export const MARK_WIDTH = 13;
const R = 4.2;

/** Draws the mark of a severity with its left edge at `x`, centred on `y`. */
export function drawSeverityMark(pen: Pen, severity: Severity, x: number, y: number): void {
  const paint = SEVERITY_PAINTS[severity];
  const cx = x + R;
  const look = { paint, widthPt: 1.2 };
  switch (severity) {
    case "stop":
      pen.polygon(octagon(cx, y, R), paint);
      pen.polyline(
        [
          [cx - 2, y],
          [cx + 2, y],
        ],
        { paint: "paper", widthPt: 1.3 },
      );
      break;
    case "fix":
      pen.polygon(
        [
          [cx, y - R],
          [cx + R + 0.4, y + R - 0.6],
          [cx - R - 0.4, y + R - 0.6],
        ],
        paint,
      );
      break;
    case "note":
      pen.polyline(closed(octagon(cx, y, R - 0.6, 16)), look);
      pen.polyline(
        [
          [cx, y - 1.8],
          [cx, y + 1.8],
        ],
        look,
      );
      break;
    case "unproven":
      pen.polyline(closed(diamond(cx, y, R)), { ...look, dashPt: [1.8, 1.2] });
      break;
  }
}

type Points = [number, number][];

function octagon(cx: number, cy: number, r: number, sides = 8): Points {
  return Array.from({ length: sides }, (_, i) => {
    const angle = (Math.PI / sides) * (2 * i + 1);
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
  });
}

function diamond(cx: number, cy: number, r: number): Points {
  return [
    [cx, cy - r],
    [cx + r, cy],
    [cx, cy + r],
    [cx - r, cy],
  ];
}

function closed(points: Points): Points {
  const first = points[0];
  return first === undefined ? points : [...points, first];
}
