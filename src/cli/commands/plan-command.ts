import { type Command, Option } from "commander";
import { jobLessons } from "../../answers/index.ts";
import { type Job, jobText } from "../../job/index.ts";
import { planAndCut, proveRemedies, withChosenParts, withSurface } from "../../plan/index.ts";
import type { PaperKind } from "../../workbook/index.ts";
import { badInput } from "../bad-input.ts";
import { findWindow } from "../find-window.ts";
import type { Io } from "../io.ts";
import { plainLine, wrapped } from "../plain-text.ts";
import type { PlanFilesInput } from "../plan-files.ts";
import { writePlanJson } from "../plan-json.ts";
import { PRINT_HELP, setsOf } from "../print-option.ts";
import { PARTS_OPTION, readJobWith } from "../read-job.ts";
import { findingsText } from "../report.ts";
import { ALLOW_FINDINGS, SafetyStop, stampedShades } from "../safety-stop.ts";
import { speltIo } from "../spelt.ts";
import { timeLeft } from "../time-left.ts";
import { MOST_IN_ONE_BOOK, type WorkbookFiles } from "../workbook-files.ts";
import { leftoversText, writeFiles } from "../write-files.ts";

const PAPERS = ["letter", "a4"] as const satisfies readonly PaperKind[];

interface PlanOptions {
  out?: string;
  paper?: PaperKind;
  shade?: string;
  print?: string;
  files?: WorkbookFiles;
  drawings: boolean;
  json?: boolean;
  surface?: boolean;
  quiet?: boolean;
  parts?: string;
  allowFindings?: boolean;
}

/** `shadewright plan`: plans a job and writes everything that a maker takes to the table. */
export function addPlan(program: Command, io: Io): void {
  program
    .command("plan")
    .description("Plan a job: plan.json, workbook, lists, drawings of each shade, and how its cloth is cut")
    .argument("<job>", "job file, or - for the standard input")
    .option("--out <folder>", "folder to write into; it is made where it is missing")
    .addOption(
      new Option("--paper <size>", "paper of the workbook; else as the job's units have it").choices(PAPERS),
    )
    .option("--print <sets>", PRINT_HELP)
    .addOption(
      new Option(
        "--files <by>",
        `one workbook, or workbook.pdf as a front for the job and one a room or a shade in workbooks/; above ${MOST_IN_ONE_BOOK} windows one a room unless told`,
      ).choices(["one", "room", "shade"]),
    )
    .option(
      "--no-drawings",
      "leave out the drawings of each shade as files of their own; its pages keep theirs",
    )
    .option("--shade <id>", "plan this window alone")
    .option("--surface", "hang the cloth of each shade too, and say where that differs from its plan")
    .option("--quiet", "say nothing but what went wrong")
    .option("--json", "print the plan as JSON; then --out may be left out")
    .option(...PARTS_OPTION)
    .option(...ALLOW_FINDINGS)
    .action((path: string, options: PlanOptions) => planJob(path, options, io));
}

async function planJob(path: string, options: PlanOptions, io: Io): Promise<void> {
  const { out, json } = options;
  if (out === undefined && !json) {
    throw badInput("--out", "nothing", "a folder to write into; or --json, to have the plan printed");
  }
  const sets = options.print === undefined ? undefined : setsOf(options.print);
  const job = await readJobWith(path, options.parts, io);
  if (options.shade !== undefined) findWindow(job, options.shade);
  const only = options.shade === undefined ? {} : { only: [options.shade] };
  const { plan: unproven, cutting } = planAndCut(job, only);
  const proven = proveRemedies(
    job,
    unproven,
    toldOf(unproven.shades.length, options.quiet ? undefined : io.progress),
  );
  const planned = options.surface === true ? withSurface(proven) : proven;
  const words = speltIo(io, planned.english);
  const say = (text: string) => {
    if (!options.quiet) words.err(text);
  };
  const progress = options.quiet ? undefined : io.progress;
  const written =
    out === undefined
      ? []
      : await writePlan(
          {
            ...{ plan: planned, cutting, sets, lessonsOf: jobLessons(job), files: options.files, progress },
            drawings: options.drawings,
            ...(options.parts === undefined ? {} : { job: withChosenParts(job, planned) }),
          },
          options,
          out,
          path,
        );
  progress?.("");
  const lacking = out === undefined ? undefined : await lettersLacking(job);
  if (lacking !== undefined) say(`${wrapped(lacking, io.columns - 2, "  ")}\n\n`);
  say(findingsText(planned, words.columns));
  if (cutting === undefined) {
    say("A cutting plan of so many windows takes a while: `shadewright cut` makes it.\n");
  }
  if (out !== undefined) {
    if (options.parts !== undefined) {
      say("planned-job.json is the job with your parts in it, each shade with those it was planned with.\n");
    }
    if (!options.quiet) {
      io.err(`Wrote ${written.length} files into ${plainLine(out)}; begin with workbook.pdf.\n`);
      io.err(await leftoversText(out, ["lists", "drawings", "rooms", "cutting", "workbooks"], written));
    }
  }
  if (json) await writePlanJson(planned, io.outPart);
  const stamped = stampedShades(planned);
  if (stamped.length > 0 && !options.allowFindings) throw new SafetyStop(planned, out !== undefined);
}

/** Tells now and then at how many shades every remedy was tried: nothing that is worked out takes longer. */
function toldOf(shades: number, progress: Io["progress"]): ((done: number) => void) | undefined {
  if (progress === undefined) return undefined;
  const left = timeLeft();
  return (done) => {
    if (done % TOLD_EVERY === 0)
      progress(`Remedies tried: ${done} of ${shades} shades${left(done / shades)}`);
  };
}

const TOLD_EVERY = 25;

/** A sentence on letters that no page can show, where the job has any. */
async function lettersLacking(job: Job): Promise<string | undefined> {
  const [{ lettersWithoutShape, openFaces, withoutShapeText }, { readWorkbookFonts }] = await Promise.all([
    import("../../letters/index.ts"),
    import("../workbook-fonts.ts"),
  ]);
  return withoutShapeText(lettersWithoutShape(jobText(job), openFaces(readWorkbookFonts()).regular));
}

async function writePlan(
  files: Omit<PlanFilesInput, "paper" | "createdOn">,
  options: PlanOptions,
  out: string,
  jobPath: string,
): Promise<string[]> {
  const paper = options.paper ?? (files.plan.units.system === "imperial" ? "letter" : "a4");
  // The PDF library is large: only this command waits for it.
  const { planFiles } = await import("../plan-files.ts");
  return writeFiles(
    out,
    planFiles({ ...files, paper, createdOn: new Date() }),
    jobPath === "-" ? undefined : jobPath,
  );
}
