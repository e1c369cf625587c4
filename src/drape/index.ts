export type { DrapeInput } from "./drape-input.ts";
export { drapeShade } from "./drape-shade.ts";
export type { DrapeMethod, HangingCloth, HangingShade } from "./hanging-cloth.ts";
