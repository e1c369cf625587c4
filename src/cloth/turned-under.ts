import { cite, sourced } from "../sources/index.ts";
import { inches } from "../units/index.ts";

/** Cloth turned under along a raw edge of a piece beside the panels, mm. */
export const TURN = sourced(inches(0.5), "mm", cite("common-practice", "1/2 in turned under"));
