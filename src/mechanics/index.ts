export * from "./capstan.ts";
export * from "./continuous-beam.ts";
export * from "./wound-cord.ts";
