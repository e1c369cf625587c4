/**
 * A length over the height of the shade: straight lines between knots.
 * Raise runs from 0, lowered, to 1, raised; lengths in mm.
 */
export interface Course {
  raise: readonly number[];
  mm: readonly number[];
}

/** A length that stays the same at every height. */
export function steady(lengthMm: number): Course {
  return { raise: [0], mm: [lengthMm] };
}

/** From one length lowered to another raised, evenly. */
export function fromTo(loweredMm: number, raisedMm: number): Course {
  return { raise: [0, 1], mm: [loweredMm, raisedMm] };
}

export function courseAt({ raise, mm }: Course, at: number): number {
  let before = 0;
  while (before + 1 < raise.length && (raise[before + 1] ?? 0) <= at) before++;
  const from = raise[before] ?? 0;
  const start = mm[before] ?? 0;
  const to = raise[before + 1];
  const end = mm[before + 1];
  if (to === undefined || end === undefined || at <= from) return start;
  return start + ((end - start) * (at - from)) / (to - from);
}
