import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

/** A page as dots, by Poppler, which shares no code with what makes it; without it there is nothing to measure. */
export const hasPoppler = spawnSync("pdftoppm", ["-v"]).status === 0;

export interface Dots {
  width: number;
  height: number;
  dark: (x: number, y: number) => boolean;
}

/** One page of a file as a printer of so many dots an inch would set it. */
export function rastered(file: string, page: number, dpi: number): Dots {
  const out = `${file}-${page}`;
  const only = ["-f", String(page), "-l", String(page), "-singlefile"];
  execFileSync("pdftoppm", ["-r", String(dpi), "-gray", ...only, file, out]);
  const bytes = readFileSync(`${out}.pgm`);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString("latin1"));
  if (head === null) throw new Error("invalid picture");
  const [width, height] = [Number(head[1]), Number(head[2])];
  const from = head[0].length;
  return { width, height, dark: (x, y) => (bytes[from + y * width + x] ?? 255) < 128 };
}
