import { WebIO } from "@gltf-transform/core";
import { validateBytes } from "gltf-validator";
import { describe, expect, test } from "vitest";
import { pngOf } from "../../../../test/e2e/png.ts";
import { austrian, gatheredBalloon } from "../../../../test/gallery/gathered-windows.ts";
import { outside, pleatedBalloon, relaxed } from "../../../../test/gallery/windows.ts";
import type { CommonNet } from "../../../drape/index.ts";
import { type HangingFrame, playedAt, workOutHeights } from "../../../drape/index.ts";
import { clothGlb } from "./glb.ts";

const PNG = new Uint8Array(pngOf(8, 8, (x) => (x < 4 ? [160, 40, 40] : [240, 220, 180])));

/** The first coarse look at a shade: as much of a surface as any. */
function firstLook(input: Parameters<typeof workOutHeights>[0], raise: number) {
  let net: CommonNet | undefined;
  let frame: HangingFrame | undefined;
  for (const news of workOutHeights(input, raise)) {
    if ("net" in news) net = news.net;
    else {
      frame = news.frame;
      break;
    }
  }
  if (net === undefined || frame === undefined) throw new Error("nothing was worked out");
  return { net, cloth: playedAt(net, [frame], frame.raise) };
}

describe.each(Object.entries({ outside, relaxed, pleatedBalloon, gatheredBalloon, austrian }))(
  "%s as glTF",
  (_name, make) => {
    const { net, cloth } = firstLook(make().shade, 0.6);

    // The Khronos validator checks a file against the whole of the specification.
    test.each([{}, { pattern: { png: PNG, originMm: [10, 20], tileMm: [300, 400] } as const }])(
      "is valid, with and without a pattern",
      async (pattern) => {
        const bytes = await clothGlb(net, cloth, { face: "#b08040", back: "#f0f0e8", ...pattern }, "Shade");
        const report = await validateBytes(bytes);
        expect(report.issues.messages.filter(({ severity }) => severity < 2)).toEqual([]);
        expect(report.issues.numErrors).toBe(0);
      },
    );

    test("has the cloth in metres, y up, and both of its sides", async () => {
      const bytes = await clothGlb(net, cloth, { face: "#b08040", back: "#f0f0e8" }, "Shade");
      const [mesh] = (await new WebIO().readBinary(bytes)).getRoot().listMeshes();
      const [face, back] = mesh?.listPrimitives() ?? [];
      const places = face?.getAttribute("POSITION");
      expect(places?.getCount()).toBe(net.across * net.along);
      const lowest = Math.max(...cloth.placesMm.filter((_, k) => k % 3 === 1));
      expect(places?.getMin([0, 0, 0])[1]).toBeCloseTo(-lowest / 1000, 5);
      expect(back?.getIndices()?.getCount()).toBe(face?.getIndices()?.getCount());
      // sRGB 0.5 is 0.2140 in linear light (IEC 61966-2-1): 0x80 is 0.2159.
      expect(face?.getMaterial()?.getBaseColorFactor()[1]).toBeCloseTo(0.2159, 3);
    });
  },
);
