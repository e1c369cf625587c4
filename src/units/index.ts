export * from "./format.ts";
export * from "./length.ts";
export * from "./mass.ts";
export * from "./parse-length.ts";
export * from "./ruler.ts";
export * from "./tolerances.ts";
export * from "./whole-steps.ts";
