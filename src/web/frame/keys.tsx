import { useEffect } from "react";
import { pick, redoEdit, undoEdit, usePlanner } from "../state/store.ts";

/** Keys that work everywhere: undo, do again, close the slip. */
export function Keys() {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key === "escape" && usePlanner.getState().view.picked) return pick(undefined);
      if (!(event.ctrlKey || event.metaKey) || (key !== "z" && key !== "y")) return;
      // A text that cannot be read is not in the job yet: the browser's own undo belongs to it.
      if (event.target instanceof HTMLElement && event.target.closest("[data-draft]")) return;
      if (!usePlanner.getState().job) return;
      event.preventDefault();
      if (key === "y" || event.shiftKey) redoEdit();
      else undoEdit();
    };
    addEventListener("keydown", onKeyDown);
    return () => removeEventListener("keydown", onKeyDown);
  }, []);
  return null;
}
