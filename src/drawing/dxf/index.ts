export { toDxf } from "./to-dxf.ts";
