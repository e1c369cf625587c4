import { cite, sourced } from "../sources/index.ts";

/** Highest that a hand takes hold of a cord without a stool, above the floor. */
export const REACH = sourced(1900, "mm", cite("our-choice", "1.9 m reach without a stool"));
