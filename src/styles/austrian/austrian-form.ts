import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { ClothMark, Form, Grid, Size, Stretch } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { plainStretches } from "../flat/flat-form.ts";
import {
  columnMarks,
  flatColumnsMm,
  frillOf,
  rodOf,
  swagsOf,
  tapeOf,
  weightOf,
} from "../gathering/gathered-form.ts";
import type { Scallop } from "../gathering/scallop.ts";

/** A face lighter than this is a sheer, g/m². */
export const SHEER_GSM = 100;

/** Cloth on the length: as the maker wants it, else three times for a sheer and twice for any other. */
export function lengthFullness({ making, cloths }: ResolvedShade): number {
  return making.gather.lengthFullness ?? (cloths.face.massGsm < SHEER_GSM ? 3 : 2);
}

/** How the Austrian shade shapes its cloth: shirred onto tapes along its whole length, a little wider in each scallop. */
export function austrianForm(
  resolved: ResolvedShade,
  size: Size,
  grid: Grid,
  scallop: Scallop,
  book: WorkingBook,
): Form {
  const { columns } = grid;
  const { drawInMm } = resolved.making.gather;
  const scallops = columns.length - 1;
  const clothMm = writeLength(resolved, size, book);
  const widthMm = writeWidth(size, scallop, scallops, drawInMm, book);
  const tapeMm = book.figure("shape.tape", {
    label: "Tape, shirred: top line to its lower end",
    symbol: "t",
    unit: "mm",
    formula: "L − D",
    given: {
      L: [size.finishedLengthMm, "mm", "finished length, to the lowest point"],
      D: [grid.bottomSectionMm, "mm", "a scallop hangs by"],
    },
    cite: cite("austrian-2008", "the bottom loop hangs about 3 in below the corner of its scallop"),
    compute: ({ L, D }) => L - D,
  });
  const bar = rodOf(resolved, size, grid.bottomSectionMm);
  const flat = flatColumnsMm(columns, widthMm, drawInMm);
  const stretches = shirred(grid, clothMm, tapeMm);
  return {
    stretches,
    allowances: [
      {
        label: `${scallops} scallop${scallops === 1 ? "" : "s"}`,
        widthMm: scallops * (scallop.arcMm - scallop.spanMm),
        lengthMm: 0,
      },
      ...(drawInMm > 0 ? [{ label: "sides that draw in", widthMm: drawInMm, lengthMm: 0 }] : []),
      { label: "shirring", widthMm: 0, lengthMm: size.finishedLengthMm * (lengthFullness(resolved) - 1) },
    ],
    across: "gathered",
    pleats: [],
    swags: swagsOf(columns, scallop.arcMm, scallop.sagMm),
    ...bar,
    ribs: { rows: [], face: "back" },
    marks: [...columnMarks(flat, "tape"), ...rowMarks(grid, stretches)],
    joinsAtMm: flat.slice(1, -1),
    ...(resolved.making.gather.frillMm > 0 ? { frillMm: resolved.making.gather.frillMm } : {}),
    haberdashery: [
      tapeOf("shirring-tape", "Shirring tape, sewn flat and drawn up", columns.length, clothMm),
      ...weightOf(resolved, bar, columns.length),
      ...frillOf(resolved, widthMm),
    ],
  };
}

function writeLength(resolved: ResolvedShade, size: Size, book: WorkingBook): number {
  return book.figure("shape.flat-length", {
    label: "Cloth along the length, before shirring",
    symbol: "S",
    unit: "mm",
    formula: "L·f",
    given: {
      L: [size.finishedLengthMm, "mm", "finished length"],
      f: [lengthFullness(resolved), "ratio", "cloth on tape"],
    },
    cite: cite("austrian-2008", "3 times for a sheer, twice for an opaque cloth"),
    compute: ({ L, f }) => L * f,
  });
}

function writeWidth(
  size: Size,
  { arcMm, spanMm }: Scallop,
  scallops: number,
  drawInMm: number,
  book: WorkingBook,
): number {
  return book.figure("shape.gathered-width", {
    label: "Cloth across, hemmed",
    symbol: "P",
    unit: "mm",
    formula: "W + x·n + i",
    given: {
      W: [size.finishedWidthMm, "mm", "finished width"],
      x: [arcMm - spanMm, "mm", "cloth of a scallop beyond its width"],
      n: [scallops, "count", "scallops"],
      i: [drawInMm, "mm", "for sides that draw in"],
    },
    cite: cite("austrian-2008", "width + 3 to 4 in for each scallop, before hems"),
    compute: ({ W, x, n, i }) => W + x * n + i,
  });
}

/** Below the lowest ring hangs the loop of the scallop; what is left is shirred evenly onto the tape. */
function shirred(grid: Grid, clothMm: number, tapeMm: number): Stretch[] {
  const loopMm = grid.bottomSectionMm;
  const onTape = Math.max(1, tapeMm > 0 ? (clothMm - loopMm) / tapeMm : 1);
  return plainStretches(grid).map((one) => (one.row === 0 ? one : { ...one, clothMm: one.cordMm * onTape }));
}

/** Where each row of rings lies on the flat cloth: matched with its place on the tape, the gathers spread evenly. */
function rowMarks(grid: Grid, stretches: readonly Stretch[]): ClothMark[] {
  let atMm = 0;
  return grid.rows.map(({ number }, i) => {
    atMm += stretches[i]?.clothMm ?? 0;
    return { kind: "row", along: "y", atMm, label: `row ${number}` };
  });
}
