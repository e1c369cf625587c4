import type { RaisedShape } from "../styles/index.ts";
import type { DrapeInput } from "./drape-input.ts";
import type { HangingCloth } from "./hanging-cloth.ts";

/** Points that a folded stretch keeps of its outline, and places across at least. */
const POINTS_A_FOLD = 40;
const LEAST_ACROSS = 6;
/** Between places across, mm. */
const ACROSS_STEP_MM = 130;

export interface SectionPoint {
  out: number;
  down: number;
  /** Along the cloth from the top line, mm. */
  along: number;
  strand: number;
}

/** The section through a column drawn out over the whole width; where a bar sags between the columns, its hem with it. */
export function loft({ size, grid, folds, form }: DrapeInput, section: RaisedShape): HangingCloth {
  const points = sectionPoints(section);
  const width = size.finishedWidthMm;
  const xs = placesAcross(
    width,
    grid.columns.map(({ xMm }) => xMm),
  );
  const sagMm = form.bar === undefined ? 0 : (folds?.sag.barMm ?? 0);
  const rowY = section.rows[0]?.yMm ?? 0;
  const across = xs.length;
  const placesMm = new Float64Array(3 * across * points.length);
  const flatMm = new Float64Array(2 * across * points.length);
  points.forEach(({ out, down, along }, j) => {
    // Only the cloth below the lowest row goes with the bar.
    const share = j === points.length - 1 || (along > 0 && down > rowY && isHem(points, j)) ? 1 : 0;
    xs.forEach((x, i) => {
      const at = j * across + i;
      placesMm.set([x, down + share * sagMm * sagShare(x, grid.columns), out], 3 * at);
      flatMm.set([x, along], 2 * at);
    });
  });
  return {
    across,
    along: points.length,
    placesMm,
    flatMm,
    // It hangs as wide as it is.
    clothMm: flatMm.slice(),
    strands: Int32Array.from(points, (p) => p.strand),
  };
}

function isHem(points: readonly SectionPoint[], j: number): boolean {
  return points[j]?.strand === points.at(-1)?.strand;
}

/** From the top line to the hem, each strand of cloth with its place from the front. */
export function sectionPoints({ folds, rows, hemYMm, hemEnd }: RaisedShape): SectionPoint[] {
  const points: SectionPoint[] = [{ out: 0, down: 0, along: 0, strand: 0 }];
  let strand = 0;
  const add = (out: number, down: number) => {
    const last = points.at(-1) as SectionPoint;
    const step = Math.hypot(out - last.out, down - last.down);
    if (step < 1e-6) return;
    points.push({ out, down, along: last.along + step, strand });
  };
  for (const fold of [...folds].reverse()) {
    add(0, fold.upperYMm);
    const first = points.length - 1;
    (points.at(-1) as SectionPoint).strand = strand;
    if (fold.state === "flat") {
      for (const [out, down] of fold.outline) add(out, down);
      toArc(points, first, fold.arcMm);
      continue;
    }
    const { outline } = fold;
    const step = Math.max(1, (outline.length - 1) / POINTS_A_FOLD);
    const deepest = outline.reduce((best, point, i) => (point[1] > (outline[best]?.[1] ?? 0) ? i : best), 0);
    let turned = false;
    for (let k = 1; k <= Math.round((outline.length - 1) / step); k++) {
      const index = Math.min(outline.length - 1, Math.round(k * step));
      const [out, down] = outline[index] as readonly [number, number];
      add(out, down);
      if (!turned && index >= deepest) {
        turned = true;
        strand++;
        (points.at(-1) as SectionPoint).strand = strand;
      }
    }
    strand++;
    (points.at(-1) as SectionPoint).strand = strand;
    toArc(points, first, fold.arcMm);
  }
  if (!folds.some(({ row }) => row === 0)) {
    const [out, down] = hemEnd ?? [0, hemYMm];
    const from = rows[0]?.yMm ?? 0;
    for (const share of [0.5, 1]) add(out * share, from + (down - from) * share);
  }
  return points;
}

/** Chords are a little shorter than their curve: cloth is told by its own length. Tucks are drawn with cloth that is sewn up. */
function toArc(points: SectionPoint[], first: number, arcMm: number): void {
  const from = points[first]?.along ?? 0;
  const share = arcMm / ((points.at(-1)?.along ?? from) - from || 1);
  if (Math.abs(share - 1) > MOST_CHORD_SHARE) return;
  for (let k = first + 1; k < points.length; k++) {
    const point = points[k] as SectionPoint;
    point.along = from + share * (point.along - from);
  }
}

const MOST_CHORD_SHARE = 0.03;

function placesAcross(widthMm: number, columnsMm: readonly number[]): number[] {
  const count = Math.max(LEAST_ACROSS, 2 * (columnsMm.length - 1), Math.ceil(widthMm / ACROSS_STEP_MM));
  const even = Math.min(40, count);
  return Array.from({ length: even + 1 }, (_, i) => (widthMm * i) / even);
}

/** Share of the greatest sag at a place: none at the columns, all of it midway. */
function sagShare(xMm: number, columns: readonly { xMm: number }[]): number {
  for (let i = 0; i + 1 < columns.length; i++) {
    const [from, to] = [columns[i]?.xMm ?? 0, columns[i + 1]?.xMm ?? 0];
    if (xMm < from || xMm > to) continue;
    const share = (xMm - from) / (to - from);
    return (16 / 5) * share * (1 - share) * (1 + share - share * share);
  }
  return 0;
}
