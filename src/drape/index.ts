export type { DrapeInput } from "./drape-input.ts";
export { drapeShade, isNet } from "./drape-shade.ts";
export type { DrapeMethod, HangingCloth, HangingShade } from "./hanging-cloth.ts";
export type { CommonNet, HangingFrame } from "./playback/one-net.ts";
export { type PlayedCloth, playedAt } from "./playback/playback.ts";
export { type HeightNews, withFrame, workOutHeights } from "./playback/work-out.ts";
export { differs, type SurfaceFigure, surfaceFigures } from "./surface-figures.ts";
