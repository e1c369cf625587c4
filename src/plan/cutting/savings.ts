import { CLOTH_SHORT } from "../../cost/index.ts";
import { isGrave, type PatchOperation, setPatch } from "../../figures/index.ts";
import { type Job, partsOf, resolveMaking } from "../../job/index.ts";
import { clothLengthText, lengthText } from "../../units/index.ts";
import { patched } from "../patched.ts";
import { plan } from "../plan.ts";
import type { Plan } from "../plan-types.ts";
import { type ClothCutting, type CuttingPlan, type KnownCloth, newClothMm } from "./cutting-plan.ts";
import { CuttingSearch, FIRST_TRIES, planCutting } from "./cutting-search.ts";

/** A change that was tried on the whole job, and the new cloth that it saves. */
export interface Saving {
  id: string;
  label: string;
  /** What it saves, in words. */
  text: string;
  savedMm: number;
  /** Share of the area of the cloth. */
  savedShare: number;
  clothId: string;
  /** The change, ready to press; absent where it is not the maker's alone to make. */
  patch?: PatchOperation[];
}

interface Change {
  id: string;
  label: string;
  patch: PatchOperation[];
  /** Told without a button. */
  only?: boolean;
  /** One cloth alone is looked at. */
  clothId?: string;
  /** What is saved is told for another width of cloth: less area, not less length. */
  widthMm?: number;
}

/** Less than this is not worth a change, mm of cloth. */
const LEAST_MM = 20;
const HEM_MM = 3;
/** Usual widths of furnishing cloth, mm (from memory). */
const WIDTHS_MM = [1120, 1370, 1400, 1500, 2800, 3000];
/** Another width must save so much of the area. */
const LEAST_SHARE = 0.03;

/** Tries between two looks at what a change saves by now. */
const PORTION = 500;

/**
 * What would save cloth: each change is planned and cut anew with the same number of tries, and given only where it
 * takes less than the job as it stands, no more of any other cloth, and brings no new fault. Made and cut with as many
 * tries, the job takes just so much less, or no more than that where a plan is known. Yields now and then, with the saving where there is one.
 *
 * @param known a cutting plan of the job as it stands that may be better than so many tries find: a change that saves
 * otherwise goes on from how it lays the pieces, and gets as many tries as it has had
 */
export function* cuttingSavings(
  job: Job,
  tries = FIRST_TRIES,
  known?: CuttingPlan,
): Generator<Saving | undefined, void, void> {
  const planned = plan(job);
  const before = planCutting(job, planned, tries);
  const knownTries = known ? triesOf(known) : 0;
  const faults = faultsOf(planned);
  const widths = new Map<string, Saving>();
  for (const change of changesOf(job, before)) {
    const changed = patched(job, change.patch);
    const after = plan(changed);
    const isSound = [...faultsOf(after)].every((fault) => faults.has(fault));
    let saving = isSound ? savingOf(change, [before], planCutting(changed, after, tries)) : undefined;
    if (saving && known) {
      const search = new CuttingSearch(changed, after, laidIn(known));
      search.improve(tries);
      saving = savingOf(change, [before, known], search.plan());
      while (saving === undefined && search.tries < knownTries && search.improve(PORTION)) {
        yield undefined;
        saving = savingOf(change, [before, known], search.plan());
      }
    }
    if (change.widthMm === undefined) {
      yield saving;
      continue;
    }
    // Of several widths only the one that takes the least area is reported.
    const best = saving && widths.get(saving.clothId);
    if (saving && (best?.savedShare ?? 0) < saving.savedShare) widths.set(saving.clothId, saving);
    yield undefined;
  }
  yield* widths.values();
}

/** How a plan lays its pieces. */
function laidIn({ cloths }: CuttingPlan): KnownCloth[] {
  return cloths.flatMap(({ clothId, answer }) =>
    "bolts" in answer
      ? [{ clothId, laid: answer.bolts.map(({ boltId, placements }) => ({ boltId, placements })) }]
      : [],
  );
}

function triesOf({ cloths }: CuttingPlan): number {
  return cloths.reduce((sum, { answer }) => sum + ("evaluations" in answer ? answer.evaluations : 0), 0);
}

/** Everything that cannot be made, or works badly. */
function faultsOf({ findings, shades }: Plan): Set<string> {
  return new Set(
    [...findings, ...shades.flatMap((shade) => shade.findings)]
      .filter(isGrave)
      // What is short of stock is no fault of the change: it may be short of less.
      .filter(({ id }) => id !== CLOTH_SHORT)
      .map(({ id, shadeId = "" }) => `${id} ${shadeId}`),
  );
}

/** New cloth of the best of several plans of one job, mm; undefined where none has a plan for it. */
function leastNewMm(cuttings: readonly CuttingPlan[], clothId: string): number | undefined {
  const taken = cuttings.flatMap(({ cloths }) =>
    cloths
      .filter((cloth) => cloth.clothId === clothId && "bolts" in cloth.answer)
      .map((cloth) => newClothMm(cloth)),
  );
  return taken.length === 0 ? undefined : Math.min(...taken);
}

