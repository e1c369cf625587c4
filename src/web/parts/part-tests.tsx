import { useState } from "react";
import { PART_TESTS, type PartTest, type TestReading, testResultText } from "../../diagnose/index.ts";
import {
  BENCH_TESTS,
  type BenchTest,
  type PartEntry,
  type PartKind,
  type TestReadings,
} from "../../job/index.ts";
import { citeText } from "../../sources/index.ts";
import { GRAVITY, N_PER_POUND_FORCE, trimmed, type UnitChoice } from "../../units/index.ts";
import { type Read, readLength, readNumber } from "../inputs/read-write.ts";
import { count, fine, number } from "../inputs/spec.ts";
import { Typed } from "../inputs/typed.tsx";
import { setTest } from "./bench-store.ts";

interface PartTestsProps {
  kind: PartKind;
  part: PartEntry;
  units: UnitChoice;
}

/** The tests at the bench that belong to a part of this kind: how, the readings, what they come to, and that it is kept. */
export function PartTests({ kind, part, units }: PartTestsProps) {
  return PART_TESTS.filter(({ of }) => of === kind).map((test) => (
    <OneTest key={test.id} test={test} kind={kind} part={part} units={units} />
  ));
}

type Kept = Record<string, number | number[] | string>;

function OneTest({ test, kind, part, units }: PartTestsProps & { test: PartTest }) {
  const kept = (part as { tests?: Record<string, Kept> }).tests?.[test.id];
  const [typed, setTyped] = useState<Record<string, string>>({});
  const shown = (reading: TestReading) => typed[reading.field] ?? writtenReading(reading, kept, units);
  const read = test.reads.map((reading) => ({ reading, found: readReading(shown(reading), reading, units) }));
  const change = (field: string, text: string) => {
    const next = { ...typed, [field]: text };
    setTyped(next);
    const readings = readingsOf(
      test,
      (reading) => next[reading.field] ?? writtenReading(reading, kept, units),
      units,
    );
    if (readings !== undefined) setTest(kind, part, test.id, readings);
  };
  const result = kept && testResultText(test.id, kept as unknown as TestReadings<BenchTest>, units);
  return (
    <details className="more-settings bench-test">
      <summary>
        {test.title}
        {result === undefined ? null : <span className="bench-result"> {result}</span>}
      </summary>
      <ol>
        {test.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <div className="fields">
        {read.map(({ reading, found }) => (
          <Typed
            key={reading.field}
            label={reading.label}
            {...(reading.times === undefined ? {} : { hint: "one for each time, by commas" })}
            {...unitOf(reading, units)}
            value={shown(reading)}
            onChange={(text) => change(reading.field, text)}
            error={found === undefined || found.ok ? undefined : found.reason}
          />
        ))}
      </div>
      <p aria-live="polite">
        {result === undefined
          ? kept === undefined
            ? "Nothing kept yet."
            : "These readings come to no such part: read them again."
          : `Kept with the part: ${result}. The planning takes it before what the seller states.`}{" "}
        {kept === undefined ? null : (
          <button
            type="button"
            className="button-plain small"
            onClick={() => {
              setTyped({});
              setTest(kind, part, test.id, undefined);
            }}
          >
            Take the readings away<span className="hidden-words">: {test.title}</span>
          </button>
        )}
      </p>
      <p className="quiet small">
        {test.formula}, with {test.where}. {citeText(test.cite)}
      </p>
    </details>
  );
}

function unitOf({ unit }: TestReading, { system }: UnitChoice): { unit?: string } {
  if (unit === "count") return {};
  return { unit: unit === "mm" ? "mm" : system === "imperial" ? "lb" : "kg" };
}

/** Newtons of what a luggage scale reads. */
function scaleN({ system }: UnitChoice): number {
  return system === "imperial" ? N_PER_POUND_FORCE : GRAVITY;
}

function writtenReading({ field, unit }: TestReading, kept: Kept | undefined, units: UnitChoice): string {
  const value = kept?.[field];
  const write = (one: number) => trimmed(unit === "force" ? one / scaleN(units) : one, 2);
  if (Array.isArray(value)) return value.map(write).join(", ");
  return typeof value === "number" ? write(value) : "";
}

/** Undefined while nothing is written. */
function readReading(
  text: string,
  { label, unit, times }: TestReading,
  units: UnitChoice,
): Read<number | number[]> | undefined {
  if (text.trim() === "") return undefined;
  if (unit === "count") return readNumber(text, count(label, 5, 200), units);
  if (unit === "mm") return readLength(text, fine(label, 0, 20_000), units);
  const one = (part: string): Read<number> => {
    const found = readNumber(part, number(label, 0.001, 500), units);
    return found.ok ? { ok: true, value: found.value * scaleN(units) } : found;
  };
  if (times === undefined) return one(text);
  const all = text
    .split(",")
    .filter((part) => part.trim() !== "")
    .map(one);
  const wrong = all.find((found) => !found.ok);
  return wrong ?? { ok: true, value: all.flatMap((found) => (found.ok ? [found.value] : [])) };
}

function readingsOf(
  test: PartTest,
  textOf: (reading: TestReading) => string,
  units: UnitChoice,
): object | undefined {
  const values: Record<string, unknown> = {};
  for (const reading of test.reads) {
    const found = readReading(textOf(reading), reading, units);
    if (!found?.ok) return undefined;
    values[reading.field] = found.value;
  }
  const today = new Date().toISOString().slice(0, 10);
  const parsed = BENCH_TESTS[test.id].safeParse({ ...values, on: today });
  return parsed.success ? parsed.data : undefined;
}
