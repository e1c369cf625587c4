import { type TypedNumber, type TypedShade, typedJob, USUAL_SHADE } from "../../answers/index.ts";
import type { Job } from "../../job/index.ts";
import { lengthInputText, type UnitChoice } from "../../units/index.ts";
import { type Read, readLength } from "../inputs/read-write.ts";
import { fine, type LengthSpec, length, span } from "../inputs/spec.ts";
import { askedNumber, reasonOf } from "./asked-number.ts";

type LengthKey = Exclude<TypedNumber, "massGsm" | "headrailMm">;

export const NUMBER_SPECS: Record<LengthKey, LengthSpec> = {
  widthMm: span("Finished width"),
  lengthMm: span("Finished length"),
  rowsApartMm: length("Rows at most apart"),
  columnsApartMm: length("Columns at most apart"),
  cordMm: fine("Cord, diameter", 0.3, 6),
  clothMm: length("Usable width of the cloth"),
  repeatMm: length("One pattern repeat, 0 for plain"),
};
export const LENGTH_KEYS = Object.keys(NUMBER_SPECS) as LengthKey[];
export type TypedTexts = Partial<Record<LengthKey | "massGsm", string>>;

export interface ReadNumbers {
  texts: Record<LengthKey | "massGsm", string>;
  errors: TypedTexts;
  /** Absent while a number cannot be read. */
  job?: Job;
}

/** What was typed, what is wrong with it, and the job of one shade that it makes. */
export function readNumbers(typed: TypedTexts, units: UnitChoice): ReadNumbers {
  const texts = { massGsm: typed.massGsm ?? String(USUAL_SHADE.massGsm) } as ReadNumbers["texts"];
  const errors: TypedTexts = {};
  const shade: TypedShade = { ...USUAL_SHADE, massGsm: askedNumber(texts.massGsm) };
  if (Number.isNaN(shade.massGsm)) errors.massGsm = `a number, not “${texts.massGsm}”`;
  for (const key of LENGTH_KEYS) {
    texts[key] = typed[key] ?? usualText(key, units);
    const read: Read<number> = readLength(texts[key], NUMBER_SPECS[key], units);
    if (read.ok) shade[key] = read.value;
    else errors[key] = reasonOf(read) ?? "a length";
  }
  if (Object.keys(errors).length > 0) return { texts, errors };
  const made = typedJob(shade, units);
  if (made.ok) return { texts, errors, job: made.job };
  for (const { number, given, wanted } of made.issues) {
    if (number !== undefined && number !== "headrailMm") errors[number] = `${wanted}, not ${given}`;
  }
  return { texts, errors };
}

function usualText(key: LengthKey, units: UnitChoice): string {
  return key === "cordMm" ? String(USUAL_SHADE.cordMm) : lengthInputText(USUAL_SHADE[key], units);
}
