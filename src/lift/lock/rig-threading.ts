import { EYE_OPENING } from "../../job/index.ts";
import { capstanRatio, type SpacePoint, turnRad } from "../../mechanics/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";
import { assignSlots } from "./assign-slots.ts";

/** Share of the pull that the lock's roller passes on: a plain bearing. */
export const ROLLER_EFFICIENCY = sourced(
  0.917,
  "ratio",
  cite("sheave-efficiency", "taken for the roller of a lock as well"),
);
/** Share of a round opening that a bundle of cords can fill. */
export const BUNDLE_FILL = sourced(
  0.7,
  "ratio",
  cite("from-memory", "a bundle of cords fills about 70 % of a round opening"),
);
/** Nearest that two drawn lanes come, so that each cord can be told from the next. */
const LEAST_LANE_MM = 0.02;

/** What the cords of one shade run over. Places along the board from the control side inwards, mm. */
export interface RigLayout {
  eyesMm: readonly number[];
  /** Load of the cord of each eye, N. */
  loadsN: readonly number[];
  cordDiameterMm: number;
  eyeDiameterMm: number;
  friction: number;
  housingLengthMm: number;
  /** Line of the eyes across the board, mm from the wall. */
  eyeLineMm: number;
  /** Middles of the slots that may be used, from the wall outwards, mm from the wall. */
  slotsMm: readonly number[];
  slotPitchMm: number;
  perSlot: number;
  /** Where a place along the board lies: level across the shade, and below the top line. */
  onBoard: (alongMm: number) => { acrossMm: number; downMm: number };
}

/** A board that hangs level. */
export const ON_LEVEL_BOARD: RigLayout["onBoard"] = (alongMm) => ({ acrossMm: alongMm, downMm: 0 });

/** One cord's way from its eye to the lock, but for where the lock sits. */
export interface Strand {
  /** Its eye, counted from the control side. */
  eye: number;
  /** Eyes that it passes after its own, in order. */
  passes: number[];
  fromInner: boolean;
  /** Index in `slotsMm`, place in the slot from the wall, and where that is, mm from the wall. */
  slot: number;
  place: number;
  slotLaneMm: number;
  /** Its lane through the eyes that it passes, mm from the wall. */
  eyeLaneMm: number;
}

/**
 * Slots and lanes for a lock that has `outer` eyes on its control side. From the wall outwards the cords keep
 * their order along the board, far end first. Through an eye the farther cord keeps the outer lane, so that the
 * nearer one, which starts in the eye's middle, joins without crossing it.
 *
 * @returns from the wall outwards
 */
export function threadRig(layout: RigLayout, outer: number): Strand[] {
  const { eyesMm, loadsN, slotsMm, eyeLineMm } = layout;
  const order = eyesMm.map((_, i) => eyesMm.length - 1 - i);
  const counts = assignSlots({
    loadsN: order.map((eye) => loadsN[eye] ?? 0),
    fromInner: eyesMm.length - outer,
    offsetsMm: slotsMm.map((z) => Math.abs(z - eyeLineMm)),
    perSlot: layout.perSlot,
  });
  const pitch = [lanePitch(layout, outer), lanePitch(layout, eyesMm.length - outer)] as const;
  const strands: Strand[] = [];
  counts.forEach((count, slot) => {
    for (let place = 1; place <= count; place++) {
      const eye = order[strands.length] ?? 0;
      strands.push(strandOf(layout, outer, pitch, eye, { slot, place, count }));
    }
  });
  return strands;
}

function strandOf(
  { slotsMm, slotPitchMm, cordDiameterMm, eyeLineMm }: RigLayout,
  outer: number,
  pitch: readonly [outer: number, inner: number],
  eye: number,
  seat: { slot: number; place: number; count: number },
): Strand {
  const fromInner = eye >= outer;
  const passes: number[] = [];
  if (fromInner) for (let i = eye - 1; i >= outer; i--) passes.push(i);
  else for (let i = eye + 1; i < outer; i++) passes.push(i);
  const spread = Math.min(cordDiameterMm, slotPitchMm / seat.count);
  return {
    eye,
    passes,
    fromInner,
    slot: seat.slot,
    place: seat.place,
    slotLaneMm: (slotsMm[seat.slot] ?? eyeLineMm) + (seat.place - (seat.count + 1) / 2) * spread,
    eyeLaneMm: eyeLineMm + (fromInner ? -passes.length * pitch[1] : passes.length * pitch[0]),
  };
}

