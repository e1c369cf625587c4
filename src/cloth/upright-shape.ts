import type { Cloth, MotifAcross } from "../job/index.ts";
import type { Layer, Motif, Panel } from "../shade-plan/index.ts";
import { remainderMm } from "../units/index.ts";
import { chooseJoins, type JoinStory, NO_JOINS } from "./choose-joins.ts";
import type { ClothInput } from "./cloth-input.ts";
import { joinApart } from "./join-apart.ts";
import { inOnePiece, type Joined, seamThatFitsMm } from "./joins.ts";
import { layDrops } from "./lay-drops.ts";
import { cutEdges, flatOf, type LayerShape, namePanels, shrinkOf, slant, slantShare } from "./layer-shape.ts";
import { type Allowance, allowances, beforeShrinkingMm, edgesOf, sumOf } from "./make-up.ts";
import {
  acrossIsKnown,
  acrossRepeatMm,
  type CentreOnBolt,
  centreOnBolt,
  firstColumnMm,
  motifOf,
  repeatBelowTopMm,
} from "./place-motif.ts";

/**
 * Its length along the bolt, joined from as many widths as it takes. Where the maker does not say how the pattern is to
 * fall across, a motif comes in the middle, or the gap between two where only that can be centred or takes fewer widths.
 */
export function uprightShape(input: ClothInput, layer: Layer, cloth: Cloth): LayerShape {
  const { across } = input.shade.making.pattern;
  if (across !== undefined) return shapeAcross(input, layer, cloth, across);
  const motif = shapeAcross(input, layer, cloth, "centre-motif");
  if (motif.motif?.acrossKnown !== true) return motif;
  const gap = shapeAcross(input, layer, cloth, "between-motifs");
  const worse = motif.missMm - gap.missMm;
  if (Math.abs(worse) > 0.5) return worse > 0 ? gap : motif;
  return gap.drops < motif.drops ? gap : motif;
}

/** Width first: it decides the joins, these the widest piece, and that what bow and skew take off the length. */
export function shapeAcross(input: ClothInput, layer: Layer, cloth: Cloth, way: MotifAcross): LayerShape {
  const { shade, size, form } = input;
  const shrink = shrinkOf(cloth, false);
  const plain = allowances(shade, size, form, layer);
  const cutWidthMm = beforeShrinkingMm(size.finishedWidthMm + sumOf(plain, "widthMm"), shrink.width);
  const across = layAcross(input, layer, cloth, plain, cutWidthMm, way);
  const { joined, seamMm } = across;
  const widest = Math.max(...joined.panels.map((panel) => Math.min(panel.widthMm, cloth.usableWidthMm)));
  const added = [...plain, ...slant("lengthMm", slantShare(cloth) * widest)];
  const cutLengthMm = beforeShrinkingMm(size.finishedLengthMm + sumOf(added, "lengthMm"), shrink.length);
  const edges = cutEdges(shade, layer, added, shrink);
  const panels = namePanels(layer, joined, cutLengthMm);
  const drop = (panel: Panel, i: number, startMm: number) => ({
    panel,
    boltXMm: joined.panels[i]?.boltXMm ?? 0,
    startMm,
    drop: joined.panels[i]?.drop ?? i,
  });
  const pattern = patternOn(input, layer, cloth, added, across);
  const laid = layDrops(
    panels.map((panel, i) => drop(panel, i, pattern?.startsMm[i] ?? 0)),
    { repeatMm: cloth.repeat?.verticalMm },
  );
  return {
    turned: false,
    added,
    cutWidthMm,
    cutLengthMm,
    edges,
    panels: panels.map((panel, i) => {
      const inRepeat = pattern?.inRepeat[i];
      return inRepeat === undefined ? panel : { ...panel, inRepeat };
    }),
    lays: laid.lays,
    drops: joined.drops,
    joins: across.story,
    seamsMm: joined.panels
      .slice(1)
      .map((panel) => (panel.joinedXMm + seamMm - edges.leftMm) * (1 - shrink.width)),
    startWasteMm: laid.startMm,
    laidMm: laid.lengthMm,
    ...(pattern === undefined ? {} : { motif: pattern.motif }),
    across: way,
    missMm: across.centre.missMm,
  };
}

interface Across {
  joined: Joined;
  story: JoinStory;
  seamMm: number;
  /** Where the middle of the shade falls on the bolt. */
  centre: CentreOnBolt;
  /** Repeat across that counts; absent on plain cloth. */
  repeatMm?: number;
}

