/** What is to be drawn, first coarsely, then well. */
export interface LatestFirst<T> {
  /** Asks for this one: what was asked for before and is not drawn yet is left out. */
  want(next: T): void;
  /** Draws no more. */
  stop(): void;
}

/**
 * Draws the latest that was asked for, one thing at a time: coarsely where `hasCoarse` says so, and well unless another was
 * asked for meanwhile.
 */
export function latestFirst<T>(
  hasCoarse: (one: T) => boolean,
  draw: (one: T, coarse: boolean) => Promise<void>,
): LatestFirst<T> {
  let wanted: { one: T } | undefined;
  let busy = false;
  let isStopped = false;
  const work = async () => {
    if (busy) return;
    busy = true;
    while (wanted !== undefined && !isStopped) {
      const now = wanted;
      if (hasCoarse(now.one)) await draw(now.one, true);
      if (wanted !== now || isStopped) continue;
      await draw(now.one, false);
      if (wanted === now) wanted = undefined;
    }
    busy = false;
  };
  return {
    want(next) {
      wanted = { one: next };
      void work();
    },
    stop() {
      isStopped = true;
    },
  };
}
