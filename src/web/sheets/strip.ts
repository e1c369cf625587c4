import type { SheetKind } from "../../shade-plan/index.ts";
import { look, pick, usePlanner } from "../state/store.ts";

/** What a strip of a phone shows well enough; any other takes the screen there, until one presses “smaller”. */
const STRIP_SHEETS: ReadonlySet<SheetKind> = new Set(["front", "picture"]);

/** Shows a sheet, as large as it needs to be read. */
export function showSheet(sheet: SheetKind): void {
  look({ sheet, large: !STRIP_SHEETS.has(sheet) });
}

/** Whether the drawing stands above the fields, as on a phone: `shade-page.css` gives the strip its height there. */
function hasStrip(): boolean {
  return getComputedStyle(document.documentElement).getPropertyValue("--strip") !== "";
}

/** A drawing that has a phone's whole screen gives way; the front stands in the strip for one that is not read there. */
export function backToStrip(): void {
  const { sheet } = usePlanner.getState().view;
  look({ large: false, ...(hasStrip() && !STRIP_SHEETS.has(sheet) ? { sheet: "front" } : {}) });
}

/** On a phone a large drawing and the slip of a figure lie over the fields: they give way to who comes to one by keys. */
export function giveWay({ target }: FocusEvent): void {
  if (!(target instanceof Element) || !target.matches(".shade-walk :focus-visible") || !hasStrip()) return;
  const { large, picked } = usePlanner.getState().view;
  if (large) backToStrip();
  if (picked !== undefined) pick(undefined);
}