/** Panels side by side, each with its place across the bolt. */
function layAcross(
  input: ClothInput,
  layer: Layer,
  cloth: Cloth,
  plain: readonly Allowance[],
  cutWidthMm: number,
  way: MotifAcross,
): Across {
  const { shade } = input;
  const { repeat, usableWidthMm: usableMm } = cloth;
  const shrink = shrinkOf(cloth, false);
  const seamMm = seamThatFitsMm(shade.making.hems.seamMm, usableMm);
  const single = cutWidthMm <= usableMm + 1e-9;
  const flat = flatOf(input, layer, plain, shrink);
  const panelMm = single ? { panelMm: cutWidthMm } : {};
  const centre = repeat
    ? centreOnBolt(shade, flat, repeat, { usableMm, seamMm, across: way, ...panelMm })
    : { centreMm: single ? cutWidthMm / 2 : usableMm / 2, column: 0, missMm: 0 };
  const repeatMm = repeat && acrossRepeatMm(repeat, usableMm, seamMm);
  const bolt = { usableMm, seamMm, centreMm: centre.centreMm, repeatMm };
  const apart = layer === "face" ? piecesApart(input, plain, bolt, shrink.width) : undefined;
  if (apart) return { joined: apart, story: CUT_APART, seamMm, centre, repeatMm };
  const { joined, story } = single
    ? { joined: inOnePiece(cutWidthMm, centre.centreMm - cutWidthMm / 2), story: NO_JOINS }
    : chooseJoins(input, cutWidthMm, shrink.width, bolt, flat.widthMm);
  return { joined, story, seamMm, centre, repeatMm };
}

/** Joined at the lines of the pleats. */
const CUT_APART: JoinStory = { at: "cut-apart", equalDrops: 1 };

/** The pieces that the style cuts the face in, the outer two with their hems, or their seams, and what wraps round the board. */
function piecesApart(
  { shade, form }: ClothInput,
  plain: readonly Allowance[],
  { usableMm }: { usableMm: number },
  shrinkWidth: number,
): Joined | undefined {
  const { apart } = form;
  if (apart === undefined) return undefined;
  const { leftMm, rightMm } = edgesOf(shade, "face", plain);
  const cutMm = (mm: number) => beforeShrinkingMm(mm, shrinkWidth);
  const pieces = apart.map((one, i) => {
    const sidesMm = (i === 0 ? leftMm : 0) + (i === apart.length - 1 ? rightMm : 0);
    return { ...one, widthMm: cutMm(one.widthMm + sidesMm) };
  });
  return joinApart(pieces, { usableMm, seamMm: cutMm(shade.making.hems.seamMm) });
}

interface Pattern {
  /** Where in the repeat along the bolt each panel begins, on a bolt that begins with a repeat, mm. */
  startsMm: number[];
  inRepeat: NonNullable<Panel["inRepeat"]>[];
  motif: Motif;
}

/** The place of each panel in the pattern, and of the pattern on the shade. */
function patternOn(
  input: ClothInput,
  layer: Layer,
  cloth: Cloth,
  added: readonly Allowance[],
  { joined, story, seamMm, centre, repeatMm }: Across,
): Pattern | undefined {
  const { repeat, usableWidthMm: usableMm } = cloth;
  if (repeat === undefined || repeatMm === undefined) return undefined;
  const { shade } = input;
  const flat = flatOf(input, layer, added, shrinkOf(cloth, false));
  const alongMm = repeat.verticalMm;
  const halfMm = repeat.match === "half-drop" ? alongMm / 2 : 0;
  const belowTopMm = repeatBelowTopMm(shade, flat, alongMm);
  const firstMm = firstColumnMm(repeat, repeatMm, usableMm);
  const acrossKnown = acrossIsKnown(repeat, usableMm, seamMm);
  const startsMm = joined.panels.map(({ columnsOn }) =>
    remainderMm(((centre.column - columnsOn) % 2) * halfMm - belowTopMm, alongMm),
  );
  const inRepeat = joined.panels.map(({ boltXMm }, i) => {
    const startMm = startsMm[i] ?? 0;
    // Pieces cut apart come from anywhere across the cloth.
    if (!acrossKnown || story.at === "cut-apart") return { alongMm: startMm };
    const column = Math.floor((boltXMm - firstMm) / repeatMm + 1e-9);
    return {
      alongMm: remainderMm(startMm - (column % 2) * halfMm, alongMm),
      acrossMm: Math.max(0, boltXMm - firstMm - column * repeatMm),
    };
  });
  const besideMiddleMm = acrossKnown ? firstMm + centre.column * repeatMm - centre.centreMm : -repeatMm / 2;
  const place = { besideMiddleMm, acrossMm: repeatMm, alongMm, acrossKnown };
  return { startsMm, inRepeat, motif: motifOf(shade, flat, repeat, place) };
}
