import type { Form, Grid, ShadePoint } from "../../shade-plan/index.ts";
import { headCloth, sidesAndTop } from "../base/visible-lines.ts";
import { limpBottomYMm } from "../folding/limp-fold.ts";
import type { FoldState, RaisedShape } from "../folding/raised-shape.ts";
import { raisedShape } from "../folding/raised-shape.ts";
import type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "../visible-shape.ts";
import { bayLine } from "./bay-line.ts";
import { baysOf, type DrapedAsk, drapedLine, levelEnds } from "./draped-line.ts";
import { hasTails } from "./ease.ts";
import { middleSection, poufFolds } from "./middle-section.ts";

const SAME_MM = 1e-6;

/** Lowest row to the lower edge at a column, shade down, mm: between the columns it may hang lower. */
export function hemBelowRowMm(grid: Grid, form: Form): number {
  const [lowest] = form.stretches;
  if (form.pouf !== undefined && lowest !== undefined) return Math.max(0, lowest.clothMm - form.pouf.clothMm);
  return Math.max(0, grid.bottomSectionMm - Math.max(0, ...form.swags.map(({ sagMm }) => sagMm)));
}

/** A shade that is held at few columns: every line across hangs between them, and beside them as tails. */
export function drapedShape(input: ShapeInput, raise: number): VisibleShape {
  const { size, grid, form } = input;
  const { folded, drape, pieces, lowestYMm } = drapedPieces(input, raise);
  const bottomRowYMm = folded.rows[0]?.yMm ?? 0;
  const top = folded.folds.at(-1)?.upperYMm ?? bottomRowYMm;
  const width = size.finishedWidthMm;
  const sidesTo = hasTails(form, width) ? top : sideEnd(pieces, width);
  return {
    pieces: [...outlineLowest(pieces, lowestYMm), headCloth(width, top)],
    lines: [sidesAndTop(width, sidesTo), ...creases(input, 0, top)],
    section: {
      ...folded,
      folds: [...poufFolds(form, bottomRowYMm), ...folded.folds],
      hemYMm: bottomRowYMm + hemBelowRowMm(grid, form),
      bottomYMm: Math.max(folded.bottomYMm, lowestYMm),
    },
    lowestYMm,
    ...swagSection(input, drape, folded),
  };
}

/** The cloth below the flat head of such a shade, piece by piece, and how low it reaches. */
export function drapedPieces(input: ShapeInput, raise: number) {
  const folded = raisedShape(input.grid, input.form.stretches, raise, input.foldDepthMm);
  const drape = drapeOf(input);
  const front = folded.folds.filter(({ state }) => state !== "flat").at(-1);
  const pieces = [
    ...hemPieces(input, folded.rows[0]?.yMm ?? 0, folded.liftMm),
    ...folded.folds.map((fold) => foldPiece(input, drape, fold, fold === front)),
  ];
  return { folded, drape, pieces, lowestYMm: lowestOf(pieces) };
}

interface Drape {
  /** Each row above the hem on the flat cloth, and where it hangs with the shade down, mm. */
  rows: Map<number, { aboveHemMm: number; yMm: number }>;
  line: (yMm: number, aboveHemMm: number, risenMm: number) => ShadePoint[];
  /** Lowest point of such a line between the columns, mm below the top line. */
  middle: (yMm: number, aboveHemMm: number, risenMm: number, isHem?: boolean) => number;
  tailed: boolean;
}

function drapeOf({ size, grid, form }: ShapeInput): Drape {
  const rows = new Map<number, { aboveHemMm: number; yMm: number }>();
  const clothOf = new Map(form.stretches.map(({ row, clothMm }) => [row, clothMm]));
  let aboveHemMm = clothOf.get(0) ?? grid.bottomSectionMm;
  for (const { number, yMm } of grid.rows) {
    rows.set(number, { aboveHemMm, yMm });
    aboveHemMm += clothOf.get(number) ?? 0;
  }
  const rest = { form, columns: grid.columns, widthMm: size.finishedWidthMm };
  const tailed = hasTails(form, size.finishedWidthMm);
  return {
    rows,
    tailed,
    line: (yMm, above, risenMm) => drapedLine({ ...rest, yMm, aboveHemMm: above, risenMm }),
    middle: (yMm, above, risenMm, isHem = false) =>
      yMm +
      Math.max(0, ...baysOf({ ...rest, yMm, aboveHemMm: above, risenMm, isHem }).map((bay) => bay.sagMm)),
  };
}

