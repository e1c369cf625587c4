import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import type { Working } from "../../figures/index.ts";
import { STYLES } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import { workingEntries } from "./working-text.ts";

/** `1 234.5` or `−0.25` as it is printed, and half of its last place. */
function printed(text: string): { value: number; half: number } {
  const plain = text.replaceAll("−", "-");
  const places = plain.split(".")[1]?.length ?? 0;
  return { value: Number(plain), half: 0.5 * 10 ** -places };
}

function after(words: string, symbol: string): string {
  const at = words.indexOf(`${symbol} = `);
  const [number = ""] = /^−?[\d.]+(?:e[+-]?\d+)?/.exec(words.slice(at + symbol.length + 3)) ?? [];
  return number;
}

/** The sum done again by a library that knows nothing of ours, from what stands on paper alone. */
function doneAgain({ formula, inputs }: Working, given: string): number {
  const scope: Record<string, number> = { pi: Math.PI, π: Math.PI };
  for (const { symbol } of inputs) scope[symbol] = printed(after(given, symbol)).value;
  const source = formula.replaceAll("−", "-").replaceAll("·", "*").replaceAll("×", "*").replaceAll("÷", "/");
  return Number(evaluate(source, scope));
}

describe.each(STYLES)("workings of a %s shade", (style) => {
  const planned = plan(
    jobWith({ id: "east", name: "East", opening: { widthsMm: [913], heightsMm: [1517] }, shade: { style } }),
  );
  const workings = [...planned.workings, ...planned.shades.flatMap((shade) => shade.workings)];

  test("give the number that is printed from the numbers that are printed", () => {
    const entries = workingEntries(planned, workings);
    workings.forEach((working, i) => {
      const { text } = entries[i] ?? { text: [] };
      const [, given = { words: "" }, result] =
        working.inputs.length === 0 ? [text[0], undefined, text[1]] : text;
      const { value, half } = printed(after(result?.words ?? "", working.symbol));
      const again = doneAgain(working, given.words);
      const slack = half * 1.01 + 1e-6 * Math.abs(value);
      // A whole number found by rounding up or down may rest on the last place.
      const nearWhole = /ceil|floor|round/.test(working.formula) && Math.abs(again - working.value) < 1e-3;
      expect(
        nearWhole || Math.abs(again - value) <= slack,
        `${working.id}: ${given.words} give ${again}, printed ${value}`,
      ).toBe(true);
    });
  });
});
