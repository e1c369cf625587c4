import type { Form, Grid, ShadePoint } from "../../shade/index.ts";
import type { FoldState } from "../folding/raised-shape.ts";
import { raisedShape } from "../folding/raised-shape.ts";
import type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "../visible-shape.ts";
import { bayLine } from "./bay-line.ts";
import { baysOf, type DrapedAsk, drapedLine, levelEnds } from "./draped-line.ts";
import { hasTails } from "./ease.ts";

/** Lowest row to the lower edge at a column, shade down, mm: between the columns it may hang lower. */
export function hemBelowRowMm(grid: Grid, form: Form): number {
  const [lowest] = form.stretches;
  if (form.pouf !== undefined && lowest !== undefined) return Math.max(0, lowest.clothMm - form.pouf.clothMm);
  return Math.max(0, grid.bottomSectionMm - Math.max(0, ...form.swags.map(({ sagMm }) => sagMm)));
}

/** A shade that is held at few columns: every line across hangs between them, and beside them as tails. */
export function drapedShape(input: ShapeInput, raise: number): VisibleShape {
  const { size, grid, form, foldDepthMm } = input;
  const folded = raisedShape(grid, form.stretches, raise, foldDepthMm);
  const drape = drapeOf(input, folded.folds);
  const bottomRowYMm = folded.rows[0]?.yMm ?? 0;
  const hem = hemPieces(input, bottomRowYMm, folded.liftMm);
  const top = folded.folds.at(-1)?.upperYMm ?? bottomRowYMm;
  const front = folded.folds.filter(({ state }) => state !== "flat").at(-1);
  const pieces = [...hem, ...folded.folds.map((fold) => foldPiece(input, drape, fold, fold === front))];
  const lowestYMm = Math.max(...pieces.flatMap(({ outline }) => outline.map(([, y]) => y)));
  const width = size.finishedWidthMm;
  const sidesTo = hasTails(form, width) ? top : sideEnd(pieces, width);
  return {
    pieces: [...pieces, { outline: box(width, 0, top), edges: [] }],
    lines: [
      {
        kind: "edge",
        points: [
          [0, sidesTo],
          [0, 0],
          [width, 0],
          [width, sidesTo],
        ],
      },
      ...creases(form, 0, top),
    ],
    section: {
      ...folded,
      hemYMm: bottomRowYMm + hemBelowRowMm(grid, form),
      bottomYMm: Math.max(folded.bottomYMm, lowestYMm),
    },
    lowestYMm,
  };
}

interface Drape {
  /** Each row above the hem on the flat cloth, and where it hangs with the shade down, mm. */
  rows: Map<number, { aboveHemMm: number; yMm: number }>;
  line: (yMm: number, aboveHemMm: number, risenMm: number) => ShadePoint[];
}

function drapeOf({ size, grid, form }: ShapeInput, folds: readonly FoldState[]): Drape {
  const rows = new Map<number, { aboveHemMm: number; yMm: number }>();
  const clothOf = new Map(form.stretches.map(({ row, clothMm }) => [row, clothMm]));
  let aboveHemMm = clothOf.get(0) ?? grid.bottomSectionMm;
  for (const { number, yMm } of grid.rows) {
    rows.set(number, { aboveHemMm, yMm });
    aboveHemMm += clothOf.get(number) ?? folds.find(({ row }) => row === number)?.arcMm ?? 0;
  }
  const rest = { form, columns: grid.columns, widthMm: size.finishedWidthMm };
  return { rows, line: (yMm, above, risenMm) => drapedLine({ ...rest, yMm, aboveHemMm: above, risenMm }) };
}

/** A fold between its upper row and its lower edge; limp cloth hangs by half its slack below the lower row. */
function foldPiece(
  { form }: ShapeInput,
  { rows, line }: Drape,
  fold: FoldState,
  isFront: boolean,
): VisiblePiece {
  const { row, upperYMm, lowerYMm, arcMm, state } = fold;
  const lower = rows.get(row) ?? { aboveHemMm: 0, yMm: lowerYMm };
  const upper = rows.get(row + 1);
  const isFlat = state === "flat";
  const edgeYMm = isFlat ? lowerYMm : (upperYMm + lowerYMm + arcMm) / 2;
  const edge = line(edgeYMm, lower.aboveHemMm + (isFlat ? 0 : arcMm / 2), Math.max(0, lower.yMm - edgeYMm));
  const above =
    upper === undefined
      ? line(upperYMm, lower.aboveHemMm + arcMm, 0)
      : line(upperYMm, upper.aboveHemMm, Math.max(0, upper.yMm - upperYMm));
  const piece = between(above, edge, row);
  return {
    ...piece,
    edges: [
      { kind: isFront ? "edge" : "fold", points: edge, row },
      ...piece.edges,
      ...creases(form, upperYMm, edgeYMm).map((crease) => ({ ...crease, row })),
    ],
  };
}

