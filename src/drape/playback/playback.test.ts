import { describe, expect, test } from "vitest";
import { hobbled, tucked } from "../../../test/gallery/fold-style-windows.ts";
import { austrian, gatheredBalloon } from "../../../test/gallery/gathered-windows.ts";
import { type Case, outside, pleatedBalloon, relaxed } from "../../../test/gallery/windows.ts";
import { expectNear } from "../../../test/near.ts";
import { drapeShade } from "../drape-shade.ts";
import { type CommonNet, commonNet, type HangingFrame, ontoNet } from "./one-net.ts";
import { playedAt } from "./playback.ts";
import { withFrame, workOutHeights } from "./work-out.ts";

const STYLES: Record<string, () => Case> = {
  flat: outside,
  hobbled,
  tucked,
  relaxed,
  "pleated balloon": pleatedBalloon,
  "gathered balloon": gatheredBalloon,
  austrian,
};
const HEIGHTS = [0, 0.25, 0.5, 0.75, 1];

function clothMm(net: CommonNet, placesMm: Float64Array, i: number): number {
  let sum = 0;
  for (let j = 1; j < net.along; j++) {
    const [a, b] = [3 * ((j - 1) * net.across + i), 3 * (j * net.across + i)];
    sum += Math.hypot(...[0, 1, 2].map((c) => (placesMm[b + c] as number) - (placesMm[a + c] as number)));
  }
  return sum;
}

describe.each(Object.entries(STYLES))("%s between heights", (_name, make) => {
  const { shade } = make();
  const raised = drapeShade(shade, 1, { coarse: true });
  const net = commonNet(shade, raised);
  const frames = HEIGHTS.map((raise) =>
    ontoNet(net, raise, drapeShade(shade, raise, { coarse: true }), true),
  );

  test("cloth is as long on its way as at the heights on either side, to a millionth", () => {
    for (const raise of [0.01, 0.11, 0.24, 0.3, 0.62, 0.9]) {
      const { placesMm } = playedAt(net, frames, raise);
      expect(placesMm.every(Number.isFinite)).toBe(true);
      const next = frames.findIndex((one) => one.raise > raise);
      const [from, to] = [frames[next - 1] as HangingFrame, frames[next] as HangingFrame];
      const share = (raise - from.raise) / (to.raise - from.raise);
      for (let i = 0; i < net.across; i += 5) {
        const ends = [from, to].map((one) => clothMm(net, one.placesMm, i)) as [number, number];
        const wanted = ends[0] + share * (ends[1] - ends[0]);
        expectNear(clothMm(net, placesMm, i), wanted, 1e-6 * wanted, `upright ${i} at ${raise}`);
      }
    }
  });

  // Two ways: those alike follow the first of them, or each is made as long as it is on its own.
  test("uprights of one shape go up as they would each on its own", () => {
    const alone = frames.map(
      (frame): HangingFrame => ({
        ...frame,
        kin: { ...frame.kin, first: Int32Array.from({ length: net.across }, (_, i) => i) },
      }),
    );
    expect(frames.some(({ kin }) => kin.first.some((first, i) => first !== i))).toBe(true);
    const [together, apart] = [playedAt(net, frames, 0.3), playedAt(net, alone, 0.3)];
    together.placesMm.forEach((mm, k) => {
      expectNear(mm, apart.placesMm[k] as number, 1e-3);
    });
  });

  test("played into cloth that was played before it is as played anew", () => {
    const before = playedAt(net, frames, 0.9);
    expect(playedAt(net, frames, 0.3, before)).toEqual(playedAt(net, frames, 0.3));
  });

  test("at a height that is known it is that height; below and above all it is the nearest", () => {
    for (const frame of frames) expect(playedAt(net, frames, frame.raise).placesMm).toEqual(frame.placesMm);
    expect(playedAt(net, frames.slice(1, 3), 0).placesMm).toEqual(frames[1]?.placesMm);
    expect(playedAt(net, frames.slice(1, 3), 1).placesMm).toEqual(frames[2]?.placesMm);
  });

  test("rings rise evenly, and the board holds its line", () => {
    const played = playedAt(net, frames, 0.37);
    const lowest = Math.max(...played.ringsMm.filter((_, k) => k % 3 === 1));
    const [from, to] = [frames[1], frames[2]].map((one) =>
      Math.max(...(one as HangingFrame).ringsMm.filter((_, k) => k % 3 === 1)),
    ) as [number, number];
    expectNear(lowest, from + ((0.37 - 0.25) / 0.25) * (to - from), 1e-9);
    const share = (0.37 - 0.25) / 0.25;
    for (let k = 0; k < 3 * net.across; k++) {
      const ends = [frames[1], frames[2]].map((one) => (one as HangingFrame).placesMm[k]) as [number, number];
      expectNear(played.placesMm[k] as number, ends[0] + share * (ends[1] - ends[0]), 1e-9, "board line");
    }
  });

  test("what it is worked out from can be sent to another thread", () => {
    const { style, size, grid, form, feel, mass, board, folds } = shade;
    const input = { style, size, grid, form, feel, mass, board, ...(folds === undefined ? {} : { folds }) };
    expect(structuredClone(input)).toEqual(input);
  });
});

test("heights come coarsely at first, then well, each from the one before; a better one takes the place of a coarse one", () => {
  const { shade } = pleatedBalloon();
  let frames: HangingFrame[] = [];
  let coarse = 0;
  for (const news of workOutHeights(shade, 0.3)) {
    if ("net" in news) continue;
    frames = withFrame(frames, news.frame);
    if (news.frame.coarse) coarse++;
    if (coarse === 1) expect(frames.map(({ raise }) => raise)).toEqual([0.3]);
    if (frames.length > 14) break;
  }
  expect(coarse).toBe(4);
  expect(frames.some((one) => one.coarse)).toBe(false);
  expect(frames.map(({ raise }) => raise)).toEqual(
    [...frames.map(({ raise }) => raise)].sort((a, b) => a - b),
  );
});

test("from the height before the cloth comes to rest where it does from scratch, within what the eye sees", () => {
  const { shade } = pleatedBalloon();
  const before = drapeShade(shade, 0.45);
  const [near, anew] = [drapeShade(shade, 0.5, { before }), drapeShade(shade, 0.5)];
  expect(near.method).toBe("settled");
  const lowest = ({ cloth }: typeof near) => Math.max(...cloth.placesMm.filter((_, k) => k % 3 === 1));
  expectNear(lowest(near), lowest(anew), 12, "lowest edge");
});
