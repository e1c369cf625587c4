import { evaluate } from "mathjs";
import { expect } from "vitest";
import { type Finding, SEVERITIES, type Working } from "../src/figures/index.ts";
import type { Job } from "../src/job/index.ts";
import { SOURCES } from "../src/sources/index.ts";
import { afterRemedy } from "./rig-inputs.ts";

const UNITS: ReadonlySet<string> = new Set(
  "mm mm2 kg g N Nm g/m g/m2 kg/m3 ratio count deg s min".split(" "),
);
const SETTING =
  /^\/rooms\/0(?:\/windows\/0(?:\/shade(?:\/(?:making(?:\/[a-z]+(?:\/\w+)?)?|face))?|\/opening\/\w+(?:\/\w+)?))?$/;

/** mathjs is a general-purpose library that knows nothing of ours: it reads the formula as printed. */
function valueByMathjs({ formula, inputs }: Working): number {
  const scope = Object.fromEntries(inputs.map(({ symbol, value }) => [symbol, value]));
  const plain = formula.replaceAll("−", "-").replaceAll("·", "*").replaceAll("×", "*");
  return Number(evaluate(plain, { ...scope, π: Math.PI }));
}

/** A formula that gives its figure, with a name and a unit for all that goes in. */
export function expectWholeWorking(working: Working): void {
  const { id, label, symbol, inputs, value, unit, cite } = working;
  const error = Math.abs(valueByMathjs(working) - value);
  expect(error, `${id}: ${working.formula}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
  expect(label, id).toMatch(/^\p{Lu}.{3}/u);
  expect(symbol, id).not.toBe("");
  for (const input of inputs) {
    expect(UNITS, `${id}: ${input.symbol}`).toContain(input.unit);
    expect(input.label.length, `${id}: ${input.symbol}`).toBeGreaterThan(3);
  }
  expect(UNITS, id).toContain(unit);
  expectWholeCite(cite, id);
}

function expectWholeCite({ source, at }: Finding["cite"], id: string): void {
  expect(Object.keys(SOURCES), id).toContain(source);
  if (at !== undefined) expect(at.length, id).toBeGreaterThan(3);
}

/** Whole sentences, with the setting, the source and the figures behind them; `figures` are those that there are. */
export function expectWholeFinding(
  { id, text, path, cite, figures = [], stage, severity, cause }: Finding,
  stages: readonly Finding["stage"][],
  known: ReadonlySet<string>,
): void {
  expect(stages, id).toContain(stage);
  expect(SEVERITIES, id).toContain(severity);
  expect(text, id).toMatch(/^[\p{Lu}“\d].{20,}[.?]$/su);
  expect(text, id).not.toMatch(/ {2}|“”|undefined|NaN|\(\)| \.|,\.|\.\./);
  expect(path, id).toMatch(SETTING);
  expectWholeCite(cite, id);
  for (const figure of figures) expect([...known], id).toContain(figure);
  if (cause !== undefined) expect(cause.says, id).toMatch(/^\p{Lu}.{15,}\.$/u);
}

/** Changes with a name, each of which leaves another job that opens. */
export function expectWholeRemedies({ id, remedies }: Finding, job: Job): void {
  for (const { label, changes, deed, patch } of remedies) {
    expect(label, id).toMatch(/^\p{Lu}.{5}/u);
    for (const said of [changes, deed])
      if (said !== undefined) expect(said.length, label).toBeGreaterThan(10);
    expect(JSON.stringify(afterRemedy(job, { patch })), label).not.toBe(JSON.stringify(job));
  }
}
