import type { Remedy } from "../../figures/index.ts";
import type { Plan } from "../plan-types.ts";
import type { FindingCard } from "./finding-cards.ts";

/** What answers a card of a plan whose remedies are proven; the remedies of its one finding where it has no more. */
export function answersOf({ answers = [] }: Pick<Plan, "answers">, card: FindingCard): readonly Remedy[] {
  const { id, findings, shadeIds } = card;
  const [first] = findings;
  if (findings.length === 1 && first !== undefined) return first.remedies;
  const same = answers.find(
    ({ causeId, shadeIds: of }) =>
      causeId === id && of.length === shadeIds.length && of.every((shade) => shadeIds.includes(shade)),
  );
  return same?.remedies ?? [];
}
