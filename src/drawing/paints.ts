/**
 * Every colour that a drawing uses, by what it stands for, for light and dark paper.
 * Renderers know paints by name only; hex values live here.
 *
 * Cords: the eight colours of Okabe and Ito, “Color Universal Design” (2008), chosen to be told apart
 * with common colour-vision deficiencies. On paper they are always cased in ink and carry a dash rhythm
 * and a number as well, since the lighter ones alone are too faint on a light page.
 */
export const THEMES = ["light", "dark"] as const;
export type Theme = (typeof THEMES)[number];

export const PAINTS = {
  paper: { light: "#FBF8F1", dark: "#16181D" },
  ink: { light: "#1E2A4A", dark: "#E8E6DF" },
  /** Dimension lines, leaders and quiet words. */
  pencil: { light: "#4E5872", dark: "#B4B3AE" },
  /** Ghosted outlines and hatching. */
  chalk: { light: "#858CA0", dark: "#6C7180" },
  face: { light: "#F0E2C8", dark: "#3A3936" },
  lining: { light: "#FFFDF8", dark: "#22252C" },
  wrong: { light: "#E6E3DC", dark: "#2B2E36" },
  cloth: { light: "#F5ECD9", dark: "#2D2C2A" },
  wood: { light: "#E9D3AC", dark: "#4A3D27" },
  metal: { light: "#D3D8E0", dark: "#434956" },
  wall: { light: "#E4DFD4", dark: "#2A2C32" },
  glass: { light: "#E2EDF3", dark: "#1E2A33" },
  stop: { light: "#A32D1F", dark: "#F0876F" },
  fix: { light: "#7E5A00", dark: "#E0B040" },
  accent: { light: "#1F5A8C", dark: "#7DB4E0" },
  unproven: { light: "#5A6132", dark: "#B3BC84" },
  "cord-blue": { light: "#0072B2", dark: "#0072B2" },
  "cord-vermillion": { light: "#D55E00", dark: "#D55E00" },
  "cord-green": { light: "#009E73", dark: "#009E73" },
  "cord-purple": { light: "#CC79A7", dark: "#CC79A7" },
  "cord-sky": { light: "#56B4E9", dark: "#56B4E9" },
  "cord-orange": { light: "#E69F00", dark: "#E69F00" },
  "cord-yellow": { light: "#F0E442", dark: "#F0E442" },
  "cord-black": { light: "#000000", dark: "#000000" },
} as const satisfies Record<string, Record<Theme, string>>;

export type Paint = keyof typeof PAINTS;

export function paintHex(paint: Paint, theme: Theme): string {
  return PAINTS[paint][theme];
}
