import { create } from "zustand";
import { repaintStarts } from "./repaint.ts";

/**
 * How far up the shade on the page is pulled: 0 lowered, 1 raised. Kept by itself: it changes many times a second, and little
 * of the page heeds it.
 */
export const useRaise = create(() => 0 as number);

export function setRaise(raise: number): void {
  repaintStarts();
  useRaise.setState(raise, true);
}
