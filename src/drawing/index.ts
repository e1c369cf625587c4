export { ACTION_KINDS, drawAction } from "./actions/index.ts";
export * from "./cord-style.ts";
export { placeLetter, withLetters } from "./lettered.ts";
export * from "./model.ts";
export * from "./paints.ts";
export type { PicturePoint } from "./picture/camera.ts";
export type { ClothColours } from "./picture/cloth-faces.ts";
export * from "./picture/light.ts";
export { BATTEN, CORD } from "./picture/line-faces.ts";
export { darkerDye } from "./picture/lit-colour.ts";
export { LEAST_SHOWN_MM, lozenge } from "./picture/print/cloth-print.ts";
export { sashBoxes, WINDOW_COLOURS, type WindowBehind } from "./picture/window-faces.ts";
export * from "./placed.ts";
export type { Box } from "./placing/box.ts";
export { breakWords } from "./placing/break-words.ts";
export { place } from "./placing/place.ts";
export { shapesBox } from "./placing/shapes-box.ts";
export { textWidthEm } from "./placing/text-width.ts";
export * from "./sheets/index.ts";
export { knownOfTag } from "./sheets/known-of-tag.ts";
export {
  drawScene,
  drawSceneFrame,
  type PictureScene,
  pictureScene,
  smallPicture,
} from "./sheets/picture.ts";
export { type BareBatten, bareBattens, pictureRig, type RigLine } from "./sheets/picture-rig.ts";
export * from "./sheets/picture-things.ts";
export { markOn, sewnMarks } from "./sheets/sewn-marks.ts";
export { drawTag } from "./sheets/tag.ts";
export { speltDrawing } from "./spelt.ts";
export type { PhotoOfCloth } from "./svg/cloth-photo.ts";
export type { LetterOutlines, LetterShape, LineShape } from "./svg/letter-outlines.ts";
export { facesAsImages, toSvg } from "./svg/svg.ts";
export type { SvgNode } from "./svg/svg-node.ts";
export { paintValue, svgNodes } from "./svg/svg-nodes.ts";
