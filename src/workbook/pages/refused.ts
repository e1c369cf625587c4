import { isLockContext, isTubeContext, type ShadeContext } from "../shade-context.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";

/** Locks or drives that stood before the one that was taken, and why each was not. */
export function refusedParts(context: ShadeContext): void {
  const { book } = context;
  const rows: CellLike[][] = [];
  if (isLockContext(context)) {
    for (const { lockName, reason } of context.shade.lift.refusedLocks ?? [])
      rows.push([{ text: lockName, strong: true }, reason]);
  }
  if (isTubeContext(context)) {
    for (const { driveName, reason } of context.shade.lift.refusedDrives ?? [])
      rows.push([{ text: driveName, strong: true }, `It ${reason}.`]);
  }
  if (rows.length === 0) return;
  const what = isLockContext(context) ? "Locks" : "Drives";
  table(book, {
    heading: `${what} that were refused`,
    title: `${what} that were refused, and why`,
    columns: [
      { title: "", share: 1 },
      { title: "Why", share: 3 },
    ],
    rows,
  });
}
