import { useEffect } from "react";
import { useJob } from "../state/fields.ts";
import { usePlanner } from "../state/store.ts";
import { leaveCutting, startCutting, stopCutting, useCuttingStore } from "./cutting-store.ts";

/** Edits come in bursts: a plan is begun when the maker pauses. */
const PAUSE_MS = 300;

/** Keeps the cutting plan of the open job: a first one after each edit, better ones while its chapter is open. */
export function useCutting(): void {
  const job = useJob();
  const isOpen = usePlanner((planner) => planner.view.open.cutting === true);
  useEffect(() => {
    const { job: known, progress, state } = useCuttingStore.getState();
    if (known === job && !isOpen) {
      if (state === "looking") stopCutting();
      return;
    }
    const isLooking = state === "looking" || progress?.ended === "done" || progress?.ended === "stopped";
    if (known === job && (isLooking || progress?.ended === "spent")) return;
    const timer = setTimeout(() => void startCutting(job, isOpen), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [job, isOpen]);
  useEffect(() => leaveCutting, []);
}
