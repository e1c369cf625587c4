export * from "./fields-behind.ts";
export * from "./figure-rule.ts";
export * from "./figure-text.ts";
export * from "./finding.ts";
export * from "./lazy.ts";
export * from "./pointer.ts";
export * from "./stage-result.ts";
export * from "./working.ts";
