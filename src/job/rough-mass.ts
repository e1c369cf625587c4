import { cite, sourced } from "../sources/index.ts";
import { barMassGPerM } from "./defaults.ts";
import type { StyleKind } from "./job.ts";
import type { Making } from "./making.ts";
import type { Bar } from "./parts.ts";

/** Over the cloth of the finished area: hems, turnings, rings, cords and ribs. */
export const ROUGH_HEMS = sourced(
  1.25,
  "ratio",
  cite("our-choice", "between what plans of all styles come to in full"),
);

/** Ribs and their pockets weigh about as much as this share more of cloth: our choice, near what plans come to. */
const RIBS = 1.1;

/** A face lighter than this is a sheer, g/m². */
export const SHEER_GSM = 100;

/** Austrian: cloth along the length, times the finished length, where its maker does not say. */
export function usualLengthFullness({ massGsm }: { massGsm: number }): number {
  return massGsm < SHEER_GSM ? 3 : 2;
}

type Settled<G extends keyof Making, K extends keyof NonNullable<Making[G]>> = {
  [Key in K]-?: NonNullable<NonNullable<Making[G]>[Key]>;
};

interface RoughMaking {
  hobble: Settled<"hobble", "fullness">;
  tuck: Settled<"tuck", "depthMm" | "spacingMm">;
  gather: Settled<"gather", "widthFullness" | "hemExtraMm" | "scallopExtraMm" | "weight"> &
    Pick<NonNullable<Making["gather"]>, "lengthFullness">;
  relax: Settled<"relax", "weight">;
  pleat: Settled<"pleat", "foldedMm" | "poufMm" | "bar">;
  columns: Settled<"columns", "largestSpacingMm" | "edgeInsetMm">;
  board: Settled<"board", "barShorterMm">;
}

type Layer = "face" | "interlining" | "blackout" | "lining";
type Weighed = { massGsm: number };
type WeighedLayers = { face: Weighed } & Partial<Record<Layer, Weighed>>;

interface RoughShade {
  style: StyleKind;
  making: RoughMaking;
  cloths: WeighedLayers;
  bar: Bar;
}

/** All layers of a shade, g/m². */
export function layersGsm({ face, interlining, blackout, lining }: WeighedLayers): number {
  return [face, interlining, blackout, lining].reduce((sum, cloth) => sum + (cloth?.massGsm ?? 0), 0);
}

/** About how much cloth a style takes over its finished area, before any is cut: times the area. */
export function roughFullness(
  { style, making, cloths }: Omit<RoughShade, "bar">,
  widthMm: number,
  lengthMm: number,
): number {
  const { hobble, tuck, gather, pleat, columns } = making;
  switch (style) {
    case "hobbled":
      return hobble.fullness;
    case "tucked":
      return 1 + (2 * tuck.depthMm) / tuck.spacingMm;
    case "gathered-balloon":
    case "festoon":
      return (gather.widthFullness * (lengthMm + gather.hemExtraMm)) / lengthMm;
    case "austrian":
      return (
        (gather.lengthFullness ?? usualLengthFullness(cloths.face)) *
        (1 + gather.scallopExtraMm / columns.largestSpacingMm)
      );
    case "flat":
    case "relaxed":
      return 1;
    case "ribbed":
      return RIBS;
    case "tailed":
      return (widthMm + pleat.foldedMm) / widthMm;
    case "pleated-balloon":
      return (widthMm + Math.ceil(widthMm / pleat.poufMm) * pleat.foldedMm) / widthMm;
  }
}

/** Whether a bar or a rod lies in the hem of the style as it is made. */
export function hasBar({ style, making }: Pick<RoughShade, "style" | "making">): boolean {
  switch (style) {
    case "relaxed":
      return making.relax.weight === "bar";
    case "tailed":
    case "pleated-balloon":
      return making.pleat.bar !== "none";
    case "gathered-balloon":
    case "festoon":
    case "austrian":
      return making.gather.weight === "rod";
    case "flat":
    case "ribbed":
    case "hobbled":
    case "tucked":
      return true;
  }
}

/**
 * What a shade will weigh, about, kg: finished area × layers, and the bar. Good enough to choose what raises it, a
 * tenth or so off.
 */
export function roughMassKg(shade: RoughShade, widthMm: number, lengthMm: number): number {
  const cloth =
    ROUGH_HEMS.value * roughFullness(shade, widthMm, lengthMm) * widthMm * lengthMm * layersGsm(shade.cloths);
  const barMm = hasBar(shade) ? Math.max(0, widthMm - shade.making.board.barShorterMm) : 0;
  const bar = barMassGPerM(shade.bar) * barMm;
  return cloth / 1e9 + bar / 1e6;
}
