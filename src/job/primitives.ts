import * as z from "zod";

/** Largest length that a job may hold, mm: taller than any window that one shade covers. */
export const LONGEST_MM = 20_000;

/** Most cloths, or parts of one kind, that a job may hold. */
export const MOST_PARTS = 500;

/** A length in millimetres, zero allowed. */
export const lengthMm = z.number().min(0).max(LONGEST_MM);

/** A length in millimetres that cannot be zero. */
export const sizeMm = z.number().min(0.01).max(LONGEST_MM);

/** What is taken off or added round an opening, mm. */
export const allowanceMm = z.number().min(0).max(3000);

/** A length of cord, mm: from the highest board that a job can hold to its floor. */
export const cordMm = z
  .number()
  .min(0)
  .max(3 * LONGEST_MM);

/** A dimension of a piece of hardware, mm. */
export const partMm = z.number().min(0.1).max(500);

/** A bending length of cloth, mm: from a fine sheer to a stiff canvas. */
export const bendingMm = z.number().min(3).max(200);

/** A spacing of rows, columns or brackets, mm: closer than a thumb's width nobody sews. */
export const spacingMm = z.number().min(20).max(LONGEST_MM);

/** Usable width of a cloth, mm: from a ribbon-narrow remnant to the widest sheer. */
export const clothWidthMm = z.number().min(100).max(10_000);

/** A width or height of a window or shade, mm: from a pane in a door to a shop front. */
export const spanMm = z.number().min(50).max(12_000);

export const id = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/, "letters, digits, - and _ only, up to 64 of them");

/** Control characters have no place in a name and break sheets and lists. */
const printable = /^[^\p{Cc}]*$/u;

export const nameSchema = z.string().min(1).max(120).regex(printable, "no control characters");
export const noteSchema = z
  .string()
  .max(4000)
  .regex(/^[^\p{Cc}\n\t]*(?:[\n\t][^\p{Cc}\n\t]*)*$/u, "no control characters but line breaks");

/** A day of the calendar: 2026-02-30 is none. */
export const daySchema = z.string().regex(z.regexes.date, "a day of the calendar, as 2026-05-31");

/** A share of one: 0.03 is 3 %. */
export const share = z.number().min(0).max(0.5);

export const moneySchema = z.number().min(0).max(1e7);
export const minutes = z.number().min(0).max(10_000);
export const countSchema = z.number().int().min(0).max(500);
