import { backToStrip } from "../sheets/strip.ts";
import { openSection } from "../state/store.ts";
import type { SectionId } from "./sections.ts";

/** Opens a section of the page at hand and brings the focus to a field in it, or to its title. */
export function goToSection(id: SectionId, pointer?: string): void {
  openSection(id, true);
  backToStrip();
  // The section has its fields once it has been drawn open.
  requestAnimationFrame(() => {
    const section = document.getElementById(id);
    const field = pointer === undefined ? undefined : fieldOf(section, pointer);
    const target = field ?? section?.querySelector<HTMLElement>(".chapter-title button");
    target?.focus({ preventScroll: true });
    (field ? field.closest(".field") : section)?.scrollIntoView({ block: field ? "center" : "start" });
  });
}

function fieldOf(section: HTMLElement | null, pointer: string): HTMLElement | undefined {
  const frame = section?.querySelector(`[data-pointer="${CSS.escape(pointer)}"]`);
  // A list that is empty yet has but the button that adds to it.
  const found =
    frame?.querySelector<HTMLElement>("input, select, textarea") ??
    frame?.querySelector<HTMLElement>("button");
  // What stands in a list that is folded away is not there to be typed in.
  return found && found.offsetParent !== null ? found : undefined;
}
