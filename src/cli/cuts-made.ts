import { boughtLengthMm } from "../cost/index.ts";
import type { BoltPlan } from "../cutting/index.ts";
import { type Job, jobText, openJobText } from "../job/index.ts";
import {
  boltName,
  boltsCut,
  buyAsCut,
  type ClothCutting,
  CUTTING_FORMAT,
  CUTTING_VERSION,
  cutsMade,
  isCutSince,
  type KnownCloth,
  leftAfterCut,
  type OpenedCutting,
  type Plan,
  patched,
  plan,
} from "../plan/index.ts";
import { bareUnit, parseLength } from "../units/index.ts";
import { BadInput, badInput } from "./bad-input.ts";
import { plainLine } from "./plain-text.ts";
import { readCutting } from "./read-job.ts";

/** The options by which cuts that are made are told. */
export interface CutsMadeOptions {
  followed?: string;
  made?: number;
  cloth?: string;
  bolt?: string;
  left?: string;
  short?: string;
}

/** A job with the cuts that are made in it, and how its rest was to be cut. */
export interface JobInWork {
  job: Job;
  known: KnownCloth[];
}

/**
 * The job once some cuts of a plan that was followed are made; undefined where none are told.
 *
 * @throws BadInput on a plan, a bolt, a cut or a length that cannot be
 */
export async function withCutsMade(job: Job, options: CutsMadeOptions): Promise<JobInWork | undefined> {
  const { followed, made } = options;
  if (followed === undefined) {
    const stray = (["made", "cloth", "bolt", "left", "short"] as const).find(
      (name) => options[name] !== undefined,
    );
    if (stray === undefined) return undefined;
    throw badInput(
      "--followed",
      "nothing",
      `the cutting.json that was followed: --${stray} is about its cuts`,
    );
  }
  if (made === undefined) throw badInput("--made", "nothing", "the number of the last cut that is made");
  const cutting = await readCutting(followed);
  if (cutting.jobId !== job.id) {
    throw badInput("--followed", `a plan of the job “${plainLine(cutting.jobId)}”`, `one of “${job.id}”`);
  }
  const { cloth, bolt } = boltOf(cutting, options);
  refuseOld(job, cloth, bolt);
  if (!bolt.cuts.some(({ number }) => number === made)) {
    throw badInput("--made", String(made), `a cut of its ticket: 1 to ${bolt.cuts.length}`);
  }
  const planned = plan(job);
  const boughtMm = boughtOf(job, planned, cutting, cloth);
  const leftMm = leftOf(job, options, leftAfterCut(cloth, bolt, made, boughtMm));
  const { patch, still } = cutsMade(job, { cloth, bolt, upTo: made, leftMm });
  const opened = openJobText(jobText(patched(job, patch)));
  if (!opened.ok) throw new BadInput("The job with these cuts in it", opened.issues);
  return { job: opened.job, known: [still] };
}

/** The bolt that is meant, by id or name; the only one where nothing is said. */
function boltOf(
  { cloths }: OpenedCutting,
  { cloth: clothAsked, bolt: boltAsked }: CutsMadeOptions,
): { cloth: ClothCutting; bolt: BoltPlan } {
  const all = boltsCut({ cloths }).filter(({ bolt }) => bolt.cuts.length > 0);
  const ofCloth = all.filter(
    ({ cloth }) => clothAsked === undefined || [cloth.clothId, cloth.clothName].includes(clothAsked),
  );
  const [first] = ofCloth;
  if (
    first === undefined ||
    (clothAsked === undefined && ofCloth.some(({ cloth }) => cloth !== first.cloth))
  ) {
    const given = clothAsked === undefined ? "nothing" : plainLine(clothAsked);
    throw badInput("--cloth", given, `one of: ${namesOf(all.map(({ cloth }) => cloth.clothId))}`);
  }
  const found = ofCloth.filter(
    ({ cloth, bolt }) =>
      boltAsked === undefined || [bolt.boltId, boltName(cloth, bolt.boltId)].includes(boltAsked),
  );
  const [only, ...more] = found;
  if (only !== undefined && more.length === 0) return only;
  const given = boltAsked === undefined ? "nothing" : plainLine(boltAsked);
  throw badInput("--bolt", given, `one of: ${namesOf(ofCloth.map(({ bolt }) => bolt.boltId))}`);
}

function namesOf(ids: readonly string[]): string {
  return [...new Set(ids)].map(plainLine).join(", ");
}

/** A plan from before other cuts were made is no longer to be followed on that bolt. */
function refuseOld(job: Job, cloth: ClothCutting, bolt: BoltPlan): void {
  if (!isCutSince(job, cloth, bolt)) return;
  throw badInput(
    "--followed",
    "a plan of an earlier state of the job: of this bolt other cuts are made",
    "the plan that was made last",
  );
}

function boughtOf(job: Job, planned: Plan, { cloths }: OpenedCutting, cloth: ClothCutting) {
  const { cost } = buyAsCut(job, planned, {
    format: CUTTING_FORMAT,
    version: CUTTING_VERSION,
    jobId: job.id,
    jobName: job.name,
    units: job.units,
    cloths,
    lengths: [],
  });
  const line = cost.shopping.find(({ id }) => id === `cloth-${cloth.clothId}`);
  return line && boughtLengthMm(line);
}

/** What is left as it was measured, or as it should be less what it was short by. */
function leftOf(job: Job, { left, short }: CutsMadeOptions, shouldMm: number): number {
  if (left !== undefined && short !== undefined) {
    throw badInput("--short", JSON.stringify(plainLine(short)), "either --left or --short");
  }
  const lengthOf = (option: string, text: string) => {
    const read = parseLength(text, bareUnit(job.units));
    if (!read.ok) throw badInput(option, JSON.stringify(plainLine(text)), read.reason);
    return read.lengthMm;
  };
  if (left !== undefined) return lengthOf("--left", left);
  const shortMm = short === undefined ? 0 : lengthOf("--short", short);
  if (shortMm > shouldMm) {
    throw badInput(
      "--short",
      JSON.stringify(plainLine(short ?? "")),
      "no more than should be left on the bolt",
    );
  }
  return shouldMm - shortMm;
}
