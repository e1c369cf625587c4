import { rename, writeFile } from "node:fs/promises";
import { type Command, Option } from "commander";
import { PART_TESTS, type PartTest, type TestReading, testResultText } from "../../diagnose/index.ts";
import {
  BENCH_TESTS,
  type BenchTest,
  type PartsFile,
  partsText,
  type TestReadings,
} from "../../job/index.ts";
import { citeText } from "../../sources/index.ts";
import {
  GRAVITY,
  N_PER_POUND_FORCE,
  parseLength,
  SYSTEM_DEFAULT_RULER,
  UNIT_SYSTEMS,
  type UnitSystem,
} from "../../units/index.ts";
import { answerText } from "../asking.ts";
import { badInput } from "../bad-input.ts";
import { aboutPath } from "../file-trouble.ts";
import type { Io } from "../io.ts";
import { plainLine, wrapped } from "../plain-text.ts";
import { readParts } from "../read-job.ts";

interface TestOptions extends Record<string, string | boolean | undefined> {
  parts?: string;
  part?: string;
  on?: string;
  units?: UnitSystem;
  json?: boolean;
}

/** `shadewright bench-test`: the five tests of a part at the bench, what their readings come to, and where that is kept. */
export function addBenchTest(program: Command, io: Io): void {
  const command = program
    .command("bench-test")
    .description("Measure a part at the bench: how it is done, what the readings come to, kept with the part")
    .helpCommand(false);
  for (const test of PART_TESTS) {
    const one = command.command(test.id).description(`${test.title}; without readings it says how`);
    for (const reading of test.reads)
      one.option(`--${optionOf(reading)} <${argumentOf(reading)}>`, helpOf(reading));
    one
      .option("--parts <file>", "parts file in which the result is kept")
      .option("--part <id>", "the part of that file, by its id")
      .option("--on <day>", "day of the test, as 2026-05-31")
      .addOption(
        new Option("--units <system>", "how the result is shown").choices(UNIT_SYSTEMS).default("metric"),
      )
      .option("--json", "print the result as JSON")
      .action((options: TestOptions) => runTest(test, options, io));
  }
}

