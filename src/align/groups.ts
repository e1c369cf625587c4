import type { LineWindow } from "./line-problem.ts";

/** Windows that ask the same and hang at the same height: what suits one suits all of them. */
export interface Alike {
  window: LineWindow;
  ids: string[];
}

/** In an order that hangs on the windows alone, not on how they were listed. */
export function alikeWindows(windows: readonly LineWindow[]): Alike[] {
  const byKey = new Map<string, Alike>();
  for (const window of windows) {
    const { ask } = window;
    const key = JSON.stringify([
      window.topMm,
      window.own.rows,
      window.own.raisedMm,
      Object.entries(ask).sort(byName),
    ]);
    const known = byKey.get(key);
    if (known) known.ids.push(window.id);
    else byKey.set(key, { window, ids: [window.id] });
  }
  return [...byKey.entries()].sort(byName).map(([, alike]) => alike);
}

function byName([a]: [string, unknown], [b]: [string, unknown]): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
