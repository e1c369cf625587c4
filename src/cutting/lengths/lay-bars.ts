import { barsCost, type PatternBar, TO_MEASURE } from "./bar-pattern.ts";
import type { CutBar, LengthCut, LengthsPlan, LengthsProblem, PlacedCut } from "./problem.ts";
import type { WholeLengths } from "./whole-lengths.ts";

/** Gives every bar its cuts by name: long ones first, equal ones in the order in which they were asked for. */
export function layBars(
  problem: LengthsProblem,
  whole: WholeLengths,
  typeOf: readonly number[],
  bars: readonly PatternBar[],
): LengthsPlan {
  const waiting: LengthCut[][] = whole.sizes.map(() => []);
  problem.cuts.forEach((cut, i) => {
    waiting[typeOf[i] as number]?.push(cut);
  });
  for (const list of waiting) list.reverse();
  const next = (type: number) => waiting[type]?.pop() as LengthCut;
  const plan: LengthsPlan = { bars: [], toMeasure: [], cost: barsCost(whole, bars) };
  for (const { stock, types } of bars) {
    const cuts = [...types].sort((a, b) => a - b).map(next);
    if (stock === TO_MEASURE) plan.toMeasure.push(...cuts);
    else plan.bars.push(layBar(problem, stock, cuts));
  }
  return plan;
}

function layBar({ stock, kerfMm, keepMm }: LengthsProblem, index: number, cuts: LengthCut[]): CutBar {
  const { id: stockId, lengthMm: stockMm } = stock[index] as LengthsProblem["stock"][number];
  const placed: PlacedCut[] = [];
  let fromMm = 0;
  for (const cut of cuts) {
    placed.push({ ...cut, fromMm });
    fromMm += cut.lengthMm + kerfMm;
  }
  const offcutMm = Math.max(0, stockMm - fromMm);
  return { stockId, stockMm, cuts: placed, offcutMm, kept: offcutMm > 0 && offcutMm >= keepMm };
}
