export * from "./finding.ts";
export * from "./working.ts";
