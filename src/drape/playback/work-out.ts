import type { DrapeInput } from "../drape-input.ts";
import { drapeShade } from "../drape-shade.ts";
import type { HangingShade } from "../hanging-cloth.ts";
import { type CommonNet, commonNet, type HangingFrame, ontoNet } from "./one-net.ts";

/** What comes of working out a shade at all heights, piece by piece. */
export type HeightNews = { net: CommonNet } | { frame: HangingFrame };

/** Heights from lowered to raised: at first, and with those between them. */
const STEPS = 12;
const FINE_STEPS = 24;

/**
 * A shade at every height: coarsely at once where it stands now, lowered, half and raised; then brought to rest at 13
 * heights, each from the one before; then at 12 between them. Whoever draws from it may stop after any piece.
 */
export function* workOutHeights(input: DrapeInput, nowAt: number): Generator<HeightNews, void, undefined> {
  const raised = drapeShade(input, 1, { coarse: true });
  const net = commonNet(input, raised);
  yield { net };
  const isNet = raised.cells.length > 0;
  if (isNet) {
    for (const raise of [nowAt, 0, 0.5])
      yield { frame: ontoNet(net, raise, drapeShade(input, raise, { coarse: true }), true) };
    yield { frame: ontoNet(net, 1, raised, true) };
  }
  const known: HangingShade[] = [];
  for (let k = 0; k <= STEPS; k++) {
    const before = known.at(-1);
    const shade = drapeShade(input, k / STEPS, before === undefined ? {} : { before });
    known.push(shade);
    yield { frame: ontoNet(net, k / STEPS, shade) };
  }
  for (let k = 1; k < FINE_STEPS; k += 2) {
    const raise = k / FINE_STEPS;
    const shade = drapeShade(input, raise, { before: known[(k - 1) / 2] as HangingShade });
    yield { frame: ontoNet(net, raise, shade) };
  }
}

/** Frames in order of height with one more: a frame that is no worse takes the place of one at its height. */
export function withFrame(frames: readonly HangingFrame[], frame: HangingFrame): HangingFrame[] {
  const others = frames.filter(
    // Once the heights on both sides are known well, a coarse one between them would only jump.
    (one) =>
      Math.abs(one.raise - frame.raise) > 1e-9 &&
      !(one.coarse && !frame.coarse && Math.abs(one.raise - frame.raise) < 1 / STEPS),
  );
  return [...others, frame].sort((a, b) => a.raise - b.raise);
}
