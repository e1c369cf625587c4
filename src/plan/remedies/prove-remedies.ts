import type { Finding } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import { findingCards } from "../cards/finding-cards.ts";
import type { CauseAnswer, Plan, ShadePlan } from "../plan-types.ts";
import { withOwn } from "../shade-planner.ts";
import { RemedyTrial } from "./remedy-trial.ts";
import { isWithinFields } from "./within-fields.ts";

/**
 * A plan of the job with those remedies alone that cure and that the fields of the job take: each is planned as if it
 * were pressed. With them comes what answers a whole cause, on one shade and on all that have it.
 * That takes as long as several plans, so `plan` leaves it to who offers them.
 *
 * @param onProgress is told how many shades are done
 */
export function proveRemedies(job: Job, plan: Plan, onProgress: (shades: number) => void = () => {}): Plan {
  const known = new Map<string, Pick<ShadePlan, "findings">>();
  const trial = new RemedyTrial(job, (room, window) => known.get(job.rooms[room]?.windows[window]?.id ?? ""));
  const proven = (findings: readonly Finding[]): Finding[] =>
    findings.map((finding) => ({
      ...finding,
      remedies: finding.remedies.flatMap(
        (remedy) => (isWithinFields(remedy) && trial.proven(finding, remedy)) || [],
      ),
    }));
  const answersIn = (findings: readonly Finding[], leastShades: number): CauseAnswer[] =>
    findingCards(findings).flatMap((card) => {
      if (card.findings.length < 2 || card.shadeIds.length < leastShades) return [];
      const remedies = trial.answersTo(card, isWithinFields);
      return remedies.length === 0 ? [] : [{ causeId: card.id, shadeIds: card.shadeIds, remedies }];
    });
  const found: Finding[] = [];
  const answersOfOne: CauseAnswer[] = [];
  // One shade after the other, each read once: of thousands not all are kept.
  const provenShades = plan.shades.map((shade, n) => {
    const { findings } = shade;
    known.set(shade.shadeId, { findings });
    found.push(...findings);
    // A card of one shade is the same in the job and on the shade.
    answersOfOne.push(...answersIn(findings, 1));
    onProgress(n + 1);
    return withOwn(shade, { findings: proven(findings) });
  });
  return {
    ...plan,
    answers: [...answersIn(found, 2), ...answersOfOne],
    findings: proven(plan.findings),
    shades: provenShades,
  };
}
