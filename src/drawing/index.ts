export * from "./model.ts";
