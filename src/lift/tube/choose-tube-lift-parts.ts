import type { WorkingBook } from "../../figures/index.ts";
import { barMassGPerM, CATALOGUE, type Drive, type ResolvedShade } from "../../job/index.ts";
import type { Column, Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { massText } from "../../units/index.ts";
import { hasRoom } from "../gaps.ts";
import { driveGaps } from "./seat-drive.ts";
import { spoolOf } from "./spool-size.ts";
import { DRIVE_OF, type SpoolSize, type TubeKind, type TubeLiftParts } from "./tube-input.ts";
import { tubeLine } from "./tube-line.ts";

/** Kept between the flanges and the board. */
const UNDER_BOARD = sourced(2, "mm", cite("our-choice", "so that the spools turn free of the board"));
/** Hems and turnings over the finished area. */
const HEMS = sourced(1.1, "ratio", cite("geometry", "area × 1.1 for hems, and the bar"));

/** Tube and drive: the maker's where they suit, else the first drive of the kind that takes the shade and finds a place. */
export function chooseTubeLiftParts(
  resolved: ResolvedShade,
  kind: TubeKind,
  size: Size,
  columns: readonly Column[],
  book: WorkingBook,
): TubeLiftParts {
  const { tube } = resolved;
  const spool = spoolOf(tube);
  const massKg = massGuess(resolved, size, book);
  const isAsked = resolved.drive !== undefined && resolved.drive.kind !== DRIVE_OF[kind];
  const own = isAsked ? undefined : resolved.drive;
  const listed = resolved.drives.filter((drive) => drive.kind === DRIVE_OF[kind]);
  const drives =
    listed.length > 0 ? listed : CATALOGUE.drives.filter((drive) => drive.kind === DRIVE_OF[kind]);
  const refused: TubeLiftParts["refused"] = [];
  let chosen = own;
  for (const drive of drives) {
    if (chosen !== undefined) break;
    const reason = objection(resolved, kind, size, columns, spool, drive, massKg);
    if (reason === undefined) chosen = drive;
    else refused.push({ drive, reason });
  }
  const drive = chosen ?? nearest(drives, massKg);
  const axisMm = axis(drive, spool, book);
  return {
    kind,
    tube,
    spool,
    drive,
    ...(isAsked ? { asked: resolved.drive } : {}),
    refused: refused.filter((one) => one.drive !== drive),
    axisMm,
    heightMm: height(drive, spool, axisMm, book),
    label: "height of tube and drive",
  };
}

/** The cloth is not cut yet when the drive is chosen; what it weighs in the end is held against the drive's limits again. */
function massGuess(resolved: ResolvedShade, size: Size, book: WorkingBook): number {
  const { bar, cloths } = resolved;
  const { face, interlining, blackout, lining } = cloths;
  const gsm = [face, interlining, blackout, lining].reduce((sum, cloth) => sum + (cloth?.massGsm ?? 0), 0);
  const barMm = Math.max(0, size.finishedWidthMm - resolved.making.board.barShorterMm);
  return book.figure("lift.mass-guess", {
    label: "Weight, about, for choosing the drive",
    symbol: "M",
    unit: "kg",
    formula: "a·W·L·q / 10^9 + b·l / 10^6",
    given: {
      a: [HEMS.value, "ratio", "hems and turnings"],
      W: [size.finishedWidthMm, "mm", "finished width"],
      L: [size.finishedLengthMm, "mm", "finished length"],
      q: [gsm, "g/m2", "all layers"],
      b: [barMassGPerM(bar), "g/m", "weight bar"],
      l: [barMm, "mm", "length of the bar"],
    },
    cite: HEMS.cite,
    note: "the cloth’s own figures come later",
    compute: ({ a, W, L, q, b, l }) => (a * W * L * q) / 1e9 + (b * l) / 1e6,
  });
}

/** Why a drive does not do, as the end of “It …”. */
function objection(
  resolved: ResolvedShade,
  kind: TubeKind,
  size: Size,
  columns: readonly Column[],
  spool: SpoolSize,
  drive: Drive,
  massKg: number,
): string | undefined {
  const text = (kg: number) => massText(kg, resolved.units);
  if (drive.massMaxKg !== undefined && massKg > drive.massMaxKg) {
    return `takes at most ${text(drive.massMaxKg)}; this shade weighs about ${text(massKg)}`;
  }
  if (kind === "spring" && drive.massMinKg !== undefined && massKg < drive.massMinKg) {
    return `is made for ${text(drive.massMinKg)} and more; this shade weighs about ${text(massKg)}`;
  }
  const line = tubeLine(resolved, size, columns, { spoolMm: spool.lengthMm, driveMm: drive.lengthMm });
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

function axis(drive: Drive, spool: SpoolSize, book: WorkingBook): number {
  return book.figure("rig.tube-axis", {
    label: "Axis of the tube below the board",
    symbol: "x",
    unit: "mm",
    formula: "max(h / 2, f / 2 + a)",
    given: {
      h: [drive.heightMm, "mm", "height of the drive, the tube in its middle"],
      f: [spool.flangeMm, "mm", "flanges of the spools"],
      a: [UNDER_BOARD.value, "mm", "kept free under the board"],
    },
    cite: UNDER_BOARD.cite,
    compute: ({ h, f, a }) => Math.max(h / 2, f / 2 + a),
  });
}

function height(drive: Drive, spool: SpoolSize, axisMm: number, book: WorkingBook): number {
  return book.figure("rig.tube-height", {
    label: "Height of tube and drive below the board",
    symbol: "h",
    unit: "mm",
    formula: "x + max(k, f) / 2",
    given: {
      x: [axisMm, "mm", "axis of the tube below the board"],
      k: [drive.heightMm, "mm", "height of the drive"],
      f: [spool.flangeMm, "mm", "flanges of the spools"],
    },
    cite: cite("geometry"),
    compute: ({ x, k, f }) => x + Math.max(k, f) / 2,
  });
}
