import type { Read } from "../inputs/read-write.ts";

/** A number as it was typed, with a point or a comma; NaN where it is none. */
export function askedNumber(text: string): number {
  return Number(text.trim().replace(",", "."));
}

export function readCount(text: string, least: number, most: number): Read<number> {
  const value = Number(text.trim());
  return Number.isInteger(value) && value >= least && value <= most
    ? { ok: true, value }
    : { ok: false, reason: `a whole number from ${least} to ${most}, not “${text}”` };
}

/** Why a text cannot be read, where it cannot. */
export function reasonOf(read: Read<unknown> | undefined): string | undefined {
  return read?.ok === false ? read.reason : undefined;
}
