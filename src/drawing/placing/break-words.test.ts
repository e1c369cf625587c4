import { expect, test } from "vitest";
import { breakWords } from "./break-words.ts";
import { textWidthEm } from "./text-width.ts";

test("a number, its fraction and its unit stand on one line", () => {
  const words = "nothing hangs lower than 1.5 m above the floor, nor 59 1⁄8 in";
  for (let roomEm = 6; roomEm < 30; roomEm += 0.5) {
    const lines = breakWords(words, roomEm);
    expect(lines.join(" ").replaceAll("\u00a0", " ")).toBe(words);
    for (const line of lines) {
      expect(textWidthEm(line)).toBeLessThanOrEqual(roomEm + 1e-9);
      expect(line, `${roomEm} em`).not.toMatch(/\d$/);
      expect(line, `${roomEm} em`).not.toMatch(/^(?:m|in|1⁄8)\b/);
    }
  }
});
