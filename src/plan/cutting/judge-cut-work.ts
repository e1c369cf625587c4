import type { Finding } from "../../figures/index.ts";
import { type Job, partsOf } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import { listed } from "../../words/index.ts";
import type { Plan } from "../plan-types.ts";
import { clothPieces } from "./cloth-pieces.ts";
import { type CuttingPlan, pieceNames } from "./cutting-plan.ts";

/** What was laid by hand or cut already and no longer agrees with the job. */
export function judgeCutWork(job: Job, plan: Plan, cutting: CuttingPlan): Finding[] {
  return [...judgeCutPieces(job, plan), ...judgeLaidPieces(job, cutting), ...judgeLots(job, cutting)];
}

/** Pieces that were cut to another size than is needed now. */
function judgeCutPieces(job: Job, { shades, units }: Plan): Finding[] {
  const { cutCloth = [] } = job;
  if (cutCloth.length === 0) return [];
  const cut = new Set(cutCloth.map(({ cloth }) => cloth));
  const all = clothPieces(
    shades,
    partsOf(job).cloths.filter(({ id }) => cut.has(id)),
  );
  return cutCloth.flatMap(({ cloth: clothId, pieces }, c) => {
    const needed = new Map((all.get(clothId) ?? []).map((piece) => [piece.id, piece]));
    return pieces.flatMap(({ piece: id, widthMm, lengthMm }, p) => {
      const now = needed.get(id);
      if (now === undefined) return [];
      const shortMm = Math.max(now.widthMm - widthMm, now.lengthMm - lengthMm);
      const overMm = Math.max(widthMm - now.widthMm, lengthMm - now.lengthMm);
      if (shortMm <= CUT_TOLERANCE_MM && overMm <= CUT_TOLERANCE_MM) return [];
      const isShort = shortMm > CUT_TOLERANCE_MM;
      const what = isShort ? "too small now: cut it again, or change the shade back" : "to be trimmed";
      return [
        cutFinding({
          id: "cutting.cut-differs",
          severity: isShort ? "fix" : "note",
          path: `/cutCloth/${c}/pieces/${p}`,
          text: `${now.shade}: ${now.part} was cut ${sizeText(widthMm, lengthMm, units)} and should be ${sizeText(now.widthMm, now.lengthMm, units)}. It is ${what}.`,
        }),
      ];
    });
  });
}

/** Nobody cuts cloth to less, mm. */
const CUT_TOLERANCE_MM = 1;

function sizeText(widthMm: number, lengthMm: number, units: UnitChoice): string {
  return `${lengthText(widthMm, units)} by ${lengthText(lengthMm, units)}`;
}

/** Pieces that could not stay where they were laid. */
function judgeLaidPieces({ laidPieces = [] }: Job, { cloths }: CuttingPlan): Finding[] {
  return cloths.flatMap((cloth) => {
    const { answer, clothId, clothName } = cloth;
    const names = pieceNames(cloth);
    return ("bolts" in answer ? (answer.notHeld ?? []) : []).map(({ pieceId, reason }) =>
      cutFinding({
        id: "cutting.not-where-laid",
        severity: "note",
        path: `/laidPieces/${laidPieces.findIndex((laid) => laid.cloth === clothId && laid.piece === pieceId)}`,
        text: `${clothName}: ${names.get(pieceId) ?? pieceId} does not lie where it was laid by hand: ${worded(reason, names)}.`,
      }),
    );
  });
}

/** What is seen of a shade and would come from two dye lots. */
function judgeLots({ cutCloth = [] }: Job, { cloths }: CuttingPlan): Finding[] {
  return cloths.flatMap(({ answer, clothId, clothName, problem }) =>
    ("bolts" in answer ? (answer.otherLots ?? []) : []).map(({ lotGroup, lot }) => {
      const [first, ...more] = problem.pieces.filter((piece) => piece.lotGroup === lotGroup);
      const still = [first, ...more].map((piece) => piece?.part ?? "");
      return cutFinding({
        id: "cutting.other-lot",
        severity: "fix",
        path: `/cutCloth/${cutCloth.findIndex(({ cloth }) => cloth === clothId)}`,
        text: `${first?.shade ?? clothName}: part of it is cut from the dye lot “${lot}” of ${clothName}, which has no cloth enough for the rest (${listed(still)}). Ask for more of that lot, or cut all of it anew from another: two lots side by side show.`,
      });
    }),
  );
}

/** The check knows pieces by id. */
function worded(reason: string, names: ReadonlyMap<string, string>): string {
  return reason.replace(/[^\s,:]+/g, (word) => names.get(word) ?? word);
}

function cutFinding(finding: Pick<Finding, "id" | "severity" | "path" | "text">): Finding {
  return { ...finding, stage: "cost", cite: cite("arithmetic"), remedies: [] };
}
