export { planCloth } from "./plan-cloth.ts";
