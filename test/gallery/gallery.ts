import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Placed, toSvg } from "../../src/drawing/index.ts";

const OUTPUT = new URL("./output/", import.meta.url);
const CHANGED = new URL("./changed/", import.meta.url);

/**
 * Compares a drawing with the one that was looked at and kept. What differs is written to `changed/` for a reviewer
 * to look at; whoever likes it moves it to `output/`. A drawing seen for the first time is kept, but not in CI.
 */
export function draws(name: string, make: () => Placed): void {
  test(name, () => {
    const svg = toSvg(make());
    const kept = new URL(`${name}.svg`, OUTPUT);
    const changed = new URL(`${name}.svg`, CHANGED);
    if (!existsSync(kept)) {
      if (process.env.CI === "true") throw new Error(`no drawing kept as test/gallery/output/${name}.svg`);
      mkdirSync(OUTPUT, { recursive: true });
      writeFileSync(kept, svg);
      return;
    }
    const isSame = readFileSync(kept, "utf8") === svg;
    if (isSame) rmSync(changed, { force: true });
    else {
      mkdirSync(CHANGED, { recursive: true });
      writeFileSync(changed, svg);
    }
    expect(
      isSame,
      `${name} is drawn differently: look at test/gallery/changed/${name}.svg, move it to output/ if it is right`,
    ).toBe(true);
  });
}
