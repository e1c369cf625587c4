import type { ShadePlan } from "../../plan/index.ts";
import { flatSize } from "../../shade-plan/index.ts";
import type { Point } from "../model.ts";
import { bandShape } from "./bands.ts";

/**
 * What was sewn onto a face and shows there, in its colour or so much darker than the cloth, mm on the cloth. Points count
 * down from the top line, or up from the hem with a negative `y` where they are `hem`: where the two meet follows from the
 * cloth as it hangs.
 */
export interface SewnMark {
  colour: string | { darker: number };
  points: { x: number; y: number; from: "top" | "hem" }[];
}

/** Where the points of a mark lie on a cloth so long, mm. */
export function markOn({ points }: SewnMark, lengthMm: number): Point[] {
  return points.map(({ x, y, from }): Point => [x, from === "hem" ? lengthMm + y : y]);
}

/** A seam, and a hem’s upper edge, as wide as the eye sees it, mm; each by how much darker. */
const SEAM = { wideMm: 2.4, darker: 0.62 };
const HEM = { wideMm: 2, darker: 0.86 };
/** The edge of a pleat, where the cloth turns away behind it. */
const PLEAT = { wideMm: 3, darker: 0.66 };
const BAND_EDGE = { wideMm: 1.6, darker: 0.7 };
/** Ruffles of a frill: so far apart on the cloth, so wide at its seam, mm. */
const RUFFLE = { apartMm: 34, wideMm: 7, darker: 0.74 };
/** Past the edges of the cloth, so that it is covered up to them, mm. */
const PAST_MM = 60;

type Sewn = Pick<ShadePlan, "size" | "form" | "cloth">;

/** Joins of the face’s widths, edges of pleats, bands of another cloth, a frill and the hem, as they lie on the cloth. */
export function sewnMarks(shade: Sewn): SewnMark[] {
  const { size, form, cloth } = shade;
  const flat = flatSize(size, form, "face");
  const leftMm = (size.finishedWidthMm - flat.widthMm) / 2;
  const face = cloth.layers.find(({ layer }) => layer === "face");
  // Pleats and gathers swallow joins.
  const joins = form.across === "flat" ? (face?.seamsMm ?? []) : [];
  const seams = joins.map((x) => upright(leftMm + x, SEAM));
  return [
    ...seams,
    ...hemOf(shade, flat),
    ...bandsOf(shade, flat),
    ...pleatsOf(form, leftMm),
    ...frillOf(shade, flat),
  ];
}

type Flat = ReturnType<typeof flatSize>;

/**
 * Bands are sewn onto the face before it is pleated or gathered: as far from its edges, on its cloth, as they are to be seen
 * from those of the shade.
 */
function bandsOf({ size, cloth: { bands } }: Sewn, { widthMm }: Flat): SewnMark[] {
  // What the style adds to the length lies above the bands at the hem.
  const middleMm = size.finishedLengthMm / 2;
  const besideMm = (widthMm - size.finishedWidthMm) / 2;
  const outwards = (x: number) => (x < size.finishedWidthMm / 2 ? x - besideMm : x + besideMm);
  return bands.flatMap((band): SewnMark[] => {
    const points = bandShape(band, bands).map(([x, y]) =>
      y > middleMm ? atHem(outwards(x), y - size.finishedLengthMm) : atTop(outwards(x), y),
    );
    const edges = points.map((from, k) => edge(from, points[(k + 1) % points.length] as MarkPoint));
    return [{ colour: band.colour, points }, ...edges];
  });
}

/** Both edges of each pleat, on the cloth that is seen beside it; those of a box stand before that. */
function pleatsOf({ pleats }: Pick<Sewn["form"], "pleats">, leftMm: number): SewnMark[] {
  const out = PLEAT.wideMm / 2;
  return pleats.flatMap(({ xMm, flatMm: [left, , right], facesMm = [xMm, xMm] }) => [
    upright(leftMm + left - (xMm - facesMm[0]) - out, PLEAT),
    upright(leftMm + right + (facesMm[1] - xMm) + out, PLEAT),
  ]);
}

/** The upper edge of the bottom hem, where it is level and no band covers it. */
function hemOf({ form, cloth: { corner, bands } }: Sewn, { widthMm }: Flat): SewnMark[] {
  if (form.across !== "flat" || form.panel !== undefined || form.frill !== undefined) return [];
  if (bands.some(({ part }) => part === "bottom" || part === "bottom-band")) return [];
  const depths = corner.lines
    .filter(({ from, to }) => from[1] === to[1] && from[1] > 0)
    .map(({ from }) => from[1]);
  if (depths.length === 0) return [];
  return [level(-PAST_MM, widthMm + PAST_MM, -Math.min(...depths), HEM)];
}

/** The seam of a frill along the hem, and its ruffles by turns to the edge and half way. */
function frillOf({ size, form: { frill } }: Sewn, { widthMm }: Flat): SewnMark[] {
  if (frill === undefined || frill.edges === "sides") return [];
  const { depthMm } = frill;
  const leftMm = (size.finishedWidthMm - widthMm) / 2;
  const count = Math.max(1, Math.round(widthMm / RUFFLE.apartMm));
  const ruffles = Array.from({ length: count }, (_, k): SewnMark => {
    const x = leftMm + ((k + 0.5) * widthMm) / count;
    const reach = k % 2 === 0 ? 1 : 0.5;
    return {
      colour: { darker: RUFFLE.darker },
      points: [
        atHem(x - RUFFLE.wideMm / 2, -depthMm),
        atHem(x + RUFFLE.wideMm / 2, -depthMm),
        atHem(x, (reach - 1) * depthMm),
      ],
    };
  });
  return [...ruffles, level(leftMm - PAST_MM, leftMm + widthMm + PAST_MM, -depthMm, SEAM)];
}

type MarkPoint = SewnMark["points"][number];

function atTop(x: number, y: number): MarkPoint {
  return { x, y, from: "top" };
}

function atHem(x: number, y: number): MarkPoint {
  return { x, y, from: "hem" };
}

function upright(x: number, { wideMm, darker }: typeof SEAM): SewnMark {
  const half = wideMm / 2;
  return {
    colour: { darker },
    points: [
      atTop(x - half, -PAST_MM),
      atTop(x + half, -PAST_MM),
      atHem(x + half, PAST_MM),
      atHem(x - half, PAST_MM),
    ],
  };
}

function level(fromX: number, toX: number, y: number, { wideMm, darker }: typeof SEAM): SewnMark {
  const half = wideMm / 2;
  return {
    colour: { darker },
    points: [atHem(fromX, y - half), atHem(toX, y - half), atHem(toX, y + half), atHem(fromX, y + half)],
  };
}

/** An edge of a band: as wide across as along, so that it is seen whichever way it runs. */
function edge(from: MarkPoint, to: MarkPoint): SewnMark {
  const half = BAND_EDGE.wideMm / 2;
  const isLevel = from.from === to.from && Math.abs(from.y - to.y) <= Math.abs(from.x - to.x);
  const [dx, dy] = isLevel ? [0, half] : [half, 0];
  const moved = (one: MarkPoint, by: 1 | -1) => ({ ...one, x: one.x + by * dx, y: one.y + by * dy });
  return {
    colour: { darker: BAND_EDGE.darker },
    points: [moved(from, 1), moved(to, 1), moved(to, -1), moved(from, -1)],
  };
}
