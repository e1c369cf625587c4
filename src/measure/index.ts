export { measure } from "./measure.ts";
