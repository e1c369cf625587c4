import { cite, sourced } from "../sources/index.ts";

/** A child's pull at a cord between two rings, taken where a rule speaks of loops that can form and names no force. */
export const CHILD_PULL = sourced(35, "N", cite("child-pull"));
