import type { Lift, SheetKind } from "../../shade-plan/index.ts";

/** The drawing on which the answer to a question is seen. */
const SHEETS: Readonly<Record<string, SheetKind>> = {
  "how-much-cloth": "cutting",
  "cut-size": "cutting",
  "pattern-repeat": "front",
  shrink: "cutting",
  "rows-apart": "back",
  "raised-height": "side",
  headrail: "side",
  "outer-rings": "back",
  "any-cord": "back",
  "how-many-cords": "back",
  "cord-lengths": "back",
  "knot-together": "back",
  "cord-load": "force",
  "cord-stretch": "force",
  "lock-as-eye": "lock",
  "which-side-out": "lock",
  "lock-at-the-end": "board",
  "which-lock": "lock",
  "divider-wires": "lock",
  "threading-order": "lock",
  "cleat-instead": "lock",
  "lock-pull": "force",
  "hold-up": "board",
  "how-heavy": "force",
  "without-cords": "front",
  "cords-and-children": "back",
};

/** Undefined where no drawing of this shade shows it, as a lock where there is none. */
export function sheetOfQuestion(id: string, takeUp: Lift["takeUp"]): SheetKind | undefined {
  const sheet = SHEETS[id];
  return sheet === "lock" && takeUp !== "lock" ? undefined : sheet;
}
