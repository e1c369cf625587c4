export * from "./cord-style.ts";
export * from "./model.ts";
export * from "./paints.ts";
export * from "./placed.ts";
export { place } from "./placing/place.ts";
export { textWidthEm } from "./placing/text-width.ts";
export * from "./sheets/index.ts";
export { toSvg } from "./svg/svg.ts";
export { paintValue, type SvgNode, svgNodes } from "./svg/svg-nodes.ts";
