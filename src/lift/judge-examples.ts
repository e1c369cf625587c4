import type { Finding } from "../figures/index.ts";
import type { PartKind } from "../job/index.ts";
import type { Lift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { listed } from "../words/index.ts";
import type { LiftShade } from "./lift-input.ts";

/** Kinds of parts that a lift is made of. */
const OF_A_LIFT: readonly PartKind[] = ["locks", "cords", "eyes", "rings", "tubes", "drives"];

interface Example {
  kind: PartKind;
  name: string;
}

/**
 * Who has parts in hand is told which others are examples that nobody sells; lock and drive say so themselves. Who has
 * none sees examples everywhere.
 */
export function judgeExamples(shade: LiftShade, lift: Pick<Lift, "takeUp">): Finding[] {
  const { parts } = shade;
  const half = (parts.halfKnown ?? []).filter(({ kind }) => OF_A_LIFT.includes(kind));
  const hasOwn = OF_A_LIFT.some((kind) => parts[kind].some(({ demo }) => demo !== true));
  const examples = hasOwn || half.length > 0 ? examplesIn(shade, lift) : [];
  if (examples.length === 0) return [];
  const names = [...new Set(examples.map(({ name }) => `“${name}”`))];
  const waiting = half.filter(({ kind }) => examples.some((example) => example.kind === kind));
  const own =
    waiting.length === 0
      ? "Enter those in your hand."
      : `Too little is known of ${listed(waiting.map(({ name }) => `“${name}”`))}, your own: measure what is missing, and it is planned with.`;
  return [
    {
      stage: "lift",
      shadeId: shade.shadeId,
      id: "lift.example-parts",
      severity: "note",
      path: `${shade.path}/shade/making/lift`,
      text: `${listed(names)} ${names.length === 1 ? "is" : "are"} invented for demonstration. ${own}`,
      cite: cite("demo"),
      remedies: [],
    },
  ];
}

function examplesIn({ cord, eye, turnEye, ring, tube }: LiftShade, { takeUp }: Pick<Lift, "takeUp">) {
  const used: (Example & { demo?: boolean | undefined })[] = [
    { kind: "cords", ...cord },
    { kind: "rings", ...ring },
    ...(takeUp === "tube" ? [{ kind: "tubes" as const, ...tube }] : [{ kind: "eyes" as const, ...eye }]),
    ...(takeUp === "cleat" ? [{ kind: "eyes" as const, ...turnEye }] : []),
  ];
  return used.filter(({ demo }) => demo === true);
}
