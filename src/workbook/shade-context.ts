import { type Drawing, drawSheet } from "../drawing/index.ts";
import type { Finding } from "../figures/index.ts";
import type { Plan, ShadePlan } from "../plan/index.ts";
import type { CordLockLift, SheetKind, TubeLift } from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import type { Book } from "./typeset/book.ts";

/** All that a page of one shade is made from. */
export interface ShadeContext {
  book: Book;
  plan: Plan;
  shade: ShadePlan;
  /** The shade’s own, and those of the job where the workbook has no page for the job. */
  findings: readonly Finding[];
  /** The day of printing, where it is told. */
  createdOn?: Date;
  /** A length as this maker reads it. */
  length: (lengthMm: number) => string;
  /** A drawing of this shade; each is made once. */
  sheet: (kind: SheetKind, raise?: number) => Drawing;
}

export type LockContext = ShadeContext & { shade: { lift: CordLockLift } };
export type TubeContext = ShadeContext & { shade: { lift: TubeLift } };

export function isLockContext(context: ShadeContext): context is LockContext {
  return context.shade.lift.takeUp === "lock";
}

export function isTubeContext(context: ShadeContext): context is TubeContext {
  return context.shade.lift.takeUp === "tube";
}

export function shadeContext(
  book: Book,
  plan: Plan,
  shade: ShadePlan,
  alone: boolean,
  createdOn?: Date,
): ShadeContext {
  const drawn = new Map<string, Drawing>();
  return {
    book,
    plan,
    shade,
    ...(createdOn === undefined ? {} : { createdOn }),
    findings: alone ? [...plan.findings, ...shade.findings] : shade.findings,
    length: (lengthMm) => lengthText(lengthMm, plan.units),
    sheet: (kind, raise = 0) => {
      const key = `${kind} ${raise}`;
      const drawing = drawn.get(key) ?? drawSheet(kind, plan, shade, { raise });
      drawn.set(key, drawing);
      return drawing;
    },
  };
}
