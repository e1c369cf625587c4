import type { Callout, Drawing, Point, Primitive } from "./model.ts";

const LETTER_PAPER_MM = 4.4;
/** From the thing to its letter, mm on paper. */
const AWAY_PAPER_MM = 10;
/** What takes up more of the drawing than this is pointed at by its end: its middle lies among other things. */
const LONG_SHARE = 0.4;

/** `A`, `B` … by which words beside a drawing name its places: cords, rows and columns have numbers of their own. */
export function placeLetter(index: number): string {
  return String.fromCharCode(65 + (index % 26));
}

/** The drawing with a letter at each of these parts, in their order. A part that the drawing does not show has none. */
export function withLetters(drawing: Drawing, parts: readonly string[], from = 0): Drawing {
  const all = drawing.primitives.flatMap(pointsOf);
  const middle = middleOf(all);
  const letters = parts.flatMap((part, i): Callout[] => {
    // What is drawn first is the thing in the view or section that the words are about.
    const ofPart = drawing.primitives.filter((one) => one.part === part);
    const found = (of: (one: Primitive) => readonly Point[]) =>
      ofPart.map(of).find(({ length }) => length > 0);
    // What is only measured is pointed at where its measure is.
    const points = found(pointsOf) ?? found(endsOf);
    if (points === undefined) return [];
    const isLong = spanOf(points) > LONG_SHARE * spanOf(all);
    const at = isLong ? furthestFrom(middle, points) : nearestTo(middleOf(points), points);
    return [
      {
        kind: "callout",
        role: "label",
        at,
        text: placeLetter(from + i),
        paperMm: LETTER_PAPER_MM,
        offsetPaperMm: outwards(middle, at),
        part: `place-${placeLetter(from + i)}`,
      },
    ];
  });
  // First, so that other words make way for them.
  return { ...drawing, primitives: [...letters, ...drawing.primitives] };
}

function pointsOf(one: Primitive): readonly Point[] {
  switch (one.kind) {
    case "polyline":
      return one.points;
    case "circle":
      return [one.centre];
    case "marker":
      return [one.at];
    default:
      return [];
  }
}

function endsOf(one: Primitive): readonly Point[] {
  return one.kind === "dimension" ? [one.from, one.to] : [];
}

function spanOf(points: readonly Point[]): number {
  const span = (values: number[]) => Math.max(...values) - Math.min(...values);
  return Math.max(span(points.map(([x]) => x)), span(points.map(([, y]) => y)));
}

function middleOf(points: readonly Point[]): Point {
  if (points.length === 0) return [0, 0];
  const mid = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [mid(points.map(([x]) => x)), mid(points.map(([, y]) => y))];
}

const away = (one: Point, other: Point) => Math.hypot(one[0] - other[0], one[1] - other[1]);

/** On the thing itself: the middle of a bent line lies beside it. */
function nearestTo(wished: Point, points: readonly Point[]): Point {
  const halfway = points.map((point, i): Point => {
    const next = points[i + 1] ?? point;
    return [(point[0] + next[0]) / 2, (point[1] + next[1]) / 2];
  });
  return halfway.reduce((best, point) => (away(point, wished) < away(best, wished) ? point : best));
}

function furthestFrom(middle: Point, points: readonly Point[]): Point {
  return points.reduce((best, point) => (away(point, middle) > away(best, middle) ? point : best));
}

function outwards([x, y]: Point, at: Point): Point {
  const [dx, dy] = [at[0] - x, at[1] - y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return [AWAY_PAPER_MM, -AWAY_PAPER_MM / 2];
  return [(AWAY_PAPER_MM * dx) / length, (AWAY_PAPER_MM * dy) / length];
}
