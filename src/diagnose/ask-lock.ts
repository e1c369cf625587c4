import type { Cord, CordLock } from "../job/index.ts";
import { lockMisfits } from "../lift/index.ts";

/** What a lock comes to for so many cords of one diameter, with no shade at all. */
export interface LockAnswer {
  lock: CordLock;
  takes: boolean;
  /** What speaks against it or must be tested, as sentences. */
  remarks: { severity: "stop" | "fix" | "note" | "unproven"; text: string }[];
}

/** “Eight cords of 1.4 mm: which lock?” The locks that take them first, each other with why not. */
export function askLock(cords: number, diameterMm: number, locks: readonly CordLock[]): LockAnswer[] {
  const cord: Cord = { id: "asked", name: "cord", diameterMm };
  return locks
    .map((lock) => {
      const found = lockMisfits(lock, cord, cords, "you have");
      return {
        lock,
        takes: found.every(({ severity }) => severity !== "stop"),
        remarks: found.map(({ severity, reason }) => ({ severity, text: `The lock ${reason}.` })),
      };
    })
    .sort((a, b) => Number(b.takes) - Number(a.takes) || a.remarks.length - b.remarks.length);
}
