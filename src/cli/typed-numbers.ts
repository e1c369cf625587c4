import { Option } from "commander";
import { type TypedNumber, typedJob, USUAL_SHADE } from "../answers/index.ts";
import { type Job, PLACES, type Place, PURPOSES, type Purpose } from "../job/index.ts";
import {
  bareUnit,
  parseLength,
  SYSTEM_DEFAULT_RULER,
  UNIT_SYSTEMS,
  type UnitChoice,
  type UnitSystem,
} from "../units/index.ts";
import { placeOf } from "./asking.ts";
import { BadInput, badInput } from "./bad-input.ts";
import type { Io } from "./io.ts";
import { plainLine } from "./plain-text.ts";
import { PARTS_OPTION, readJobWith } from "./read-job.ts";

/** What may be typed in place of a job, or instead of it. */
export interface NumbersOptions {
  job?: string;
  shade?: string;
  parts?: string;
  width?: string;
  length?: string;
  rows?: string;
  columns?: string;
  headrail?: string;
  cord?: string;
  clothWidth?: string;
  repeat?: string;
  halfDrop?: boolean;
  gsm?: string;
  place?: Place;
  purpose?: Purpose;
  units?: UnitSystem;
}

/** Options with their number, whose bare numbers are read in the maker’s unit or in mm. */
const LENGTHS = [
  ["width", "widthMm", "finished width, such as '35 3/8' or '90,5 cm'"],
  ["length", "lengthMm", "finished length"],
  ["rows", "rowsApartMm", "rows of rings at most so far apart"],
  ["columns", "columnsApartMm", "columns of rings at most so far apart"],
  ["headrail", "headrailMm", "flat cloth under the board"],
  ["cord", "cordMm", "diameter of the cord; a bare number is in mm"],
  ["cloth-width", "clothMm", "usable width of the cloth"],
  ["repeat", "repeatMm", "height of one pattern repeat; 0 is plain"],
] as const satisfies readonly (readonly [option: string, number: TypedNumber, words: string])[];

/** Every way to say which shade is meant. */
export function numbersOptions(): Option[] {
  return [
    new Option("--job <file>", "a job file instead of typed numbers, or - for the standard input"),
    new Option("--shade <id>", "which window of it; the first unless given"),
    new Option(...PARTS_OPTION),
    ...LENGTHS.map(([name, , words]) => new Option(`--${name} <length>`, words)),
    new Option("--half-drop", "the pattern is a half drop"),
    new Option("--gsm <number>", "weight of the cloth, g/m²"),
    new Option("--place <place>", "where it will hang").choices(PLACES),
    new Option("--purpose <purpose>", "whom it is for").choices(PURPOSES),
    new Option("--units <system>", "how lengths are read and shown").choices(UNIT_SYSTEMS),
  ];
}

const typedOf = (options: NumbersOptions, name: string): string | undefined =>
  options[name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase()) as "width"];

/**
 * The shade of a job file, or one with the numbers that were typed; the usual ones stand in for those that were not.
 *
 * @throws BadInput on a number that cannot be read or that no shade can have
 */
export async function shadeOf(
  options: NumbersOptions,
  io: Io,
): Promise<{ job: Job; room: number; window: number }> {
  if (options.job !== undefined) {
    const stray = LENGTHS.find(([name]) => typedOf(options, name) !== undefined);
    if (stray !== undefined)
      throw badInput(
        `--${stray[0]}`,
        JSON.stringify(typedOf(options, stray[0])),
        "no numbers beside --job, which has its own",
      );
    const job = await readJobWith(options.job, options.parts, io);
    const [room, window] = placeOf(job, options.shade);
    return { job, room, window };
  }
  const system = options.units ?? "imperial";
  const units: UnitChoice = { system, ruler: SYSTEM_DEFAULT_RULER[system] };
  const typed = { ...USUAL_SHADE };
  for (const [name, number] of LENGTHS) {
    const text = typedOf(options, name);
    if (text === undefined) continue;
    const read = parseLength(text, number === "cordMm" ? "mm" : bareUnit(units));
    if (!read.ok) throw badInput(`--${name}`, JSON.stringify(plainLine(text)), read.reason);
    typed[number] = read.lengthMm;
  }
  if (options.gsm !== undefined) typed.massGsm = gsmOf(options.gsm);
  if (options.halfDrop) typed.match = "half-drop";
  const made = typedJob({ ...typed, ...chosen(options) }, units);
  if (made.ok) return { job: made.job, room: 0, window: 0 };
  throw new BadInput(
    "The typed numbers",
    made.issues.map(({ number, ...issue }) => ({ ...issue, field: optionOf(number) ?? issue.field })),
  );
}

function chosen({ place, purpose }: NumbersOptions): { place?: Place; purpose?: Purpose } {
  return { ...(place === undefined ? {} : { place }), ...(purpose === undefined ? {} : { purpose }) };
}

function optionOf(number: TypedNumber | undefined): string | undefined {
  if (number === "massGsm") return "--gsm";
  const found = LENGTHS.find(([, one]) => one === number);
  return found === undefined ? undefined : `--${found[0]}`;
}

function gsmOf(text: string): number {
  const value = Number(text.replace(",", "."));
  if (Number.isFinite(value)) return value;
  throw badInput("--gsm", JSON.stringify(plainLine(text)), "a number of grams a square metre, such as 230");
}
