import type { ShadePoint, Swag } from "../../shade-plan/index.ts";
import { scallopOfArc } from "../base/scallop.ts";
import { sidesAndTop } from "../base/visible-lines.ts";
import { foldOutline, type LoopReach } from "../folding/fold-outline.ts";
import { limpBottomYMm } from "../folding/limp-fold.ts";
import { type RaisedShape, raisedShape } from "../folding/raised-shape.ts";
import type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "../visible-shape.ts";
import { frillLines } from "./frill-lines.ts";
import { edgeDropMm, type ScallopedLine, scallopedLines } from "./scalloped-line.ts";

/** Folds of the gathered head that are drawn for each scallop, and how far they run down, as shares of the flat cloth. */
const RUFFLES = 9;
const RUFFLE_SHARES = [0.62, 0.1, 0.3, 0.07, 0.46, 0.14];
const MOST_RUFFLES = 700;
/** Folds that are drawn within a pouf, as shares of its sag. */
const POUF_LINES = [0.42, 0.72];
const SAME_MM = 1e-6;
/** Creases that fan out from a ring into its pouf. */
const FAN = [-0.34, -0.2, -0.08, 0.08, 0.2, 0.34];
/** A pouf stands out by about this share of its scallop’s width. */
const POUF_OUT_SHARE = 0.3;

/** Gathered at the head; the hem in scallops, as deep as the cloth drawn up at the columns lets them hang. */
export function gatheredHemShape(input: ShapeInput, raise: number): VisibleShape {
  const { size, grid, form, foldDepthMm } = input;
  const width = size.finishedWidthMm;
  const plain = form.stretches.map((stretch) => ({ ...stretch, clothMm: stretch.cordMm }));
  const shape = raisedShape(grid, plain, raise, foldDepthMm);
  const lowered = form.swags[0]?.sagMm ?? 0;
  const hemRowMm = grid.bottomSectionMm - lowered;
  const bottomRowY = shape.rows[0]?.yMm ?? 0;
  const cornersY = bottomRowY + hemRowMm;
  const section: RaisedShape = { ...shape, hemYMm: cornersY };
  const sagOf = sagNow(form.swags, shape.liftMm);
  const sagMm = form.swags[0] === undefined ? 0 : sagOf(form.swags[0]);
  const across = scallopedLines(width, form.swags, sagOf);
  const piece = (top: number, bottom: number, edges: VisibleLine[], share = 1): VisiblePiece => ({
    outline: [...across(top, 0), ...across(Math.max(top, bottom), share).reverse()],
    edges,
  });
  const moving = section.folds.filter(({ state }) => state !== "flat");
  const front = moving.at(-1);
  const lowestCornersY = Math.max(cornersY, ...moving.map((fold) => limpBottomYMm(fold)));
  const lowestYMm = Math.min(size.finishedLengthMm, lowestCornersY + sagMm);
  const edgeY = lowestCornersY + edgeDropMm(form.swags[0]?.fromMm ?? 0, form.swags[0], sagOf);
  const flatFrom = front?.upperYMm ?? bottomRowY;
  return {
    pieces: [
      piece(bottomRowY, cornersY, [
        { kind: "edge", points: across(cornersY) },
        ...(form.frill === undefined ? poufLines(cornersY, across) : []),
        ...fans(input, bottomRowY, sagMm),
      ]),
      ...moving.map((fold) => {
        const bottom = limpBottomYMm(fold);
        return piece(fold.upperYMm, bottom, [
          {
            kind: bottom > lowestCornersY - SAME_MM ? "edge" : "fold",
            points: across(bottom),
            row: fold.row,
          },
          ...(fold === front ? [...poufLines(bottom, across), ...fans(input, fold.lowerYMm, sagMm)] : []),
        ]);
      }),
      piece(0, flatFrom, [], 0),
    ],
    lines: [
      ...ruffles(input, flatFrom),
      ...(moving.length === 0 ? frillLines(cornersY, form.frill, across) : []),
      sidesAndTop(width, edgeY),
    ],
    section,
    lowestYMm,
    swagSection: poufSection(input, section, sagMm, lowestYMm),
  };
}

