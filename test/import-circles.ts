import { posix } from "node:path";
import { importsOf, type SourceFile } from "./source-tree.ts";

/**
 * Circles of imports, imports of types too: each as the files that reach each other (the strongly connected
 * components of the imports, by R. Tarjan's "Depth-first search and linear graph algorithms", 1972).
 */
export function importCirclesOf(files: readonly SourceFile[]): string[][] {
  const importsByPath = new Map(files.map((file) => [file.path, targetsOf(file)]));
  const orderByPath = new Map<string, number>();
  const stack: string[] = [];
  const circles: string[][] = [];

  /** The earliest file on the stack that this one reaches. */
  function lowestFrom(path: string): number {
    const order = orderByPath.size;
    orderByPath.set(path, order);
    const depth = stack.push(path) - 1;
    let lowest = order;
    for (const target of importsByPath.get(path) ?? []) {
      if (!importsByPath.has(target)) continue;
      const seen = orderByPath.get(target);
      if (seen === undefined) lowest = Math.min(lowest, lowestFrom(target));
      else if (stack.includes(target)) lowest = Math.min(lowest, seen);
    }
    if (lowest === order) {
      const circle = stack.splice(depth);
      if (circle.length > 1 || importsByPath.get(path)?.includes(path)) circles.push(circle.sort());
    }
    return lowest;
  }

  for (const { path } of files) if (!orderByPath.has(path)) lowestFrom(path);
  return circles.sort();
}

/** Files of this source tree that a file imports. */
function targetsOf(file: SourceFile): string[] {
  return importsOf(file)
    .filter((target) => target.startsWith("."))
    .map((target) => posix.join(posix.dirname(file.path), target));
}
