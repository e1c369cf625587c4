import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawSheet, place, toSvg } from "../../src/drawing/index.ts";
import { plan } from "../../src/plan/index.ts";
import { battens, hobbled, tucked } from "./fold-style-windows.ts";
import { austrian, festoon, gatheredBalloon } from "./gathered-windows.ts";
import { inPatternedCloth, PATTERNED } from "./patterned-cloth.ts";
import { type Case, outside, pleatedBalloon, relaxed, tailed } from "./windows.ts";

/** As files they would weigh megabytes: of each that was looked at its digest is kept. */
const KEPT = new URL("./printed-pictures.json", import.meta.url);
const CHANGED = new URL("./changed/", import.meta.url);
const PLATE = { maxWidthMm: 80, maxHeightMm: 110 };

const CASES: Record<string, () => Case> = {
  ...{ flat: outside, ribbed: battens, hobbled, tucked, relaxed, tailed },
  ...{ "pleated-balloon": pleatedBalloon, "gathered-balloon": gatheredBalloon, austrian, festoon },
};

const kept: Record<string, string> = existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, "utf8")) : {};

// Each style in each pattern at one height, the heights by turns.
const shown = Object.entries(CASES).flatMap(([style, make], s) =>
  Object.keys(PATTERNED).map((pattern, p) => ({ style, make, pattern, raise: ((s + p) % 3) / 2 })),
);

test.each(shown)(
  "$style in $pattern, raised $raise, as it was looked at",
  ({ style, make, pattern, raise }) => {
    const name = `printed-${style}-${pattern}-${raise}`;
    const planned = plan(inPatternedCloth(make().job, pattern));
    const [shade] = planned.shades;
    if (shade === undefined) throw new Error("invalid gallery job: no shade");
    const svg = toSvg(place(drawSheet("picture", planned, shade, { raise }), PLATE));
    const digest = createHash("sha256").update(svg).digest("hex");
    const changed = new URL(`${name}.svg`, CHANGED);
    if (kept[name] === digest) return rmSync(changed, { force: true });
    mkdirSync(CHANGED, { recursive: true });
    writeFileSync(changed, svg);
    if (process.env.UPDATE_PRINTED === "1") {
      kept[name] = digest;
      writeFileSync(KEPT, `${JSON.stringify(kept, Object.keys(kept).sort(), 2)}\n`);
    }
    expect(
      kept[name],
      `look at test/gallery/changed/${name}.svg; if it is right, run this with UPDATE_PRINTED=1`,
    ).toBe(digest);
  },
);
