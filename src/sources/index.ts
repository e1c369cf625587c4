export * from "./cite.ts";
export * from "./sources.ts";
