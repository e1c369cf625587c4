import { alongHeadMm, type BoardPoint, type CordRun, type HeadShape } from "../../shade-plan/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";
import type { LockRig } from "./lock-rig.ts";

/** Written from the drawing and the maker's words alone: it knows nothing of how the rig was found. */
export interface RigFacts {
  columnsMm: readonly number[];
  eyeDiameterMm: number;
  perSlot: number;
  /** The board follows it: what lies on the board is as far apart as it is along it. */
  head: HeadShape;
}

/** Cords whose middles come nearer than this touch: far below any cord's thickness, above rounding. */
const TOUCH_MM = 1e-9;

/** What is wrong with a rig as it is drawn, in words; nothing where nothing is. */
export function verifyRig(lift: LockRig, facts: RigFacts): string[] {
  const faults: string[] = [];
  const crossings = countCrossings(lift.cords.map(({ path }) => path));
  if (crossings > 0) faults.push(`cords cross ${crossings} times`);
  if (lift.cords.length !== facts.columnsMm.length) faults.push("not every column has one cord");
  lift.cords.forEach((cord, i) => {
    faults.push(...cordFaults(lift, cord, facts.columnsMm[i]));
  });
  faults.push(...slotFaults(lift, facts), ...seatFaults(lift, facts));
  return faults;
}

/** How many pairs of cords meet or touch anywhere along their drawn paths. */
export function countCrossings(paths: readonly (readonly BoardPoint[])[]): number {
  return paths.reduce(
    (sum, one, i) => sum + paths.slice(i + 1).filter((other) => meet(one, other)).length,
    0,
  );
}

function meet(one: readonly BoardPoint[], other: readonly BoardPoint[]): boolean {
  for (let i = 1; i < one.length; i++) {
    for (let j = 1; j < other.length; j++) {
      const [p, q, r, s] = [one[i - 1], one[i], other[j - 1], other[j]];
      if (p && q && r && s && segmentsMeet(p, q, r, s)) return true;
    }
  }
  return false;
}

function segmentsMeet(p: BoardPoint, q: BoardPoint, r: BoardPoint, s: BoardPoint): boolean {
  if (apart(p.zMm, q.zMm, r.zMm, s.zMm) || apart(p.xMm, q.xMm, r.xMm, s.xMm)) return false;
  const a = side(r, s, p);
  const b = side(r, s, q);
  const c = side(p, q, r);
  const d = side(p, q, s);
  // In one line, and their boxes meet: they lie on each other or end to end.
  return a * b <= 0 && c * d <= 0;
}

function apart(p: number, q: number, r: number, s: number): boolean {
  return Math.max(p, q) < Math.min(r, s) - TOUCH_MM || Math.max(r, s) < Math.min(p, q) - TOUCH_MM;
}

/** On which side of the line from `from` to `to` a point lies: −1, 1, or 0 on it. */
function side(from: BoardPoint, to: BoardPoint, point: BoardPoint): number {
  const dx = to.xMm - from.xMm;
  const dz = to.zMm - from.zMm;
  const cross = dx * (point.zMm - from.zMm) - dz * (point.xMm - from.xMm);
  return Math.abs(cross) <= TOUCH_MM * Math.max(Math.abs(dx), Math.abs(dz)) ? 0 : Math.sign(cross);
}

function cordFaults(lift: LockRig, cord: CordRun, columnMm: number | undefined): string[] {
  const faults: string[] = [];
  const start = cord.path[0];
  const end = cord.path.at(-1);
  if (start === undefined || end === undefined) return [`cord ${cord.number} has no path`];
  if (columnMm === undefined || Math.abs(start.xMm - columnMm) > SAME_LENGTH_MM) {
    faults.push(`cord ${cord.number} does not start at its column`);
  }
  if (Math.abs(end.xMm - lift.seat.xMm) > SAME_LENGTH_MM) faults.push(`cord ${cord.number} misses the lock`);
  const from = start.xMm <= lift.seat.xMm ? "left" : "right";
  if (start.xMm !== lift.seat.xMm && cord.entersFrom !== from) {
    faults.push(`cord ${cord.number} is said to come from the wrong end`);
  }
  const slotWidth = lift.entry.rollerLengthMm / (lift.dividerWires + 1);
  const wall = lift.seat.zMm - lift.entry.rollerLengthMm / 2 + (cord.slot - 1) * slotWidth;
  if (end.zMm < wall - SAME_LENGTH_MM || end.zMm > wall + slotWidth + SAME_LENGTH_MM) {
    faults.push(`cord ${cord.number} does not run into slot ${cord.slot}`);
  }
  if (!lift.slots.some(({ number, cords }) => number === cord.slot && cords.includes(cord.number))) {
    faults.push(`slot ${cord.slot} does not know of cord ${cord.number}`);
  }
  return faults.concat(turnsBack(cord) ? [`cord ${cord.number} turns back on its way`] : []);
}

function turnsBack({ path }: CordRun): boolean {
  const towards = Math.sign((path.at(-1)?.xMm ?? 0) - (path[0]?.xMm ?? 0));
  return path.some(
    (point, i) => i > 0 && Math.sign(point.xMm - (path[i - 1]?.xMm ?? 0)) === -towards && towards !== 0,
  );
}

function slotFaults(lift: LockRig, { perSlot }: RigFacts): string[] {
  const faults: string[] = [];
  const threaded = lift.slots.flatMap(({ cords }) => cords);
  if (new Set(threaded).size !== lift.cords.length || threaded.length !== lift.cords.length) {
    faults.push("not every cord has one slot");
  }
  for (const { number, cords } of lift.slots) {
    if (cords.length > perSlot)
      faults.push(`slot ${number} holds ${cords.length} cords, more than ${perSlot}`);
  }
  for (const end of ["left", "right"] as const) {
    const slots = lift.cords.filter(({ entersFrom }) => entersFrom === end).map(({ slot }) => slot);
    const used = new Set(slots);
    if (used.size > 0 && Math.max(...used) - Math.min(...used) + 1 !== used.size) {
      faults.push(`cords from the ${end} leave a slot empty between them`);
    }
  }
  return faults;
}

/** A seat that was forced is a finding of its own. */
function seatFaults(
  { seat, housingLengthMm, controlSide, eyes }: LockRig,
  { eyeDiameterMm, head }: RigFacts,
): string[] {
  const faults: string[] = [];
  if (seat.facing !== controlSide) faults.push("the toothed roller does not face the outside");
  if (seat.forced) return faults;
  const reach = housingLengthMm / 2 + eyeDiameterMm / 2;
  if (eyes.some(({ xMm }) => Math.abs(alongHeadMm(head, xMm, seat.xMm)) < reach - SAME_LENGTH_MM))
    faults.push("the lock lies on an eye");
  return faults;
}
