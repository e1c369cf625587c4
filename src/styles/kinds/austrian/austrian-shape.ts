import type { ShadePoint } from "../../../shade-plan/index.ts";
import { sidesAndTop, tapes } from "../../base/visible-lines.ts";
import { foldOutline } from "../../folding/fold-outline.ts";
import { limpBottomYMm } from "../../folding/limp-fold.ts";
import { type RaisedShape, raisedShape } from "../../folding/raised-shape.ts";
import { frillLines } from "../../gathering/frill-lines.ts";
import { edgeDropMm, scallopedLines } from "../../gathering/scalloped-line.ts";
import type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "../../visible-shape.ts";

/** More swags than this in one stretch, or in all, only darken the picture. */
const MOST_SWAGS = 6;
const MOST_SWAGS_IN_ALL = 900;
/** Visible swags lie about this share of their sag apart. */
const SWAG_PITCH_SHARE = 0.75;
/** How far a swag stands out from the tapes, as a share of its sag. */
const SWAG_OUT_SHARE = 0.35;
const MOST_RUFFLES = 900;
const SAME_MM = 1e-6;

/** Swag over swag on every row, shirred along the tapes; raised, the lowest rows gather and their swags lie together. */
export function austrianShape(input: ShapeInput, raise: number): VisibleShape {
  const { size, grid, form, foldDepthMm } = input;
  const width = size.finishedWidthMm;
  const sagMm = form.swags[0]?.sagMm ?? 0;
  // The cloth is sewn to its tape: at a tape only the tape folds.
  const tape = form.stretches.map((stretch) => ({ ...stretch, clothMm: stretch.cordMm }));
  const shape = raisedShape(grid, tape, raise, foldDepthMm);
  const bottomRowY = shape.rows[0]?.yMm ?? 0;
  const section: RaisedShape = { ...shape, hemYMm: bottomRowY };
  const across = scallopedLines(width, form.swags, ({ sagMm: sag }) => sag);
  const piece = (top: number, bottom: number, edges: VisibleLine[]): VisiblePiece => ({
    outline: [...across(top, 0), ...across(Math.max(top, bottom)).reverse()],
    edges,
  });
  const moving = section.folds.filter(({ state }) => state !== "flat");
  const hanging = section.folds.filter(({ state, row }) => state === "flat" && row > 1);
  const pitch = swagPitch(input);
  const flatTo = moving.at(-1)?.upperYMm ?? bottomRowY;
  const drapes = (from: number, to: number) =>
    swagLines(from, to, pitch).map((y): VisibleLine => ({ kind: "gather", points: across(y) }));
  const lowestY = Math.max(bottomRowY, ...moving.map((fold) => limpBottomYMm(fold)));
  const edgeY = lowestY + edgeDropMm(form.swags[0]?.fromMm ?? 0, form.swags[0], ({ sagMm: sag }) => sag);
  return {
    pieces: [
      piece(bottomRowY, bottomRowY, [{ kind: "edge", points: across(bottomRowY) }]),
      ...moving.map((fold) => {
        const bottom = limpBottomYMm(fold);
        return piece(fold.upperYMm, bottom, [
          ...drapes(fold.upperYMm, bottom),
          {
            kind: bottom > lowestY - SAME_MM ? "edge" : "fold",
            points: across(bottom),
            row: fold.row,
          },
        ]);
      }),
      piece(0, flatTo, [
        ...drapes(0, flatTo),
        ...hanging.map(({ row, lowerYMm }): VisibleLine => ({ kind: "fold", points: across(lowerYMm), row })),
        ...(moving.length > 0
          ? [{ kind: "fold" as const, points: across(flatTo) }]
          : [{ kind: "edge" as const, points: across(bottomRowY) }]),
      ]),
    ],
    lines: [
      ...ruffles(input, lowestY, pitch),
      ...(lowestY > bottomRowY ? [] : frillLines(bottomRowY, form.frill, across)),
      ...tapes(grid.columns, bottomRowY),
      sidesAndTop(width, edgeY),
    ],
    section,
    lowestYMm: lowestY + sagMm,
    swagSection: swagSection(input, section),
  };
}

/** How far apart the drapes lie that are seen between two rows, mm. */
function swagPitch({ grid, form }: ShapeInput): number {
  const sagMm = form.swags[0]?.sagMm ?? 0;
  const spacingMm = grid.spacingsMm[0] ?? grid.topSectionMm;
  const count = sagMm > 0 ? Math.round(spacingMm / (SWAG_PITCH_SHARE * sagMm)) : 1;
  const inAll = Math.floor(MOST_SWAGS_IN_ALL / (grid.rows.length * Math.max(1, form.swags.length)));
  return spacingMm / Math.max(1, Math.min(MOST_SWAGS, inAll, count));
}

/** Heights of the drapes between two rows, neither end among them. */
function swagLines(topMm: number, bottomMm: number, pitchMm: number): number[] {
  const count = Math.ceil((bottomMm - topMm) / pitchMm - 1e-6) - 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => topMm + (i + 1) * pitchMm);
}

/** Short ruffles along each tape, where the cloth is drawn up: evenly, alike on both sides. */
function ruffles({ grid, form, size }: ShapeInput, bottomMm: number, pitchMm: number): VisibleLine[] {
  const { columns } = grid;
  const [first] = form.swags;
  if (first === undefined) return [];
  const count = Math.floor(bottomMm / pitchMm);
  if (columns.length * count > MOST_RUFFLES) return [];
  const reachMm = 0.14 * (first.toMm - first.fromMm);
  const dropMm = 0.22 * pitchMm;
  return columns.flatMap(({ xMm: x }) =>
    Array.from({ length: count }, (_, i): VisibleLine => {
      const y = (i + 0.5) * pitchMm;
      const left = Math.max(0, x - reachMm);
      const right = Math.min(size.finishedWidthMm, x + reachMm);
      return {
        kind: "gather",
        seenFrom: "front",
        points: [
          [left, y + dropMm],
          [x, y],
          [right, y + dropMm],
        ],
      };
    }),
  );
}

/**
 * Midway between two tapes: every stretch hangs as a drape whose lowest point is that of its swag; the more cloth
 * there is, the farther the next one comes up behind it.
 */
function swagSection({ form }: ShapeInput, section: RaisedShape): ShadePoint[] {
  const sagMm = form.swags[0]?.sagMm ?? 0;
  const [, lowest] = form.stretches;
  const topY = section.folds.at(-1)?.upperYMm ?? 0;
  const slackMm = lowest === undefined ? 0 : (lowest.clothMm - lowest.cordMm) / 2;
  const behindMm = Math.min(topY, slackMm - sagMm);
  const points: ShadePoint[] = [
    [0, 0],
    [0, topY - behindMm],
  ];
  for (const fold of [...section.folds].reverse()) {
    const fromY = fold.upperYMm - behindMm;
    const arcMm = fold.arcMm + 2 * Math.max(0, behindMm + sagMm);
    const outerMm = SWAG_OUT_SHARE * sagMm + fold.outMm / 2;
    const reach = { outerMm, innerMm: 0.3 * outerMm };
    for (const [out, down] of foldOutline(arcMm, fold.lowerYMm - fold.upperYMm, reach))
      points.push([out, fromY + down]);
  }
  return points;
}