/** What hangs below the lowest row: the hem section, and in front of it the pouf that stays. */
function hemPieces({ size, grid, form }: ShapeInput, rowYMm: number, liftMm: number): VisiblePiece[] {
  const widthMm = size.finishedWidthMm;
  const hemYMm = rowYMm + hemBelowRowMm(grid, form);
  const ask: DrapedAsk = {
    ...{ form, columns: grid.columns, widthMm },
    ...{ yMm: hemYMm, aboveHemMm: 0, risenMm: liftMm, isHem: true },
  };
  const hem = drapedLine(ask);
  const above = drapedLine({
    ...{ form, columns: grid.columns, widthMm },
    ...{ yMm: rowYMm, aboveHemMm: form.stretches[0]?.clothMm ?? 0, risenMm: liftMm },
  });
  const piece = between(above, hem, 1);
  const section: VisiblePiece = {
    ...piece,
    edges: [
      { kind: "edge", points: hem },
      ...piece.edges,
      ...creases(form, rowYMm, hemYMm).map((crease) => ({ ...crease, row: 1 })),
    ],
  };
  if (form.pouf === undefined || form.pouf.loops < 1) return [section];
  const { clothMm, loops } = form.pouf;
  const cornerMm = clothMm / (2 * loops);
  const bays = baysOf(ask).map((bay) => ({
    ...bay,
    sagMm: Math.max(0, (clothMm + bay.sagMm) / 2 - cornerMm),
  }));
  const edge = levelEnds(bayLine(rowYMm + cornerMm, bays), rowYMm + cornerMm, widthMm);
  return [
    section,
    {
      outline: [[0, rowYMm], [widthMm, rowYMm], ...[...edge].reverse()],
      edges: [
        { kind: "fold", points: edge, row: 1 },
        ...creases(form, rowYMm, rowYMm + cornerMm).map((crease) => ({ ...crease, row: 1 })),
      ],
    },
  ];
}

/** The cloth between two lines: its top level but for the sides, whose edges show where they slant. */
function between(above: readonly ShadePoint[], below: readonly ShadePoint[], row: number): VisiblePiece {
  const ends = [above[0], above.at(-1), below[0], below.at(-1)];
  const [topLeft, topRight, left, right] = ends;
  if (topLeft === undefined || topRight === undefined || left === undefined || right === undefined)
    return { outline: [...above, ...below], edges: [] };
  const level = Math.min(...above.map(([, y]) => y));
  const slants = left[0] > 0 || topLeft[0] > 0 || topLeft[1] > level;
  const inner = above.filter(([, y]) => y <= level);
  const top = [topLeft, ...inner.slice(0, 1), ...inner.slice(-1), topRight];
  const edge = (points: readonly ShadePoint[]): VisibleLine => ({ kind: "edge", points, row });
  return {
    outline: [...top, ...[...below].reverse()],
    edges: slants || below.length > 2 ? [edge([topLeft, left]), edge([topRight, right])] : [],
  };
}

function creases({ pleats }: Form, fromYMm: number, toYMm: number): VisibleLine[] {
  if (toYMm <= fromYMm) return [];
  return pleats
    .flatMap(({ xMm, facesMm }) => facesMm ?? [xMm])
    .map((x) => ({
      kind: "crease",
      points: [
        [x, fromYMm],
        [x, toYMm],
      ],
    }));
}

function sideEnd(pieces: readonly VisiblePiece[], widthMm: number): number {
  const atSides = pieces.flatMap(({ outline }) => outline.filter(([x]) => x <= 0 || x >= widthMm));
  return Math.max(0, ...atSides.map(([, y]) => y));
}

function box(width: number, top: number, bottom: number): ShadePoint[] {
  return [
    [0, top],
    [width, top],
    [width, bottom],
    [0, bottom],
  ];
}
