export * from "./cord-style.ts";
export * from "./model.ts";
export * from "./paints.ts";
export { place } from "./place.ts";
export * from "./placed.ts";
export { type Hatch, LOOKS, type Look } from "./style.ts";
export { toSvg } from "./svg.ts";
export { paintValue, type SvgNode, svgNodes } from "./svg-nodes.ts";
export { textWidthEm } from "./text-width.ts";
