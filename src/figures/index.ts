export * from "./figure-text.ts";
export * from "./finding.ts";
export * from "./pointer.ts";
export * from "./working.ts";
