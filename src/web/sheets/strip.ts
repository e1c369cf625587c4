import type { SheetKind } from "../../shade-plan/index.ts";
import { look, usePlanner } from "../state/store.ts";

/** What a strip of a phone shows well enough; any other takes the screen there, until one presses “smaller”. */
const STRIP_SHEETS: ReadonlySet<SheetKind> = new Set(["front", "picture"]);

/** Shows a sheet, as large as it needs to be read. */
export function showSheet(sheet: SheetKind): void {
  look({ sheet, large: !STRIP_SHEETS.has(sheet) });
}

/** A drawing that has a phone's whole screen gives way; the front stands in the strip for one that is not read there. */
export function backToStrip(): void {
  const { sheet } = usePlanner.getState().view;
  const hasStrip = document.querySelector(".stage-larger")?.checkVisibility() === true;
  look({ large: false, ...(hasStrip && !STRIP_SHEETS.has(sheet) ? { sheet: "front" } : {}) });
}