/** As far as the cloth drawn up so far lets it hang, and no deeper than the cloth across does. */
function sagNow(swags: readonly Swag[], liftMm: number): (swag: Swag) => number {
  const full = new Map(swags.map((swag) => [swag, scallopOfArc(swag.toMm - swag.fromMm, swag.arcMm).sagMm]));
  return (swag) => Math.min(full.get(swag) ?? 0, swag.sagMm + liftMm);
}

/** Folds within each pouf, shallower the higher they lie. */
function poufLines(cornersYMm: number, across: ScallopedLine): VisibleLine[] {
  return POUF_LINES.map(
    (share): VisibleLine => ({
      kind: "gather",
      seenFrom: "front",
      points: across(cornersYMm, share),
    }),
  );
}

/** Creases from each ring into the pouf on either side of it. */
function fans({ grid, form }: ShapeInput, ringYMm: number, sagMm: number): VisibleLine[] {
  const first = form.swags[0];
  if (first === undefined || sagMm <= 0) return [];
  const spanMm = first.toMm - first.fromMm;
  const last = form.swags.at(-1)?.toMm ?? 0;
  return grid.columns.flatMap(({ xMm: x }) =>
    FAN.filter((share) => x + share * spanMm >= first.fromMm && x + share * spanMm <= last).map(
      (share): VisibleLine => ({
        kind: "gather",
        seenFrom: "front",
        points: [
          [x + 0.12 * share * spanMm, ringYMm],
          [x + 0.55 * share * spanMm, ringYMm + 0.25 * sagMm * Math.abs(share) * 2],
          [x + share * spanMm, ringYMm + 0.62 * sagMm * Math.abs(share) * 2],
        ],
      }),
    ),
  );
}

/** Soft folds under the gathered head, long and short by turns, alike from the middle to either side. */
function ruffles({ form, size }: ShapeInput, downMm: number): VisibleLine[] {
  const count = Math.min(MOST_RUFFLES, RUFFLES * form.swags.length);
  const half = (count - 1) / 2;
  return Array.from({ length: count }, (_, i): VisibleLine => {
    const x = (size.finishedWidthMm * (i + 0.5)) / count;
    const share = RUFFLE_SHARES[Math.round(Math.abs(i - half)) % RUFFLE_SHARES.length] ?? 0;
    const points: ShadePoint[] = [
      [x, 0],
      [x, Math.max(0, share * downMm)],
    ];
    return { kind: "gather", seenFrom: "front", points };
  });
}

/**
 * Midway between two columns: the folds on their way, then the pouf, which billows down to the scallop’s lowest point
 * and comes up again behind it by the slack that it has there.
 */
function poufSection(
  { form }: ShapeInput,
  section: RaisedShape,
  sagMm: number,
  lowestYMm: number,
): ShadePoint[] {
  const [first] = form.swags;
  const [hem] = form.stretches;
  if (first === undefined || hem === undefined) return [];
  const outerMm = POUF_OUT_SHARE * (first.toMm - first.fromMm);
  const points: ShadePoint[] = [[0, 0]];
  const drape = (fromY: number, gapMm: number, arcMm: number, reach: LoopReach) => {
    for (const [out, down] of foldOutline(arcMm, gapMm, reach)) points.push([out, fromY + down]);
  };
  const moving = section.folds.filter(({ state }) => state !== "flat").reverse();
  for (const { upperYMm, lowerYMm, arcMm, outMm } of moving)
    drape(upperYMm, lowerYMm - upperYMm, arcMm, { outerMm: outMm, innerMm: 0.4 * outMm });
  const bottomRowY = section.rows[0]?.yMm ?? 0;
  const dropMm = lowestYMm - bottomRowY;
  const slackMm = Math.min(dropMm, Math.max(0, hem.clothMm - hem.cordMm + first.sagMm - sagMm));
  if (dropMm > 0) drape(bottomRowY, dropMm - slackMm, dropMm + slackMm, { outerMm, innerMm: 0.35 * outerMm });
  return points;
}
