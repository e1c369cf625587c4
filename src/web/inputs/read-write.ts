import {
  clothLengthText,
  fineText,
  lengthInputText,
  lengthText,
  MM_PER_INCH,
  parseLength,
  rulerText,
  trimmed,
  type UnitChoice,
} from "../../units/index.ts";
import {
  CURRENCY,
  type LengthSpec,
  type NumberSpec,
  type Scale,
  type TextSpec,
  type WrittenSpec,
} from "./spec.ts";

export type Read<V> = { ok: true; value: V } | { ok: false; reason: string };

/** Numbers nearer than this are the same when written and read again. */
const SAME = 1e-6;

const plain = (shown: string) => shown.replaceAll("\u00a0", " ").replaceAll("−", "-");

/** A length as it stands in its input: on the ruler where it lies on a mark, else exact. */
export function writeLength(valueMm: number, spec: LengthSpec, units: UnitChoice): string {
  if (spec.as === "fine") return plain(trimmed(valueMm, 2));
  if (spec.as === "run") return plain(clothLengthText(valueMm, units));
  const onRuler = lengthInputText(valueMm, units);
  const again = readLength(onRuler, { ...spec, minMm: 0 }, units);
  if (again.ok && Math.abs(again.value - valueMm) < SAME) return onRuler;
  return units.system === "metric" ? plain(trimmed(valueMm, 2)) : plain(trimmed(valueMm / MM_PER_INCH, 3));
}

/** A length that stands in for one not given: on the ruler, since nobody typed it. */
function standInLength(valueMm: number, spec: LengthSpec, units: UnitChoice): string {
  return spec.as === "ruler" ? rulerText(valueMm, units.ruler) : writeLength(valueMm, spec, units);
}

/** Reads what a maker wrote; says what would do where it cannot. */
export function readLength(text: string, spec: LengthSpec, units: UnitChoice): Read<number> {
  const bare = units.ruler === "1 mm" ? "mm" : "in";
  const run = units.system === "imperial" ? "yd" : "m";
  const written = spec.as === "run" && /^[\d.,\s]+$/.test(text) ? `${text} ${run}` : text;
  const parsed = parseLength(written, spec.as === "fine" ? "mm" : bare);
  if (!parsed.ok) return parsed;
  const { lengthMm } = parsed;
  const shown = (mm: number) => (spec.as === "fine" ? fineText(mm) : lengthText(mm, units));
  if (lengthMm < spec.minMm) {
    return { ok: false, reason: `${shown(lengthMm)} is too little; at least ${shown(spec.minMm)}` };
  }
  if (lengthMm > spec.maxMm) {
    return { ok: false, reason: `${shown(lengthMm)} is too much; at most ${shown(spec.maxMm)}` };
  }
  return { ok: true, value: lengthMm };
}

/** The unit that stands behind the input. */
export function lengthUnit(spec: LengthSpec, units: UnitChoice): string {
  if (spec.as === "fine") return "mm";
  if (spec.as === "run") return "";
  return units.ruler === "1 mm" ? "mm" : "in";
}

function scaleOf(spec: NumberSpec, units: UnitChoice): Scale {
  return units.system === "imperial" ? spec.imperial : spec.metric;
}

export function writeNumber(value: number, spec: NumberSpec, units: UnitChoice): string {
  const { factor, unit } = scaleOf(spec, units);
  return plain(trimmed(value * factor, unit.startsWith(CURRENCY) ? 2 : 3));
}

export function readNumber(text: string, spec: NumberSpec, units: UnitChoice): Read<number> {
  const { factor } = scaleOf(spec, units);
  const written = text.trim().replace(",", ".");
  if (!/^(\d+\.?\d*|\.\d+)$/.test(written)) {
    return {
      ok: false,
      reason: `“${text.trim()}” is not a number; write it like ${spec.whole ? "6" : "2.5"}`,
    };
  }
  const value = Number(written) / factor;
  const shown = (limit: number) => trimmed(limit * factor, 3);
  if (spec.whole && !Number.isInteger(value)) {
    return {
      ok: false,
      reason: `${written} is not whole; write ${Math.floor(value)} or ${Math.ceil(value)}`,
    };
  }
  // Limits are compared as shown, so that the number in the message is accepted.
  if (value < spec.min - SAME) return { ok: false, reason: `too little; at least ${shown(spec.min)}` };
  if (value > spec.max + SAME) return { ok: false, reason: `too much; at most ${shown(spec.max)}` };
  return { ok: true, value: Math.min(spec.max, Math.max(spec.min, value)) };
}

export function readText(written: string, spec: TextSpec): Read<string> {
  // Pasted text may hold characters that no sheet can print.
  const clean = written.replace(spec.lines ? /[^\P{Cc}\n\t]/gu : /\p{Cc}/gu, " ");
  if (spec.required && clean.trim() === "") return { ok: false, reason: "it needs a name" };
  if (clean.length > spec.most) {
    return { ok: false, reason: `${clean.length} characters; at most ${spec.most}` };
  }
  return { ok: true, value: clean };
}

/** The unit that stands behind a field; money in this currency. */
export function unitOf(spec: WrittenSpec, units: UnitChoice, currency: string): string {
  if (spec.kind === "length") return lengthUnit(spec, units);
  return spec.kind === "number" ? scaleOf(spec, units).unit.replace(CURRENCY, currency) : "";
}

/** A value as it stands in its field; nothing where it is of another kind. */
export function writeValue(value: unknown, spec: WrittenSpec, units: UnitChoice): string {
  if (spec.kind === "text") return typeof value === "string" ? value : "";
  if (typeof value !== "number") return "";
  return spec.kind === "length" ? writeLength(value, spec, units) : writeNumber(value, spec, units);
}

/** What an empty field shows in place of a value. */
export function standInText(value: unknown, spec: WrittenSpec, units: UnitChoice): string {
  const onRuler = spec.kind === "length" && typeof value === "number";
  return onRuler ? standInLength(value, spec, units) : writeValue(value, spec, units);
}

function readAs(text: string, spec: WrittenSpec, units: UnitChoice): Read<unknown> {
  if (spec.kind === "length") return readLength(text, spec, units);
  return spec.kind === "number" ? readNumber(text, spec, units) : readText(text, spec);
}

/** Reads what was written into a field; `takes` asks the schema, which has the last word on it. */
export function readValue(
  text: string,
  spec: WrittenSpec,
  units: UnitChoice,
  takes: (value: unknown) => boolean,
): Read<unknown> {
  const read = readAs(text, spec, units);
  if (!read.ok || takes(read.value)) return read;
  return { ok: false, reason: (spec.kind === "text" && spec.wanted) || "this cannot be kept here" };
}
