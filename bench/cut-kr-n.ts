import { STRIPS, type StripInstance, stripProblem } from "../test/cutting/strips.ts";
import { costAfter } from "./cost-after.ts";
import type { Figure } from "./figure.ts";

/** What a strip may take, ms; with `--long` as long as other benchmarks of them give it. */
const QUICK_MS = 1000;
const LONG_MS = 10_000;

/** Mean height over what no layout can be lower than (see strip-2d.json), straight cuts in any number of stages. */
function meanGap(isLong: boolean, turnsOf: (strip: StripInstance) => boolean): number {
  const strips = STRIPS.filter(({ id }) => /^(KR|N)/.test(id));
  const ms = isLong ? LONG_MS : QUICK_MS;
  const gaps = strips.map(
    (strip) =>
      costAfter(stripProblem(strip, { turns: turnsOf(strip) }), ms) / strip.guillotine.lowerBound - 1,
  );
  return 100 * (gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length);
}

/**
 * Strips KR (Kröger 1995) and N (Burke and others 2004). Kröger lets a piece be turned by a quarter (recalled from memory,
 * the paper could not be read); N has no waste as it lies. The bounds of KR are by area, and hold either way. Beside it all
 * pieces as they lie, as cloth with a nap asks: how near to the bound straight cuts can come then is known of none of KR.
 */
export function cutKrN(isLong: boolean): Figure[] {
  const figure = (name: string, turnsOf: (strip: StripInstance) => boolean): Figure => ({
    name,
    value: meanGap(isLong, turnsOf),
    unit: "%",
    goal: 2,
    better: "lower",
  });
  return [figure("cut.kr-n", ({ id }) => id.startsWith("KR")), figure("cut.kr-n.fixed", () => false)];
}
