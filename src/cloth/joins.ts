import { FIT_SLACK, remainderMm } from "../units/index.ts";

/** Panels of one layer from the left, widths as cut, mm. */
export interface Joined {
  panels: JoinedPanel[];
  /** Drops that come off the bolt; narrow panels may share one. */
  drops: number;
}

/** One panel as cut, mm, in the joined layer and on the bolt. */
export interface JoinedPanel {
  widthMm: number;
  /** Its name, where it has one of its own. */
  label?: string;
  full: boolean;
  /** Number of the drop that it comes off. */
  drop: number;
  /** Left cut edge in the joined layer. */
  joinedXMm: number;
  /** Left cut edge on the bolt. */
  boltXMm: number;
  /** Columns of the pattern by which the panel lies further along than its place in the middle panel's cloth would say. */
  columnsOn: number;
}

/** Cloth across the bolt, and where the middle of the layer comes in it. */
export interface AcrossBolt {
  usableMm: number;
  /** Seam allowance on each piece. */
  seamMm: number;
  /** Repeat across; absent on plain cloth, where a panel may begin anywhere. */
  repeatMm?: number;
  /** Place on the bolt where the middle of the layer falls. */
  centreMm: number;
}

/** More panels than any shade has; beyond it the last part is as wide as need be, with a finding. */
const MOST_SIDE_WIDTHS = 40;

/** Distances of the seam lines from the middle of the layer, one side; the other is its mirror. */
type Seams = number[];

/** All on one width. */
export function inOnePiece(cutWidthMm: number, boltXMm = 0): Joined {
  return {
    panels: [{ widthMm: cutWidthMm, full: false, drop: 0, joinedXMm: 0, boltXMm, columnsOn: 0 }],
    drops: 1,
  };
}

/**
 * Panels for a layer that must measure `cutWidthMm` when joined: one full width in the middle and equal
 * parts at each side, never a seam in the centre (US sewing handbook; “Measuring pelmets and blinds”).
 *
 * Each seam costs `seamMm` on both pieces. On a patterned cloth each panel begins where the pattern goes on from its
 * neighbour. The two outermost parts come off one drop where they fit side by side.
 */
export function joinEqualParts(cutWidthMm: number, bolt: AcrossBolt): Joined {
  const halfMm = cutWidthMm / 2;
  const seams: Seams = [widestMiddle(bolt) / 2 - bolt.seamMm];
  while (seams.length < MOST_SIDE_WIDTHS) {
    const at = seams.at(-1) ?? 0;
    const { netMm } = roomBeyond(at, bolt);
    if (halfMm - at <= netMm + bolt.seamMm + FIT_SLACK || netMm <= 0) break;
    seams.push(at + netMm);
  }
  return panelsOf(cutWidthMm, seams, bolt);
}

/**
 * The same with every seam at one of `wishes` (distances from the middle at which a seam shows least, both sides
 * alike): the outermost that cloth reaches each time, so that no more seams come about than must. Undefined where the
 * wishes lie too far apart.
 */
export function joinAtWishes(
  cutWidthMm: number,
  bolt: AcrossBolt,
  wishes: readonly number[],
): Joined | undefined {
  const halfMm = cutWidthMm / 2;
  const seams: Seams = [];
  let reachMm = widestMiddle(bolt) / 2 - bolt.seamMm;
  let fromMm = bolt.seamMm;
  while (seams.length < MOST_SIDE_WIDTHS) {
    const least = fromMm;
    const most = Math.min(reachMm, halfMm - 2 * bolt.seamMm);
    const at = Math.max(...wishes.filter((wish) => wish > least && wish <= most + FIT_SLACK));
    if (!Number.isFinite(at)) return undefined;
    seams.push(at);
    const { netMm } = roomBeyond(at, bolt);
    if (halfMm - at <= netMm + bolt.seamMm + FIT_SLACK) return panelsOf(cutWidthMm, seams, bolt);
    fromMm = at;
    reachMm = at + netMm;
  }
  return undefined;
}

/** Widest piece that lies evenly about the middle. */
function widestMiddle({ usableMm, centreMm }: AcrossBolt): number {
  return 2 * Math.min(centreMm, usableMm - centreMm);
}

/** What comes beyond a seam at a distance from the middle: its cloth on the bolt at either side. */
function roomBeyond(atMm: number, bolt: AcrossBolt) {
  const { usableMm, seamMm, repeatMm, centreMm } = bolt;
  const right = centreMm + atMm - seamMm;
  const left = usableMm - (centreMm - atMm + seamMm);
  const rightFromMm = repeatMm === undefined ? 0 : remainderMm(right, repeatMm);
  const leftFromMm = repeatMm === undefined ? 0 : remainderMm(left, repeatMm);
  const columns = (needed: number, used: number) =>
    repeatMm === undefined ? 0 : Math.round((needed - used) / repeatMm);
  return {
    /** From seam line to seam line of a panel as wide as it can be. */
    netMm: usableMm - Math.max(rightFromMm, leftFromMm) - 2 * seamMm,
    rightFromMm,
    /** From the right-hand selvedge inwards. */
    leftFromMm,
    rightColumns: columns(right, rightFromMm),
    leftColumns: columns(left, leftFromMm),
  };
}

function panelsOf(cutWidthMm: number, seams: Seams, bolt: AcrossBolt): Joined {
  const { seamMm, usableMm, centreMm } = bolt;
  const halfMm = cutWidthMm / 2;
  const middleMm = 2 * ((seams[0] ?? 0) + seamMm);
  const middle: Omit<JoinedPanel, "drop"> = {
    widthMm: middleMm,
    full: middleMm > usableMm - 1,
    joinedXMm: halfMm - middleMm / 2,
    boltXMm: centreMm - middleMm / 2,
    columnsOn: 0,
  };
  const left: Omit<JoinedPanel, "drop">[] = [];
  const right: Omit<JoinedPanel, "drop">[] = [];
  seams.forEach((at, i) => {
    const next = seams[i + 1];
    const widthMm = next === undefined ? halfMm - at + seamMm : next - at + 2 * seamMm;
    const room = roomBeyond(at, bolt);
    const full = widthMm > usableMm - 1 && next !== undefined;
    right.push({
      widthMm,
      full,
      joinedXMm: halfMm + at - seamMm,
      boltXMm: room.rightFromMm,
      columnsOn: room.rightColumns,
    });
    left.unshift({
      widthMm,
      full,
      joinedXMm: halfMm - at + seamMm - widthMm,
      boltXMm: usableMm - room.leftFromMm - widthMm,
      columnsOn: -room.leftColumns,
    });
  });
  const outerLeft = left[0];
  const outerRight = right.at(-1);
  const sidesShareDrop =
    outerLeft !== undefined &&
    outerRight !== undefined &&
    outerRight.boltXMm + outerRight.widthMm <= outerLeft.boltXMm + FIT_SLACK &&
    (outerLeft.columnsOn - outerRight.columnsOn) % 2 === 0;
  const all = [...left, middle, ...right];
  const drops = all.length - (sidesShareDrop ? 1 : 0);
  return { panels: all.map((panel, i) => ({ ...panel, drop: i % drops })), drops };
}

/** Widest seam that still leaves something of a width, mm. */
export function seamThatFitsMm(seamMm: number, usableWidthMm: number): number {
  return Math.min(seamMm, usableWidthMm / 8);
}
