/** A door of its own: the DXF writer is larger than all of the drawing room, and only files need it. */
export { toDxf } from "./to-dxf.ts";
