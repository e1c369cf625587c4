export * from "./capstan.ts";
export * from "./continuous-beam.ts";
