/** Does a small piece of work once the browser has nothing else to do; the answer takes it back. */
export function whenIdle(work: () => void): () => void {
  // Not every browser knows idle callbacks.
  if (typeof requestIdleCallback === "undefined") {
    const timer = setTimeout(work, 50);
    return () => clearTimeout(timer);
  }
  const handle = requestIdleCallback(work, { timeout: 1000 });
  return () => cancelIdleCallback(handle);
}
