import type { LayerCut } from "../shade-plan/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import { type AcrossBolt, type Joined, joinAtWishes, joinEqualParts } from "./joins.ts";

/** How the places of the joins were found, and what the other way would have taken. */
export interface JoinStory {
  at: LayerCut["joinsAt"];
  /** Drops with equal parts beside a full width, and with the joins under columns or pleats where that can be. */
  equalDrops: number;
  columnDrops?: number;
}

/** One width makes the layer. */
export const NO_JOINS: JoinStory = { at: "none", equalDrops: 1 };

/** A pair of places is taken for even when its halves differ by no more, mm. */
const EVEN_MM = 0.5;

/** Equal parts beside a full width, unless joins under columns or pleats take no more drops, or were asked for. */
export function chooseJoins(
  { shade, form }: ClothInput,
  cutWidthMm: number,
  shrinkWidth: number,
  bolt: AcrossBolt,
  flatWidthMm: number,
): { joined: Joined; story: JoinStory } {
  const wanted = shade.making.hems.joins;
  const equal = joinEqualParts(cutWidthMm, bolt);
  const wishes = wishesOf(form.joinsAtMm, flatWidthMm * (1 - shrinkWidth)).map(
    (mm) => mm / (1 - shrinkWidth),
  );
  const hidden = joinAtWishes(cutWidthMm, bolt, wishes);
  const story = {
    equalDrops: equal.drops,
    ...(hidden === undefined ? {} : { columnDrops: hidden.drops }),
  };
  const takes =
    hidden !== undefined &&
    (wanted === "under-columns" || (wanted === "auto" && hidden.drops <= equal.drops));
  return takes
    ? { joined: hidden, story: { ...story, at: "under-columns" } }
    : { joined: equal, story: { ...story, at: "equal-parts" } };
}

/** Distances from the middle at which both sides have such a place, mm. */
function wishesOf(placesMm: readonly number[], widthMm: number): number[] {
  const middle = widthMm / 2;
  return placesMm
    .filter((x) => x > middle + EVEN_MM && placesMm.some((other) => Math.abs(widthMm - x - other) <= EVEN_MM))
    .map((x) => x - middle);
}
