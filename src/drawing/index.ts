export * from "./model.ts";
export * from "./paints.ts";
export * from "./placed.ts";
