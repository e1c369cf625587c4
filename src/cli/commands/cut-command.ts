import { type Command, InvalidArgumentError } from "commander";
import { judgeCutWork, plan } from "../../plan/index.ts";
import { badInput } from "../bad-input.ts";
import { type CutsMadeOptions, withCutsMade } from "../cuts-made.ts";
import { cuttingFiles } from "../cutting-files.ts";
import { cuttingText } from "../cutting-report.ts";
import { cutWithin } from "../cutting-time.ts";
import type { Io } from "../io.ts";
import { writeJson } from "../json-parts.ts";
import { plainLine, wrapped } from "../plain-text.ts";
import { PARTS_OPTION, readJobWith } from "../read-job.ts";
import { ALLOW_FINDINGS, SafetyStop, stampedShades } from "../safety-stop.ts";
import { speltIo } from "../spelt.ts";
import { leftoversText, type OutFile, writeFiles } from "../write-files.ts";

interface CutOptions extends CutsMadeOptions {
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
const MOST_CUTS = 100_000;

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
    .option("--followed <file>", "the cutting.json by which some cuts are made; what is left is planned anew")
    .option("--made <number>", "the last cut of its ticket that is made", wholeUpTo(MOST_CUTS))
    .option("--cloth <id>", "of which cloth; needed where the plan has several")
    .option("--bolt <id>", "of which bolt; needed where several are cut")
    .option("--left <length>", "what is left on the bolt, measured; as planned unless given")
    .option("--short <length>", "instead: how much less is left than there should be")
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
  { out, json, seed, parts, allowFindings, seconds, tries, ...done }: CutOptions,
  io: Io,
): Promise<void> {
  if (out === undefined && !json) {
    throw badInput("--out", "nothing", "a folder to write into; or --json, to have the plan printed");
  }
  const read = await readJobWith(path, parts, io);
  const inWork = await withCutsMade(read, done);
  if (inWork !== undefined && out === undefined) {
    throw badInput("--out", "nothing", "a folder: the job with its cuts made is written there");
  }
  const { job: begun, known = [] } = inWork ?? { job: read };
  const job = seed === undefined ? begun : { ...begun, cutting: { ...begun.cutting, seed } };
  io.progress?.("Planning the shades");
  const planned = plan(job);
  const limits = { seconds, known, ...(tries === undefined ? {} : { tries }) };
  const cutting = await cutWithin(job, planned, limits, io);
  const words = speltIo(io, planned.english);
  words.err(cuttingText(cutting));
  for (const { text } of judgeCutWork(job, planned, cutting))
    words.err(`${wrapped(text, words.columns - 2, "  ")}\n`);
  if (out !== undefined) {
    // Letters come with a large library: only who writes drawings waits for it.
    const [{ letterOutlines }, { readWorkbookFonts }] = await Promise.all([
      import("../../letters/index.ts"),
      import("../workbook-fonts.ts"),
    ]);
    const files = cuttingFiles(planned, cutting, letterOutlines(readWorkbookFonts()), inWork && job);
    await write(files, out, path, io);
    if (inWork !== undefined) {
      io.err(
        "cut-job.json is the job with these cuts made: go on with it, and with the cutting.json beside it.\n",
      );
    }
  }
  if (json) await writeJson(cutting, io.outPart);
  const stamped = stampedShades(planned);
  if (stamped.length > 0 && !allowFindings) throw new SafetyStop(planned, out !== undefined);
}

async function write(files: AsyncGenerator<OutFile>, out: string, jobPath: string, io: Io): Promise<void> {
  const written = await writeFiles(out, told(files, io), jobPath === "-" ? undefined : jobPath).finally(() =>
    io.progress?.(""),
  );
  io.err(`Wrote ${written.length} files into ${plainLine(out)}.\n`);
  io.err(await leftoversText(out, ["cutting"], written));
}

/** The same files, each named on the screen while it is made. */
async function* told(files: AsyncGenerator<OutFile>, io: Io): AsyncGenerator<OutFile> {
  let count = 0;
  for await (const file of files) {
    io.progress?.(`File ${++count}: ${plainLine(file.path)}`);
    yield file;
  }
}
