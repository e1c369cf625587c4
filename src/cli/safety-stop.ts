import { type English, spellerOf } from "../job/index.ts";
import type { Plan, ShadePlan } from "../plan/index.ts";
import { jobStamp } from "../safety/index.ts";
import { counted } from "../words/index.ts";
import { nextTurn } from "./next-turn.ts";
import { plainLine, wrapped } from "./plain-text.ts";

/** The plan is done and written, and a rule on cords failed for goods that are sold or given: the program ends with 3. */
export class SafetyStop extends Error {
  readonly shades: readonly ShadePlan[];
  /** Whether files were written. */
  readonly wrote: boolean;

  readonly english: English;

  constructor(plan: Plan, wrote: boolean) {
    const shades = stampedShades(plan);
    super(`rules on cords failed: ${shades.length}`);
    this.shades = shades;
    this.english = plan.english;
    this.wrote = wrote;
  }
}

/** Shades whose every sheet is stamped. */
export function stampedShades(plan: Plan): ShadePlan[] {
  return plan.shades.filter(({ safety }) => safety.stamp);
}

/** Reviewed shades between two looks at whether the user has stopped. */
const PORTION = 50;

/** What the sheets and lists of the whole job say, where a rule on cords stops it; a stop is heard meanwhile. */
export async function stampOf({ shades }: Plan): Promise<string | undefined> {
  const reviewed: Parameters<typeof jobStamp>[0][number][] = [];
  for (const { windowName, safety } of shades) {
    const { stamp, stampText } = safety;
    reviewed.push({ windowName, safety: stampText === undefined ? { stamp } : { stamp, stampText } });
    if (reviewed.length % PORTION === 0) await nextTurn();
  }
  return jobStamp(reviewed);
}

/** What the reviews come to, for machines. */
export function safetyJson(plan: Plan) {
  return {
    stopped: stampedShades(plan).length > 0,
    shades: plan.shades.map(({ shadeId, safety }) => ({
      shadeId,
      stamp: safety.stamp,
      ...(safety.stampText === undefined ? {} : { stampText: safety.stampText }),
      line: safety.line,
      counts: safety.counts,
    })),
  };
}

/** Most shades that are named one by one. */
const MOST_NAMED = 20;

/** Why the program ends with 3, shade by shade. */
export function stopText({ shades, wrote, english }: SafetyStop, columns: number): string {
  const count = counted(shades.length, "shade");
  const named = shades.slice(0, MOST_NAMED).map(({ roomName, windowName, shadeId, safety }) => {
    const text = spellerOf(english)(
      `${roomName} · ${windowName} (${shadeId}): ${safety.stampText ?? safety.line}`,
    );
    return `  ${wrapped(text, columns - 4, "    ")}`;
  });
  if (shades.length > MOST_NAMED) named.push(`  and ${shades.length - MOST_NAMED} more`);
  const files = wrote ? " The files are written, and every sheet, drawing and list says so." : "";
  return [
    plainLine(`Stopped by the child-safety review, with exit code 3: ${count}.`),
    ...named,
    wrapped(
      `The findings say what would do.${files} With --allow-findings the same ends with 0.`,
      columns,
      "",
    ),
    "",
  ].join("\n");
}

export const ALLOW_FINDINGS = [
  "--allow-findings",
  "end with 0 even where the child-safety review stops a shade",
] as const;
