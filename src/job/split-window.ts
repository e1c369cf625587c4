import type { Window } from "./job.ts";

interface WindowPatch {
  op: "replace" | "add";
  path: string;
  value: Window;
}

/**
 * Several shades in one opening, side by side, each a window of its own: the patch that puts them in the place of the
 * one at `path`. Inner edges meet half way between; what stood beside the opening stands beside the outer two.
 * Ids are the old one with `-1`, `-2` …; ticks stay behind, since the work is another.
 */
export function splitWindow({ ticks: _, ...window }: Window, path: string, parts: number): WindowPatch[] {
  const count = Math.max(2, Math.floor(parts));
  const base = window.id.slice(0, 58);
  const inner = { angleDeg: 180, wallMm: 0, shade: true };
  const { diagonalsMm: __, left, right, head: ___, ...opening } = window.opening;
  const one = (i: number) => ({
    ...window,
    id: `${base}-${i + 1}`,
    name: `${window.name.slice(0, 110)}, part ${i + 1}`,
    opening: {
      ...opening,
      widthsMm: opening.widthsMm.map((width) => Math.max(50, width / count)),
      ...(i === 0 ? (left === undefined ? {} : { left }) : { left: inner }),
      ...(i === count - 1 ? (right === undefined ? {} : { right }) : { right: inner }),
    },
  });
  const at = path.lastIndexOf("/");
  const list = path.slice(0, at);
  const index = Number(path.slice(at + 1));
  return Array.from({ length: count }, (_unused, i) => ({
    op: i === 0 ? ("replace" as const) : ("add" as const),
    path: `${list}/${index + i}`,
    value: one(i),
  }));
}
