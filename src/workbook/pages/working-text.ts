import { type FigureUnit, figureText, moneyText, type Working } from "../../figures/index.ts";
import type { Plan } from "../../plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { trimmed } from "../../units/index.ts";
import type { Noted } from "../typeset/noted-list.ts";
import { TYPE } from "../typeset/type-scale.ts";
import { sentence } from "./sentence.ts";

const UNIT_WORDS: Record<FigureUnit, string> = {
  mm: "mm",
  mm2: "mm²",
  g: "g",
  kg: "kg",
  "g/m2": "g/m²",
  "g/m": "g/m",
  "kg/m3": "kg/m³",
  N: "N",
  Nm: "N·m",
  ratio: "",
  count: "",
  deg: "°",
  money: "",
  min: "min",
  s: "s",
};

const DECIMALS: Partial<Record<FigureUnit, number>> = { mm: 2, mm2: 0, kg: 4, N: 3, money: 2 };

/** What goes in stands with so many places that the sum, done again with them, gives what is printed. */
const INPUT_DECIMALS = 7;

/** A value in the unit in which the formula holds. */
function formulaValue(plan: Plan, value: number, unit: FigureUnit, decimals = DECIMALS[unit] ?? 4): string {
  if (unit === "money" && decimals === DECIMALS.money) return moneyText(value, plan.cost.currency);
  const word = unit === "money" ? plan.cost.currency : UNIT_WORDS[unit];
  const number = trimmed(value, decimals);
  return word === "" ? number : unit === "deg" ? `${number}°` : `${number} ${word}`;
}

const SMALL_AREA_MM2 = 10_000;

/** Kinds of space and of zero behind the point make no other text. */
function plain(text: string): string {
  return text.replace(/\s/gu, " ");
}

/** The same as the maker reads it, where that is another text. */
function alsoRead(plan: Plan, value: number, unit: FigureUnit): string {
  // Nought is nought in every unit, and small areas would round to it.
  if (value === 0 || (unit === "mm2" && value < SMALL_AREA_MM2)) return "";
  const { units, cost } = plan;
  const text = figureText(value, unit, units, cost.currency);
  return plain(text) === plain(formulaValue(plan, value, unit)) ? "" : text;
}

/** A working as an engineer writes it: formula, values that went in, result, source. */
function workingEntry(plan: Plan, working: Working): Noted {
  const { label, symbol, formula, inputs, value, unit, cite, note } = working;
  const given = inputs.map((input) => {
    const also = alsoRead(plan, input.value, input.unit);
    const read = also === "" ? "" : ` (${also})`;
    return `${input.symbol} = ${formulaValue(plan, input.value, input.unit, INPUT_DECIMALS)}${read} ${input.label}`;
  });
  const also = alsoRead(plan, value, unit);
  return {
    word: label,
    wordStyle: TYPE.cellStrong,
    text: [
      { words: `${symbol} = ${formula}`, style: TYPE.cell, formula: true },
      ...(given.length === 0 ? [] : [{ words: given.join("; "), style: TYPE.small, formula: true }]),
      {
        words: `${symbol} = ${formulaValue(plan, value, unit)}${also === "" ? "" : `, that is ${also}`}`,
        style: TYPE.cellStrong,
        formula: true,
      },
      ...(note === undefined ? [] : [{ words: sentence(note), style: TYPE.small }]),
      { words: `Source: ${citeText(cite)}.`, style: TYPE.small },
    ],
  };
}

export function workingEntries(plan: Plan, workings: readonly Working[]): Noted[] {
  return workings.map((working) => workingEntry(plan, working));
}
