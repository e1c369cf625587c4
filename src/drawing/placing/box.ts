import type { Point } from "../model.ts";

/** An upright rectangle. */
export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

export function emptyBox(): Box {
  return { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
}

/** Grows the box to hold a point with something round it. */
export function include(box: Box, [x, y]: Point, around = 0): void {
  if (x - around < box.left) box.left = x - around;
  if (y - around < box.top) box.top = y - around;
  if (x + around > box.right) box.right = x + around;
  if (y + around > box.bottom) box.bottom = y + around;
}

export function includeBox(box: Box, other: Box): void {
  include(box, [other.left, other.top]);
  include(box, [other.right, other.bottom]);
}

export function overlaps(a: Box, b: Box, apart = 0): boolean {
  return (
    a.left < b.right + apart &&
    b.left < a.right + apart &&
    a.top < b.bottom + apart &&
    b.top < a.bottom + apart
  );
}