/** `gapMm` is `--gap`, `cordDiameterMm` `--cord-diameter`. */
function optionOf({ field }: TestReading): string {
  return field.replace(/(?:Mm|N)$/, "").replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** The same as commander hands it over. */
function keyOf(reading: TestReading): string {
  return optionOf(reading).replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

function argumentOf({ unit, times }: TestReading): string {
  if (unit === "force") return times === undefined ? "weight" : "weights";
  return unit === "mm" ? "length" : "number";
}

function helpOf({ label, unit, times }: TestReading): string {
  const how =
    unit === "force"
      ? `, such as '6.2 kg', '13 lb' or '60 N'; a bare number is in kg${times === undefined ? "" : "; one for each time, by commas"}`
      : unit === "mm"
        ? "; a bare number is in mm"
        : "";
  return `${label.toLowerCase()}${how}`;
}

async function runTest(test: PartTest, options: TestOptions, io: Io): Promise<void> {
  const given = test.reads.filter((reading) => options[keyOf(reading)] !== undefined);
  if (given.length === 0) return io.out(options.json ? howJson(test) : howText(test, io.columns));
  const readings = readingsOf(test, options);
  const units = { system: options.units ?? "metric", ruler: SYSTEM_DEFAULT_RULER[options.units ?? "metric"] };
  const result = testResultText(test.id, readings as TestReadings<BenchTest>, units);
  if (result === undefined) {
    throw badInput(
      "(readings)",
      given.map((one) => `--${optionOf(one)}`).join(", "),
      "readings that such a part can give",
    );
  }
  const record = { ...readings, ...(options.on === undefined ? {} : { on: options.on }) };
  const kept = await keep(test, record, options);
  if (options.json)
    return io.out(answerText("shadewright-bench-test", { test: test.id, readings: record, result }));
  io.out(`${wrapped(`${test.title}: ${result}.`, io.columns, "  ")}\n`);
  if (kept !== undefined) io.out(`Kept with ${plainLine(kept)}.\n`);
}

function howJson({ id, title, steps, reads, formula, where, cite }: PartTest): string {
  const readings = reads.map((reading) => ({
    option: `--${optionOf(reading)}`,
    label: reading.label,
    unit: reading.unit,
  }));
  return answerText("shadewright-bench-test", { test: id, title, steps, readings, formula, where, cite });
}

function howText({ title, steps, reads, formula, where, cite }: PartTest, columns: number): string {
  const wrap = (line: string) => wrapped(line, columns - 4, "   ");
  return [
    title,
    ...steps.map((step, i) => wrap(`${i + 1}. ${step}`)),
    wrap(`Then: ${reads.map((reading) => `--${optionOf(reading)}`).join(" ")}`),
    wrap(`${formula}, with ${where}`),
    wrap(`Source: ${citeText(cite)}`),
    "",
  ].join("\n");
}

/** Checks what was typed by the schema of the test, so that trouble is told by the name of the option. */
function readingsOf(test: PartTest, options: TestOptions): Record<string, number | number[]> {
  const values = Object.fromEntries(
    test.reads.map((reading) => [reading.field, readingOf(reading, options)]),
  );
  const parsed = BENCH_TESTS[test.id].safeParse({
    ...values,
    ...(options.on === undefined ? {} : { on: options.on }),
  });
  if (parsed.success) return values;
  const [issue] = parsed.error.issues;
  const reading = test.reads.find(({ field }) => field === issue?.path[0]);
  const field = reading === undefined ? `--${String(issue?.path[0] ?? "on")}` : `--${optionOf(reading)}`;
  throw badInput(
    field,
    String(options[reading === undefined ? "on" : keyOf(reading)]),
    issue?.message ?? "another reading",
  );
}

function readingOf(reading: TestReading, options: TestOptions): number | number[] {
  const name = `--${optionOf(reading)}`;
  const text = options[keyOf(reading)];
  if (typeof text !== "string") throw badInput(name, "nothing", reading.label.toLowerCase());
  if (reading.unit === "force") {
    return reading.times === undefined
      ? forceOf(name, text)
      : text.split(",").map((one) => forceOf(name, one));
  }
  if (reading.unit === "count") {
    if (/^\d+$/.test(text.trim())) return Number(text);
    throw badInput(name, plainLine(text), "a whole number");
  }
  const read = parseLength(text, "mm");
  if (!read.ok) throw badInput(name, plainLine(text), read.reason);
  return read.lengthMm;
}

const NEWTONS: Record<string, number> = {
  "": GRAVITY,
  kg: GRAVITY,
  g: GRAVITY / 1000,
  lb: N_PER_POUND_FORCE,
  n: 1,
};

/** What a luggage scale reads, as N. */
function forceOf(name: string, text: string): number {
  const [, number = "", unit = ""] = /^\s*(\d+(?:\.\d+)?)\s*([a-zA-Z]*)\s*$/.exec(text) ?? [];
  const times = NEWTONS[unit.toLowerCase()];
  if (number === "" || times === undefined)
    throw badInput(name, plainLine(text), "a weight such as 6.2 kg, 13 lb or 60 N");
  return Number(number) * times;
}

/** Writes the readings to the part of the file; undefined where none was named. */
async function keep(
  test: PartTest,
  record: object,
  { parts: path, part: id }: TestOptions,
): Promise<string | undefined> {
  if (path === undefined && id === undefined) return undefined;
  if (path === undefined) throw badInput("--parts", "nothing", "the file that holds the part");
  const file = await readParts(path);
  const list: NonNullable<PartsFile["locks"]> = (file[test.of] ?? []) as NonNullable<PartsFile["locks"]>;
  const at = list.findIndex((part) => part.id === id);
  const found = list[at];
  if (found === undefined) {
    throw badInput(
      "--part",
      id ?? "nothing",
      `one of its ${test.of}: ${list.map((part) => part.id).join(", ") || "it has none"}`,
    );
  }
  const changed = list.with(at, { ...found, tests: { ...found.tests, [test.id]: record } });
  const { format: _, version: __, note, ...own } = file;
  try {
    await writeFile(`${path}.${process.pid}.part`, partsText({ ...own, [test.of]: changed }, note));
    await rename(`${path}.${process.pid}.part`, path);
  } catch (error) {
    throw aboutPath(error, "--parts", path);
  }
  return found.name;
}
