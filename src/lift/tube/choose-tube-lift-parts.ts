import { type Figure, figureRule, type Worked } from "../../figures/index.ts";
import {
  barMassGPerM,
  CATALOGUE,
  type Drive,
  hasBar,
  LIFT_TRAITS,
  layersGsm,
  ROUGH_HEMS,
  roughFullness,
} from "../../job/index.ts";
import type { Column, Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { massTextsApart } from "../../units/index.ts";
import { hasRoom } from "../gaps.ts";
import type { LiftPartsInput, LiftPartsShade } from "../lift-parts-input.ts";
import { driveGaps } from "./seat-drive.ts";
import { spoolOf } from "./spool-size.ts";
import { DRIVE_OF, type SpoolSize, type TubeKind, type TubeLiftParts } from "./tube-lift-parts.ts";
import { tubeLine } from "./tube-line.ts";

/** Kept between the flanges and the board. */
const UNDER_BOARD = sourced(2, "mm", cite("our-choice", "so that the spools turn free of the board"));

const MASS_GUESS = figureRule({
  id: "lift.mass-guess",
  label: "Weight, about, for choosing the drive",
  symbol: "M",
  unit: "kg",
  formula: "a·n·W·L·q / 10^9 + b·l / 10^6",
  inputs: {
    a: ["ratio", "for hems, turnings, rings and cords"],
    n: [
      "ratio",
      "cloth on the finished area, by the style",
      "shade/style",
      "shade/face",
      "hobble/fullness",
      "tuck/depthMm",
      "tuck/spacingMm",
      "gather/lengthFullness",
      "gather/widthFullness",
      "gather/scallopExtraMm",
      "gather/hemExtraMm",
      "pleat/foldedMm",
      "pleat/poufMm",
      "columns/largestSpacingMm",
      "figure:measure.finished-width",
      "figure:measure.finished-length",
    ],
    W: ["mm", "finished width", "figure:measure.finished-width"],
    L: ["mm", "finished length", "figure:measure.finished-length"],
    q: ["g/m2", "all layers", "shade/face", "shade/interlining", "shade/blackout", "shade/lining"],
    b: ["g/m", "weight bar", "board/bar"],
    l: [
      "mm",
      "length of the bar",
      "board/barShorterMm",
      "relax/weight",
      "pleat/bar",
      "gather/weight",
      "figure:measure.finished-width",
    ],
  },
  cite: ROUGH_HEMS.cite,
  note: "the cloth’s own figures come later",
  compute: ({ a, n, W, L, q, b, l }) => (a * n * W * L * q) / 1e9 + (b * l) / 1e6,
});

const AXIS = figureRule({
  id: "rig.tube-axis",
  label: "Axis of the tube below the board",
  symbol: "x",
  unit: "mm",
  formula: "max(h / 2, f / 2 + a)",
  inputs: {
    h: [
      "mm",
      "height of the drive, the tube in its middle",
      "lift/drive",
      "lift/kind",
      "figure:lift.mass-guess",
    ],
    f: ["mm", "flanges of the spools", "lift/tube"],
    a: ["mm", "kept free under the board"],
  },
  cite: UNDER_BOARD.cite,
  compute: ({ h, f, a }) => Math.max(h / 2, f / 2 + a),
});

const HEIGHT = figureRule({
  id: "rig.tube-height",
  label: "Height of tube and drive below the board",
  symbol: "h",
  unit: "mm",
  formula: "x + max(k, f) / 2",
  inputs: {
    x: ["mm", "axis of the tube below the board", "figure:rig.tube-axis"],
    k: ["mm", "height of the drive", "lift/drive"],
    f: ["mm", "flanges of the spools", "lift/tube"],
  },
  cite: cite("geometry"),
  compute: ({ x, k, f }) => x + Math.max(k, f) / 2,
});

/**
 * Tube and drive: the maker's where they suit, else the first drive of the kind that takes the shade and finds a place.
 *
 * @throws where the catalogue has no drive of the kind: a bug
 */
export function chooseTubeLiftParts(
  { shade, size, columns }: LiftPartsInput,
  kind: TubeKind,
): Worked<TubeLiftParts> {
  const { tube } = shade;
  const spool = spoolOf(tube);
  const mass = massGuess(shade, size);
  const isAsked = shade.drive !== undefined && shade.drive.kind !== DRIVE_OF[kind];
  const own = isAsked ? undefined : shade.drive;
  const listed = shade.drives.filter((drive) => drive.kind === DRIVE_OF[kind]);
  const drives =
    listed.length > 0 ? listed : CATALOGUE.drives.filter((drive) => drive.kind === DRIVE_OF[kind]);
  const refused: TubeLiftParts["refused"] = [];
  let chosen = own;
  for (const drive of drives) {
    if (chosen !== undefined) break;
    const reason = objection(shade, kind, size, columns, spool, drive, mass.value);
    if (reason === undefined) chosen = drive;
    else refused.push({ drive, reason });
  }
  const drive = chosen ?? nearest(drives, mass.value);
  const axis = AXIS.figure({ h: drive.heightMm, f: spool.flangeMm, a: UNDER_BOARD.value });
  const height = HEIGHT.figure({ x: axis.value, k: drive.heightMm, f: spool.flangeMm });
  const values: TubeLiftParts = {
    takeUp: "tube",
    kind,
    tube,
    spool,
    drive,
    ...(isAsked ? { asked: shade.drive } : {}),
    refused: refused.filter((one) => one.drive !== drive),
    axisMm: axis.value,
    heightMm: height.value,
    label: "height of tube and drive",
  };
  return { values, workings: [mass, axis, height] };
}

/** The cloth is not cut yet when the drive is chosen; what it weighs in the end is held against the drive's limits again. */
function massGuess(shade: LiftPartsShade, { finishedWidthMm, finishedLengthMm }: Size): Figure {
  const { bar, cloths, making } = shade;
  return MASS_GUESS.figure({
    a: ROUGH_HEMS.value,
    n: roughFullness(shade, finishedWidthMm, finishedLengthMm),
    W: finishedWidthMm,
    L: finishedLengthMm,
    q: layersGsm(cloths),
    b: barMassGPerM(bar),
    l: hasBar(shade) ? Math.max(0, finishedWidthMm - making.board.barShorterMm) : 0,
  });
}

/** Why a drive does not do, as the end of “It …”. */
function objection(
  shade: LiftPartsShade,
  kind: TubeKind,
  size: Size,
  columns: readonly Column[],
  spool: SpoolSize,
  drive: Drive,
  massKg: number,
): string | undefined {
  if (drive.massMaxKg !== undefined && massKg > drive.massMaxKg) {
    const [limit, weight] = massTextsApart(drive.massMaxKg, massKg, shade.units, "most");
    return `takes at most ${limit}; this shade weighs about ${weight}`;
  }
  if (LIFT_TRAITS[kind].poweredBy === "spring" && drive.massMinKg !== undefined && massKg < drive.massMinKg) {
    const [limit, weight] = massTextsApart(drive.massMinKg, massKg, shade.units, "least");
    return `is made for ${limit} and more; this shade weighs about ${weight}`;
  }
  const line = tubeLine(shade, size, columns, { spoolMm: spool.lengthMm, driveMm: drive.lengthMm });
  return driveGaps(line, kind).some(hasRoom) ? undefined : "finds no place beside the spools";
}

/** The one that misses the weight by least. */
function nearest(drives: readonly Drive[], massKg: number): Drive {
  const missedBy = ({ massMaxKg = massKg, massMinKg = 0 }: Drive) =>
    Math.max(0, massKg - massMaxKg, massMinKg - massKg);
  const best = drives.reduce<Drive | undefined>(
    (a, b) => (a === undefined || missedBy(b) < missedBy(a) ? b : a),
    undefined,
  );
  if (best === undefined) throw new Error("invalid catalogue: no drive of this kind");
  return best;
}
