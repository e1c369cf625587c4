import { farley } from "./farley.ts";
import { boundRaisedToStep, type WholeLengths } from "./whole-lengths.ts";

/**
 * No plan costs less, whatever the worths are (`farley`). With worths from a solved programme it is its value; with
 * rounded or unfinished ones it is only lower, never wrong.
 */
export function dualBound(whole: WholeLengths, duals: ArrayLike<number>): number {
  const { sizes, demand, stock, toMeasure } = whole;
  const wanted = sizes.map((_, type) => {
    const dual = Math.max(0, duals[type] as number);
    return toMeasure ? Math.min(dual, toMeasure[type] as number) : dual;
  });
  const { worth, held } = farley({ sizes, worth: wanted, limits: demand }, stock);
  const bound = worth.reduce((sum, each, type) => sum + each * (demand[type] as number), 0);
  return Math.max(0, boundRaisedToStep(bound - held, whole.costStep));
}
