/** A page that is not seen has no frames; what waits for one goes on without it then, ms. */
const NO_FRAME_MS = 100;

/** Runs once the next frame has been painted. */
export function afterPaint(run: () => void): void {
  let isDone = false;
  const once = () => {
    if (isDone) return;
    isDone = true;
    clearTimeout(timer);
    run();
  };
  const timer = setTimeout(once, NO_FRAME_MS);
  // A task that a frame callback sets up runs once that frame has been painted.
  if ("requestAnimationFrame" in globalThis) requestAnimationFrame(() => setTimeout(once, 0));
}
