import { type Command, InvalidArgumentError } from "commander";
import { type CuttingPlan, plan } from "../../plan/index.ts";
import { jobStamp } from "../../safety/index.ts";
import { badInput } from "../bad-input.ts";
import { cuttingFiles } from "../cutting-files.ts";
import { cuttingText } from "../cutting-report.ts";
import { cutWithin } from "../cutting-time.ts";
import type { Io } from "../io.ts";
import { plainLine } from "../plain-text.ts";
import { PARTS_OPTION, readJobWith } from "../read-job.ts";
import { ALLOW_FINDINGS, SafetyStop, stampedShades } from "../safety-stop.ts";
import { leftoversText, writeFiles } from "../write-files.ts";

interface CutOptions {
  out?: string;
  tries?: number;
  seconds: number;
  seed?: number;
  json?: boolean;
  parts?: string;
  allowFindings?: boolean;
}

/** More takes minutes and seldom helps. */
const MOST_TRIES = 5_000_000;
const MOST_SECONDS = 86_400;
const USUAL_SECONDS = 10;

/** `shadewright cut`: how everything of a job is cut from bolts, remnants and lengths. */
export function addCut(program: Command, io: Io): void {
  program
    .command("cut")
    .description("Lay all pieces of a job on its cloths and lengths: tickets, drawings, what is kept")
    .argument("<job>", "job file, or - for the standard input")
    .option("--out <folder>", "folder to write into; it is made where it is missing")
    .option(
      "--seconds <number>",
      "time after which the best plan is taken; Ctrl-C takes it at once",
      wholeUpTo(MOST_SECONDS),
      USUAL_SECONDS,
    )
    .option("--tries <number>", "plans to try, where that takes less time", wholeUpTo(MOST_TRIES))
    .option("--seed <number>", "another seed tries other plans", wholeUpTo(2 ** 31 - 1))
    .option("--json", "print the cutting plan as JSON; then --out may be left out")
    .option(...PARTS_OPTION)
    .option(...ALLOW_FINDINGS)
    .action((path: string, options: CutOptions) => cutJob(path, options, io));
}

function wholeUpTo(most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value > most) {
      throw new InvalidArgumentError(`It takes a whole number from 0 to ${most}.`);
    }
    return value;
  };
}

async function cutJob(
  path: string,
  { out, json, seed, parts, allowFindings, ...limits }: CutOptions,
  io: Io,
): Promise<void> {
  if (out === undefined && !json) {
    throw badInput("--out", "nothing", "a folder to write into; or --json, to have the plan printed");
  }
  const read = await readJobWith(path, parts, io);
  const job = seed === undefined ? read : { ...read, cutting: { ...read.cutting, seed } };
  const planned = plan(job);
  const cutting = await cutWithin(job, planned, limits, io);
  io.err(cuttingText(cutting));
  if (out !== undefined) await write(cutting, jobStamp(planned.shades), out, path, io);
  if (json) io.out(`${JSON.stringify(cutting, null, 2)}\n`);
  const stamped = stampedShades(planned);
  if (stamped.length > 0 && !allowFindings) throw new SafetyStop(stamped, out !== undefined);
}

async function write(
  cutting: CuttingPlan,
  stamp: string | undefined,
  out: string,
  jobPath: string,
  io: Io,
): Promise<void> {
  const written = await writeFiles(out, cuttingFiles(cutting, stamp), jobPath === "-" ? undefined : jobPath);
  io.err(`Wrote ${written.length} files into ${plainLine(out)}.\n`);
  io.err(await leftoversText(out, ["cutting"], written));
}
