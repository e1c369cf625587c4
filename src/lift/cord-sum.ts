import { type Figure, type FigureInput, type FigureUnit, figureRuleOf } from "../figures/index.ts";
import { type Cite, cite } from "../sources/index.ts";

/** Cords that a sum goes over, by number. */
interface Summed {
  numbers: readonly number[];
}

interface SumSpec {
  id: string;
  label: string;
  symbol: string;
  unit: FigureUnit;
  /** Each cord's own symbol begins so; what it is. */
  prefix: string;
  name: string;
  restsOn: (cord: number) => string;
  cite: Cite;
}

/** A sum over all cords, by number, each with its own symbol, so that the working can be read and checked. */
export function cordSum({
  prefix,
  name,
  restsOn,
  ...spec
}: SumSpec): (each: readonly (readonly [cord: number, value: number])[]) => Figure {
  const rule = figureRuleOf<Summed>()({
    ...spec,
    formula: ({ numbers }) => numbers.map((number) => `${prefix}${number}`).join(" + "),
    inputs: ({ numbers }): Record<string, FigureInput<Summed>> =>
      Object.fromEntries(
        numbers.map((number) => [
          `${prefix}${number}`,
          [spec.unit, `${name} ${number}`, restsOn(number)] as const,
        ]),
      ),
    compute: (given) => Object.values(given).reduce((sum, value) => sum + value, 0),
  });
  return (each) =>
    rule.figure(Object.fromEntries(each.map(([number, value]) => [`${prefix}${number}`, value])), {
      numbers: each.map(([number]) => number),
    });
}

const CORD_TOTAL = cordSum({
  id: "rig.cord-total",
  label: "Cord to cut in all",
  symbol: "C",
  unit: "mm",
  prefix: "c",
  name: "cord",
  restsOn: (cord) => `figure:rig.cord-${cord}-length`,
  cite: cite("arithmetic", "each length raised to the ruler first"),
});

/** All cords as they are cut, mm. */
export function cordTotal(cords: readonly { number: number; cutMm: number }[]): Figure {
  return CORD_TOTAL(cords.map(({ number, cutMm }) => [number, cutMm]));
}

const HAND_PULL = cordSum({
  id: "lift.pull",
  label: "Pull at the hand, shade nearly raised",
  symbol: "F",
  unit: "N",
  prefix: "p",
  name: "pull of cord",
  restsOn: (cord) => `figure:lift.cord-${cord}-pull`,
  cite: cite("arithmetic", "each cord on the worse of its two shares, so a little above the true pull"),
});

/** What the hand pulls at all cords together, N. */
export function handPullOfCords(pulls: readonly (readonly [cord: number, pullN: number])[]): Figure {
  return HAND_PULL(pulls);
}
