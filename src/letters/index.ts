export { letterOutlines } from "./outlines.ts";
export { NO_SHAPE, onOneLine, printable } from "./printable.ts";
export {
  FACE_NAMES,
  type Face,
  type FaceName,
  type Faces,
  openFaces,
  type WorkbookFonts,
} from "./typeface.ts";
