import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plan } from "../../plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { shadeStrips } from "./shade-strips.ts";

function boardStrip(kind: "cord-lock" | "cleat", edgeInsetMm: number, fallMm: number) {
  const made = plan(
    jobWith(
      {
        opening: {
          widthsMm: [900],
          heightsMm: [1800],
          ...(fallMm === 0 ? {} : { head: { kind: "angled", fallMm, high: "left" } }),
        },
        shade: { mount: "to-size", making: { columns: { edgeInsetMm }, lift: { kind } } },
      },
      { units: { system: "metric", ruler: "1 mm" } },
    ),
  );
  const [shade] = made.shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  const context = { plan: made, shade, length: (mm: number) => `${mm}` } as ShadeContext;
  const strip = shadeStrips(context).find(({ name }) => name === "Board");
  if (strip === undefined) throw new Error("no strip of the board");
  return { strip, shade };
}

test("the strip of a board on a slope is as long as the board that is sawn, and all marks lie on it (Pythagoras)", () => {
  const { strip, shade } = boardStrip("cord-lock", 50, 500);
  const sawnMm = (shade.board.lengthMm * Math.hypot(900, 500)) / 900;
  expectNear(strip.lengthMm, sawnMm, 0.5);
  expect(strip.marks.at(-1)).toMatchObject({ name: "Right end", atMm: strip.lengthMm });
  for (const { atMm } of strip.marks) expect(atMm).toBeLessThanOrEqual(strip.lengthMm);
});

test.each([
  [50, false],
  [12, true],
])(
  "columns %s mm in: the last eye is marked once, whether an eye of a column serves or not",
  (inset, shared) => {
    const { strip, shade } = boardStrip("cleat", inset, 0);
    if (shade.lift.kind !== "cleat") throw new Error("invalid test job: no cleat");
    expect(shade.lift.turn.column !== undefined).toBe(shared);
    const { turn } = shade.lift;
    const there = strip.marks.filter(({ atMm }) => Math.abs(atMm - (turn.xMm - shade.board.leftMm)) < 0.5);
    expect(there.map(({ name }) => name)).toEqual([shared ? `Eye ${turn.column}, the last` : "Last eye"]);
  },
);
