export { letterOutlines } from "./outlines.ts";
export { lettersWithoutShape, NO_SHAPE, onOneLine, printable, withoutShapeText } from "./printable.ts";
export { MOST_WORDS, rememberedByText } from "./remember.ts";
export {
  FACE_NAMES,
  type Face,
  type FaceName,
  type Faces,
  openFaces,
  type ShapedWord,
  type WorkbookFonts,
} from "./typeface.ts";
