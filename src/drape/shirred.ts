import type { Form } from "../shade-plan/index.ts";
import type { RaisedShape } from "../styles/index.ts";
import type { DrapeInput } from "./drape-input.ts";
import { spreadOut } from "./flat-cloth.ts";
import type { HangingCloth } from "./hanging-cloth.ts";
import { type SectionPoint, sectionPoints } from "./loft.ts";

/** Cloth that is shirred onto tapes along its whole length. */
export function isShirred({ across, stretches }: Form): boolean {
  return (
    across === "gathered" && stretches.some(({ row, clothMm, cordMm }) => row > 0 && clothMm > cordMm + 1)
  );
}

/** Lines in one swag and places across one scallop, and in all of a shade: of many swags each is drawn with fewer. */
const LINES = 8;
const LEAST_LINES = 4;
const ALL_LINES = 200;
const PLACES = 8;
const LEAST_PLACES = 2;
const ALL_PLACES = 120;
/** No more swags than this are drawn down a shade. */
const MOST_SWAGS = 30;
/** Swags lie about this share of their sag apart, but never so close that they are ruffles. */
const PITCH_SHARE = 0.75;
const LEAST_PITCH_MM = 40;
/** Part of a swag that is left at its tapes, where the cloth is drawn up into ruffles. */
const AT_TAPE = 0.22;
/** A swag sinks over itself by this share of how far it stands out. */
const SINKS = 0.55;

/**
 * Swag over swag from the top line to the lowest ring: along each tape the cloth follows it, between the tapes it hangs in
 * catenaries, and what it is longer than the tape stands out in a swag at every step, deepest midway.
 */
export function shirred({ size, grid, form }: DrapeInput, section: RaisedShape): HangingCloth {
  const points = sectionPoints({ ...section, hemYMm: section.rows[0]?.yMm ?? 0 });
  const tapeMm = points.at(-1)?.along ?? 0;
  const sagMm = form.swags[0]?.sagMm ?? 0;
  const swags = Math.max(
    1,
    Math.min(MOST_SWAGS, Math.round(tapeMm / Math.max(LEAST_PITCH_MM, PITCH_SHARE * sagMm))),
  );
  const pitchMm = tapeMm / swags;
  const inSwag = Math.max(LEAST_LINES, Math.min(LINES, Math.floor(ALL_LINES / swags)));
  const [, stretch] = form.stretches;
  const longer = stretch === undefined ? 1 : stretch.clothMm / stretch.cordMm;
  const deepMm = swagDepthMm(pitchMm, longer);
  const columns = placesAcross(
    form,
    grid.columns.map(({ xMm }) => xMm),
    size.finishedWidthMm,
  );
  const lines = swags * inSwag + 1;
  const across = columns.length;
  const placesMm = new Float64Array(3 * across * lines);
  const flatMm = new Float64Array(2 * across * lines);
  const clothMm = new Float64Array(2 * across * lines);
  const onCloth = spreadOut(form, size.finishedWidthMm);
  const strands = new Int32Array(lines);
  for (let j = 0; j < lines; j++) {
    const { out, down, slope, strand } = onSection(points, (j * tapeMm) / (lines - 1));
    const phase = (j % inSwag) / inSwag;
    const bump = Math.sin(Math.PI * phase) ** 2;
    // Under the board the cloth is held straight; it sinks between the tapes from the first swag on, each over the next.
    strands[j] = strand * swags + Math.floor((j - 1) / inSwag + 1e-9);
    columns.forEach(({ x, share, sag }, i) => {
      const stands = deepMm * (AT_TAPE + (1 - AT_TAPE) * share) * bump;
      const at = j * across + i;
      placesMm.set(
        [
          x,
          down + sag * Math.min(1, j / inSwag) + SINKS * stands - slope[0] * stands,
          out + slope[1] * stands,
        ],
        3 * at,
      );
      flatMm.set([x, (j * tapeMm) / (lines - 1)], 2 * at);
      clothMm.set([onCloth(x), (longer * j * tapeMm) / (lines - 1)], 2 * at);
    });
  }
  return { across, along: lines, placesMm, flatMm, clothMm, strands };
}

interface PlaceAcross {
  x: number;
  /** 0 at a tape, 1 midway between two. */
  share: number;
  sag: number;
}

function placesAcross({ swags }: Form, columnsMm: readonly number[], widthMm: number): PlaceAcross[] {
  const places: PlaceAcross[] = [];
  const first = columnsMm[0] ?? 0;
  const inScallop = Math.max(LEAST_PLACES, Math.min(PLACES, Math.floor(ALL_PLACES / swags.length)));
  if (first > 0) places.push({ x: 0, share: 0, sag: 0 });
  swags.forEach(({ fromMm, toMm, sagMm }, s) => {
    for (let k = s === 0 ? 0 : 1; k <= inScallop; k++) {
      const t = k / inScallop;
      places.push({
        x: fromMm + t * (toMm - fromMm),
        share: Math.sin(Math.PI * t),
        sag: 4 * t * (1 - t) * sagMm,
      });
    }
  });
  if ((columnsMm.at(-1) ?? widthMm) < widthMm) places.push({ x: widthMm, share: 0, sag: 0 });
  return places;
}

/** The section at a length of tape from the top line: its place, and the way it runs (out, down). */
function onSection(points: readonly SectionPoint[], along: number) {
  let k = 1;
  while (k + 1 < points.length && (points[k] as SectionPoint).along < along) k++;
  const [a, b] = [points[k - 1] as SectionPoint, points[k] as SectionPoint];
  const length = b.along - a.along || 1;
  const t = Math.min(1, Math.max(0, (along - a.along) / length));
  return {
    out: a.out + t * (b.out - a.out),
    down: a.down + t * (b.down - a.down),
    slope: [(b.out - a.out) / length, (b.down - a.down) / length] as const,
    strand: b.strand,
  };
}

/** How far a swag stands out so that its cloth is so many times its step, mm. */
function swagDepthMm(pitchMm: number, longer: number): number {
  let [from, to] = [0, 2 * pitchMm * Math.max(1, longer)];
  for (let k = 0; k < 30; k++) {
    const middle = (from + to) / 2;
    if (swagLengthMm(pitchMm, middle) < longer * pitchMm) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

function swagLengthMm(pitchMm: number, deepMm: number): number {
  const steps = 32;
  let sum = 0;
  let [x, y] = [0, 0];
  for (let k = 1; k <= steps; k++) {
    const out = deepMm * Math.sin((Math.PI * k) / steps) ** 2;
    const down = (pitchMm * k) / steps + SINKS * out;
    sum += Math.hypot(out - x, down - y);
    [x, y] = [out, down];
  }
  return sum;
}