function savingOf(
  { id, label, patch, only, clothId, widthMm }: Change,
  befores: readonly [CuttingPlan, ...CuttingPlan[]],
  after: CuttingPlan,
): Saving | undefined {
  const [{ units, cloths }] = befores;
  let best: Saving | undefined;
  for (const cloth of cloths) {
    const was = leastNewMm(befores, cloth.clothId);
    const is = leastNewMm([after], cloth.clothId);
    // A cloth that nothing is cut from any more has no plan of its own.
    const isGone = !after.cloths.some((one) => one.clothId === cloth.clothId);
    if (was === undefined || (is === undefined && !isGone)) return undefined;
    const savedMm = was - (is ?? 0);
    const isOther = widthMm === undefined || cloth.clothId !== clothId;
    if (isOther && savedMm < -LEAST_MM) return undefined;
    if (clothId !== undefined && cloth.clothId !== clothId) continue;
    const width = cloth.problem.bolts.at(-1)?.widthMm ?? 0;
    const savedShare = was === 0 ? 0 : 1 - ((is ?? 0) * (widthMm ?? width)) / (was * width);
    const isLess = widthMm === undefined ? savedMm > LEAST_MM : savedShare > LEAST_SHARE;
    if (!isLess || (best && best.savedMm >= savedMm)) continue;
    const text =
      widthMm === undefined
        ? `${clothLengthText(savedMm, units)} less of ${cloth.clothName}`
        : `${clothLengthText(is ?? 0, units)} of it instead of ${clothLengthText(was, units)}: ${Math.round(100 * savedShare)}\u00a0% less area. Ask its price`;
    best = { id, label, text, savedMm, savedShare, clothId: cloth.clothId, ...(only ? {} : { patch }) };
  }
  return best;
}

function changesOf(job: Job, before: CuttingPlan): Change[] {
  const habits = resolveMaking(undefined, job.workshop);
  const { units } = job;
  const less = (key: "sideTurnMm" | "bottomTurnMm", what: string): Change[] => {
    const valueMm = habits.hems[key] - HEM_MM;
    if (valueMm < HEM_MM) return [];
    return [
      {
        id: `hem-${key}`,
        label: `${what} ${lengthText(HEM_MM, { ...units, system: "metric", ruler: "1 mm" })} narrower at each turn`,
        patch: setPatch(job, `/workshop/hems/${key}`, valueMm),
      },
    ];
  };
  return [
    ...(habits.lining.railroad === "always"
      ? []
      : [
          {
            id: "turn-lining",
            label: "Turn the lining sideways on the bolt",
            patch: setPatch(job, "/workshop/lining/railroad", "always"),
          },
        ]),
    ...(habits.hems.joins === "under-columns"
      ? []
      : [
          {
            id: "join-under-column",
            label: "Move the joins under columns of rings",
            patch: setPatch(job, "/workshop/hems/joins", "under-columns"),
          },
        ]),
    ...less("sideTurnMm", "Side hems"),
    ...less("bottomTurnMm", "Bottom hems"),
    ...(job.cutting?.way === "free"
      ? []
      : [
          {
            id: "cut-free",
            label: "Cut around the pieces instead of from edge to edge",
            patch: setPatch(job, "/cutting/way", "free"),
          },
        ]),
    ...before.cloths.flatMap((cloth) => [...widthChanges(job, cloth), ...remnantChange(job, cloth)]),
  ];
}

/** The same cloth in a usual width, where it is a cloth of the job and no pattern hangs on the width. */
function widthChanges(job: Job, { clothId, clothName, problem }: ClothCutting): Change[] {
  const at = job.cloths.findIndex(({ id }) => id === clothId);
  const held = problem.bolts.at(-1)?.widthMm ?? 0;
  if (at < 0 || problem.repeat !== undefined) return [];
  return WIDTHS_MM.filter((widthMm) => Math.abs(widthMm - held) > 30).map((widthMm) => ({
    id: `width-${clothId}-${widthMm}`,
    label: `${clothName} in a width of ${lengthText(widthMm, job.units)}`,
    patch: [{ op: "replace", path: `/cloths/${at}/usableWidthMm`, value: widthMm }],
    only: true,
    clothId,
    widthMm,
  }));
}

/** A remnant for what lies last on the new cloth: often a single piece makes the bolt that much longer. */
function remnantChange(job: Job, { clothId, clothName, problem, answer, newBoltId }: ClothCutting): Change[] {
  if (!("bolts" in answer) || !partsOf(job).cloths.some(({ id }) => id === clothId)) return [];
  const bolt = answer.bolts.find(({ boltId }) => boltId === newBoltId);
  if (bolt === undefined || bolt.placements.length < 2) return [];
  const last = bolt.placements.reduce((far, one) =>
    one.yMm + one.lengthMm > far.yMm + far.lengthMm ? one : far,
  );
  const piece = problem.pieces.find(({ id }) => id === last.pieceId);
  if (piece === undefined) return [];
  const widthMm = Math.ceil(piece.widthMm);
  const lengthMm = Math.ceil(piece.lengthMm);
  const value = { id: "wanted-remnant", cloth: clothId, widthMm, lengthMm };
  const path = job.stock.cloth === undefined ? "/stock/cloth" : "/stock/cloth/-";
  const size = `${lengthText(widthMm, job.units)} × ${lengthText(lengthMm, job.units)}`;
  return [
    {
      id: `remnant-${clothId}`,
      label: `A remnant of ${clothName}, ${size}`,
      patch: [{ op: "add", path, value: job.stock.cloth === undefined ? [value] : value }],
      only: true,
      clothId,
    },
  ];
}