/** Lanes share half of the eye's opening. */
function lanePitch({ eyeDiameterMm, cordDiameterMm }: RigLayout, cords: number): number {
  const halfOpening = (EYE_OPENING.value * eyeDiameterMm - cordDiameterMm) / 2;
  return Math.max(LEAST_LANE_MM, Math.min(1.5 * cordDiameterMm, halfOpening / Math.max(1, cords - 1)));
}

/** Its path seen from below, [along the board from the control side, from the wall]: eye, lane, housing, roller. */
export function strandPath(layout: RigLayout, strand: Strand, lockMm: number): [number, number][] {
  const all = pathPoints(layout, strand, lockMm);
  const passed = strand.passes.length;
  // Through the eyes between the first and the last that it passes its lane is straight.
  return all.filter((_, i) => i <= 1 || i >= passed);
}

function pathPoints(layout: RigLayout, strand: Strand, lockMm: number): [number, number][] {
  const { eyesMm, eyeLineMm, housingLengthMm } = layout;
  const { passes, eyeLaneMm, slotLaneMm, fromInner } = strand;
  const path: [number, number][] = [
    [eyesMm[strand.eye] ?? 0, eyeLineMm],
    ...passes.map((eye): [number, number] => [eyesMm[eye] ?? 0, eyeLaneMm]),
  ];
  const from = path.at(-1)?.[0] ?? 0;
  const mouth = lockMm + (fromInner ? 1 : -1) * (housingLengthMm / 2);
  // A seat forced onto an eye leaves no room for the straight run.
  if ((fromInner ? from - mouth : mouth - from) > SAME_LENGTH_MM) path.push([mouth, slotLaneMm]);
  path.push([lockMm, slotLaneMm]);
  return path;
}

/** Angles through which a cord slides, rad: up from its column into its own eye, and after that; the roller turns with it. */
export interface Turns {
  ownEyeRad: number;
  afterRad: number;
}

/** Turns of one cord in space: the board under it may slope or bend. */
export function turnsOf(layout: RigLayout, strand: Strand, lockMm: number): Turns {
  const points = pathPoints(layout, strand, lockMm).map(([alongMm, zMm]): SpacePoint => {
    const { acrossMm, downMm } = layout.onBoard(alongMm);
    return { x: acrossMm, y: downMm, z: zMm };
  });
  const [own, next] = points;
  let afterRad = 0;
  for (let i = 1; i + 1 < points.length; i++) afterRad += turnAt(points[i - 1], points[i], points[i + 1]);
  // It comes straight up from the bottom row.
  const below = own && { ...own, y: own.y + 1 };
  return { ownEyeRad: turnAt(below, own, next), afterRad };
}

function turnAt(
  before: SpacePoint | undefined,
  at: SpacePoint | undefined,
  after: SpacePoint | undefined,
): number {
  return before === undefined || at === undefined || after === undefined ? 0 : turnRad(before, at, after);
}

/** Pull of all cords at the hand with the lock at one place, N. */
export function rigPullN(layout: RigLayout, strands: readonly Strand[], lockMm: number): number {
  return strands.reduce((sum, strand) => {
    const { ownEyeRad, afterRad } = turnsOf(layout, strand, lockMm);
    const loadN = layout.loadsN[strand.eye] ?? 0;
    return sum + cordPull(loadN, layout.friction, ownEyeRad + afterRad, ROLLER_EFFICIENCY.value);
  }, 0);
}

/** Pull that one cord asks for at the hand, N: its load, raised by each turn and by the roller. */
export function cordPull(loadN: number, friction: number, wrap: number, efficiency: number): number {
  return (loadN * capstanRatio(friction, wrap)) / efficiency;
}
