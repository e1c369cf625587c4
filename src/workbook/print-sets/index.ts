export * from "./print-sets.ts";
