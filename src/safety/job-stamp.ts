import type { SafetyReview } from "../shade-plan/index.ts";

const MOST_NAMED = 4;

/** What the sheets and lists of several shades say: which of them a rule on cords stops. Undefined where none is. */
export function jobStamp(
  shades: readonly { windowName: string; safety: Pick<SafetyReview, "stamp" | "stampText"> }[],
): string | undefined {
  const stopped = shades.filter(({ safety }) => safety.stamp);
  const [first] = stopped;
  if (first === undefined) return undefined;
  if (shades.length === 1) return first.safety.stampText;
  const names = stopped.slice(0, MOST_NAMED).map(({ windowName }) => windowName);
  if (stopped.length > MOST_NAMED) names.push(`${stopped.length - MOST_NAMED} more`);
  const many = stopped.length > 1;
  return `Rules on cords failed for ${stopped.length} of ${shades.length} shades: ${names.join(", ")}. Do not sell, give away or install ${many ? "them as they are" : "it as it is"} planned.`;
}
