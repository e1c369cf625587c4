export * from "./articles.ts";
export * from "./cautions.ts";
export * from "./counts.ts";
export * from "./keep-together.ts";
export * from "./lists.ts";
export * from "./sentences.ts";
export * from "./slugs.ts";
export * from "./spelling.ts";
