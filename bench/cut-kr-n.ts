import { ClothSearch } from "../src/cutting/index.ts";
import { STRIPS, stripProblem } from "../test/cutting/strips.ts";
import type { Figure } from "./figure.ts";

/** What a strip may take, ms; with `--long` as long as other benchmarks of them give it. */
const QUICK_MS = 1000;
const LONG_MS = 10_000;

/**
 * Strips KR (Kröger 1995) and N (Burke and others 2004): mean height over what no layout can be lower than (see
 * strip-2d.json), in any number of stages. How near to it straight cuts can come is known of none of KR.
 */
export function cutKrN(long: boolean): Figure {
  const strips = STRIPS.filter(({ id }) => /^(KR|N)/.test(id));
  const gaps = strips.map((strip) => {
    const begun = performance.now();
    const search = new ClothSearch(stripProblem(strip));
    while (performance.now() - begun < (long ? LONG_MS : QUICK_MS) && search.improve(256));
    return search.cost / strip.guillotine.lowerBound - 1;
  });
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  return { name: "cut.kr-n", value: 100 * mean, unit: "%", goal: 2, better: "lower" };
}
