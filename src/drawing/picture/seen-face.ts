import type { Point } from "../model.ts";

/** A face that is seen. */
export interface SeenFace {
  nodes: [number, number, number, number];
  /** Where they are seen, in their order. */
  corners: Point[];
  isFace: boolean;
  light: number;
}