/** The section midway between two columns, where anything hangs lower there. */
function swagSection(
  { grid, form }: ShapeInput,
  { rows, middle }: Drape,
  folded: RaisedShape,
): Pick<VisibleShape, "swagSection"> {
  const rowYMm = folded.rows[0]?.yMm ?? 0;
  const hemAtColumnMm = rowYMm + hemBelowRowMm(grid, form);
  const hemYMm = middle(hemAtColumnMm, 0, folded.liftMm, true);
  const folds = folded.folds.map(({ row, upperYMm, lowerYMm, arcMm }) => {
    const lower = rows.get(row) ?? { aboveHemMm: 0, yMm: lowerYMm };
    const upper = rows.get(row + 1) ?? { aboveHemMm: lower.aboveHemMm + arcMm, yMm: upperYMm };
    return {
      upperYMm: middle(upperYMm, upper.aboveHemMm, Math.max(0, upper.yMm - upperYMm)),
      lowerYMm: middle(lowerYMm, lower.aboveHemMm, Math.max(0, lower.yMm - lowerYMm)),
    };
  });
  const droops =
    hemYMm > hemAtColumnMm + 1 ||
    folds.some(({ lowerYMm }, i) => lowerYMm > (folded.folds[i]?.lowerYMm ?? 0) + 1);
  return droops ? { swagSection: middleSection(folded, form, rowYMm, { folds, hemYMm }) } : {};
}

/** A fold between its upper row and its lower edge; limp cloth hangs by half its slack below the lower row. */
function foldPiece(
  input: ShapeInput,
  { rows, line, tailed }: Drape,
  fold: FoldState,
  isFront: boolean,
): VisiblePiece {
  const { row, upperYMm, lowerYMm, arcMm, state } = fold;
  const lower = rows.get(row) ?? { aboveHemMm: 0, yMm: lowerYMm };
  const upper = rows.get(row + 1);
  const isFlat = state === "flat";
  const edgeYMm = isFlat ? lowerYMm : limpBottomYMm(fold);
  const edge = line(edgeYMm, lower.aboveHemMm + (isFlat ? 0 : arcMm / 2), Math.max(0, lower.yMm - edgeYMm));
  const above =
    upper === undefined
      ? line(upperYMm, lower.aboveHemMm + arcMm, 0)
      : line(upperYMm, upper.aboveHemMm, Math.max(0, upper.yMm - upperYMm));
  const piece = between(above, edge, row, tailed);
  return {
    ...piece,
    edges: [
      { kind: isFront ? "edge" : "fold", points: edge, row },
      ...piece.edges,
      ...creases(input, upperYMm, edgeYMm).map((crease) => ({ ...crease, row })),
    ],
  };
}

/** What hangs below the lowest row: the hem section, and in front of it the pouf that stays. */
function hemPieces(input: ShapeInput, rowYMm: number, liftMm: number): VisiblePiece[] {
  const { size, grid, form } = input;
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
  const piece = between(above, hem, 1, hasTails(form, widthMm));
  const section: VisiblePiece = {
    ...piece,
    edges: [
      { kind: "edge", points: hem },
      ...piece.edges,
      ...creases(input, rowYMm, hemYMm).map((crease) => ({ ...crease, row: 1 })),
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
        ...creases(input, rowYMm, rowYMm + cornerMm).map((crease) => ({ ...crease, row: 1 })),
      ],
    },
  ];
}

/** The cloth between two lines: its top level but for the sides, whose edges show where they slant as tails. */
function between(
  above: readonly ShadePoint[],
  below: readonly ShadePoint[],
  row: number,
  isTailed: boolean,
): VisiblePiece {
  const [topLeft, topRight, left, right] = [above[0], above.at(-1), below[0], below.at(-1)];
  if (topLeft === undefined || topRight === undefined || left === undefined || right === undefined)
    return { outline: [...above, ...below], edges: [] };
  const level = Math.min(...above.map(([, y]) => y));
  const inner = above.filter(([, y]) => y <= level);
  const edge = (points: readonly ShadePoint[]): VisibleLine => ({ kind: "edge", points, row });
  return {
    outline: [topLeft, ...inner.slice(0, 1), ...inner.slice(-1), topRight, ...[...below].reverse()],
    edges: isTailed ? [edge([topLeft, left]), edge([topRight, right])] : [],
  };
}

/** What reaches lowest ends the shade against the window, whichever piece it is. */
function outlineLowest(pieces: readonly VisiblePiece[], lowestYMm: number): VisiblePiece[] {
  return pieces.map(({ outline, edges }) => ({
    outline,
    edges: edges.map((edge) =>
      edge.kind === "fold" && edge.points.some(([, y]) => y > lowestYMm - SAME_MM)
        ? { ...edge, kind: "edge" as const }
        : edge,
    ),
  }));
}

function creases({ form, size }: ShapeInput, fromYMm: number, toYMm: number): VisibleLine[] {
  if (toYMm <= fromYMm) return [];
  return form.pleats
    .flatMap(({ xMm, facesMm }) => facesMm ?? [xMm])
    .filter((x) => x > 0 && x < size.finishedWidthMm)
    .map((x) => ({
      kind: "crease",
      points: [
        [x, fromYMm],
        [x, toYMm],
      ],
    }));
}

function lowestOf(pieces: readonly VisiblePiece[]): number {
  let lowest = 0;
  for (const { outline } of pieces) for (const [, y] of outline) lowest = Math.max(lowest, y);
  return lowest;
}

function sideEnd(pieces: readonly VisiblePiece[], widthMm: number): number {
  let lowest = 0;
  for (const { outline } of pieces)
    for (const [x, y] of outline) if (x <= 0 || x >= widthMm) lowest = Math.max(lowest, y);
  return lowest;
}
