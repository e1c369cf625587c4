import { startTransition, useEffect, useRef, useState } from "react";
import { afterPaint } from "./after-paint.ts";

/**
 * A value as it was when the page was painted last: what follows from an edit at leisure comes after the frame that
 * shows the edit, in slices that a keystroke interrupts, and never holds that frame up.
 */
export function useAfterPaint<T>(now: T): T {
  const [late, setLate] = useState(now);
  const newest = useRef(now);
  newest.current = now;
  const waits = useRef(false);
  useEffect(() => {
    if (late === now || waits.current) return;
    waits.current = true;
    afterPaint(() => {
      waits.current = false;
      startTransition(() => setLate(newest.current));
    });
  }, [late, now]);
  return late;
}
