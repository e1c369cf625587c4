import type { Catalogue } from "../../job/index.ts";

interface Labelled {
  label: string;
  hint?: string;
  /** What it is stands beside it already: the label is for screen readers alone. */
  quiet?: boolean;
}

/**
 * How a length is written: `ruler` on the maker's ruler, `fine` in millimetres as hardware is sold,
 * `run` in yards or metres off a bolt or spool.
 */
export interface LengthSpec extends Labelled {
  kind: "length";
  as: "ruler" | "fine" | "run";
  minMm: number;
  maxMm: number;
}

export interface Scale {
  /** Shown number for one of what the job holds. */
  factor: number;
  unit: string;
}

export interface NumberSpec extends Labelled {
  kind: "number";
  min: number;
  max: number;
  whole?: boolean;
  metric: Scale;
  imperial: Scale;
}

/** A word of the job's currency stands as the unit where `unit` is this. */
export const CURRENCY = "¤";

export interface ChoiceSpec extends Labelled {
  kind: "choice";
  options: Record<string, string>;
  /** Options whose value is a number in the job. */
  numeric?: boolean;
}

export interface FlagSpec extends Labelled {
  kind: "flag";
  yes: string;
  no: string;
}

export interface TextSpec extends Labelled {
  kind: "text";
  most: number;
  lines?: boolean;
  /** The schema asks for at least one character. */
  required?: boolean;
  /** What would do, where the schema does not take every text. */
  wanted?: string;
}

/** One of the cloths or parts at hand, by id. */
export interface PartSpec extends Labelled {
  kind: "part";
  of: keyof Catalogue;
  /** Word for having none, where the job may say so. */
  none?: string;
}

export type WrittenSpec = LengthSpec | NumberSpec | TextSpec;
export type ChosenSpec = ChoiceSpec | FlagSpec | PartSpec;
export type FieldSpec = WrittenSpec | ChosenSpec;

const LONGEST_MM = 20_000;

/** A length that may be zero. */
export function length(label: string, hint?: string): LengthSpec {
  return { kind: "length", as: "ruler", label, hint, minMm: 0, maxMm: LONGEST_MM };
}

/** A length that cannot be zero. */
export function size(label: string, hint?: string): LengthSpec {
  return { ...length(label, hint), minMm: 0.01 };
}

/** The side of an opening. */
export function span(label: string): LengthSpec {
  return { ...length(label), minMm: 50, maxMm: 12_000 };
}

/** A small part, in millimetres in either system. */
export function fine(label: string, minMm = 0.01, maxMm = LONGEST_MM, hint?: string): LengthSpec {
  return { kind: "length", as: "fine", label, hint, minMm, maxMm };
}

export function run(label: string, minMm: number, maxMm: number, hint?: string): LengthSpec {
  return { kind: "length", as: "run", label, hint, minMm, maxMm };
}

export function number(label: string, min: number, max: number, unit = "", hint?: string): NumberSpec {
  const scale = { factor: 1, unit };
  return { kind: "number", label, hint, min, max, metric: scale, imperial: scale };
}

export function count(label: string, min: number, max: number, hint?: string): NumberSpec {
  return { ...number(label, min, max, "", hint), whole: true };
}

export function percent(label: string, hint?: string): NumberSpec {
  const scale = { factor: 100, unit: "%" };
  return { kind: "number", label, hint, min: 0, max: 0.5, metric: scale, imperial: scale };
}

export function money(label: string, hint?: string): NumberSpec {
  return number(label, 0, 1e7, CURRENCY, hint);
}

/** Money or minutes for each metre; shown for each yard to makers who buy by the yard. */
export function perRun(label: string, max: number, unit: string): NumberSpec {
  return {
    kind: "number",
    label,
    min: 0,
    max,
    metric: { factor: 1, unit: `${unit} a metre` },
    imperial: { factor: 0.9144, unit: `${unit} a yard` },
  };
}

export function choice(label: string, options: Record<string, string>, hint?: string): ChoiceSpec {
  return { kind: "choice", label, options, hint };
}

export function text(label: string, most: number, hint?: string): TextSpec {
  return { kind: "text", label, most, hint };
}

export function part(label: string, of: keyof Catalogue, none?: string): PartSpec {
  return none === undefined ? { kind: "part", label, of } : { kind: "part", label, of, none };
}
