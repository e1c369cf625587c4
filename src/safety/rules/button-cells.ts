import type { Check } from "./rule.ts";

/** What every rule on remote controls with button or coin cells asks: whether they meet it, which only the remote shows. */
export const BUTTON_CELL_CHECK = {
  quantity: "button-cells",
  comparison: "equals",
  limit: 1,
  unit: "yes-no",
  states: "all",
  test: "button-cells",
} as const satisfies Check;
