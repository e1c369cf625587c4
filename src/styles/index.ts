import type { StyleKind } from "../job/index.ts";
import { flat } from "./flat/flat.ts";
import type { Style } from "./style.ts";

export type { Mechanism, Style } from "./style.ts";

/** Every style of the trade that can be planned; the compiler names each new one that is missing. */
export const STYLE_MODULES: Record<StyleKind, Style> = { flat };
