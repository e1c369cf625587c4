import * as z from "zod";

/** What JSON can hold. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export const json: z.ZodType<Json> = z.json();

/** A number that no two things share, drawn by who makes the thing. */
export const uniqueId = z.uuid();

/** A moment in UTC, as `2026-05-31T08:15:00.000Z`. */
export const instant = z.iso.datetime();

/** Id of a job, room, window or cloth, as the job document has it. */
export const thingId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/, "letters, digits, - and _ only, up to 64 of them");

/** How often a document has been changed since it was made, which is 0. */
export const versionNumber = z.int().min(0).max(2_147_483_647);

/** A name that people read: no control characters. */
export const shownName = z
  .string()
  .trim()
  .min(1)
  .max(120)
  .regex(/^[^\p{Cc}]*$/u, "no control characters");

/** A secret that was handed over once: who has it may do what it is for. It begins with the id of its workroom. */
export const token = z
  .string()
  .max(120)
  .regex(/^[0-9a-f-]{36}\.[A-Za-z0-9_-]{20,64}$/, "the whole of it, as it was handed over");
