import { useEffect } from "react";
import { unwrittenJob } from "../persistence/session.ts";
import { usePlanner } from "../state/store.ts";

/** Asks before a tab is closed that holds something unsaved. */
export function LeavingGuard() {
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      if (usePlanner.getState().saving.state !== "saved" || unwrittenJob()) event.preventDefault();
    };
    addEventListener("beforeunload", onLeave);
    return () => removeEventListener("beforeunload", onLeave);
  }, []);
  return null;
}
