import { Argument, type Command } from "commander";
import {
  answersCause,
  askLock,
  type Cause,
  diagnose,
  SYMPTOM_NAMES,
  SYMPTOMS,
  type Symptom,
} from "../../diagnose/index.ts";
import { CATALOGUE, type Job, LIFT_TRAITS } from "../../job/index.ts";
import { chooseHardware, type HardwareChoices, isWithinFields } from "../../plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { forceText, lengthText, parseLength } from "../../units/index.ts";
import { badInput } from "../bad-input.ts";
import { findWindow } from "../find-window.ts";
import type { Io } from "../io.ts";
import { plainLine, wrapped } from "../plain-text.ts";
import { readJob } from "../read-job.ts";

/** `shadewright ask`: questions with a few numbers, or about one shade of a job. */
export function addAsk(program: Command, io: Io): void {
  const ask = program
    .command("ask")
    .description("Ask a question: which lock, which hardware, what is wrong")
    .helpCommand(false);
  ask
    .command("lock")
    .description("Which cord lock takes so many cords of one diameter, with no job at all")
    .requiredOption("--cords <number>", "how many cords")
    .requiredOption("--diameter <length>", "of one cord; a bare number is in mm")
    .option("--json", "print the answer as JSON")
    .action((options: { cords: string; diameter: string; json?: boolean }) => {
      const answers = askLock(countOf(options.cords), diameterOf(options.diameter), CATALOGUE.locks);
      if (options.json) return io.out(json("shadewright-locks", { answers }));
      const lines = answers.map(({ lock, takes, remarks }) => {
        const words = remarks.map(({ text }) => text).join(" ");
        return `${lock.name}: ${takes ? "takes them." : "does not."}${words === "" ? "" : ` ${words}`}`;
      });
      io.out(`${lines.map((line) => wrapped(line, io.columns - 2, "  ")).join("\n")}\n`);
    });
  ask
    .command("hardware")
    .description("Every way to raise one shade with the parts at hand, ranked, and what does not go")
    .argument("<job>", "job file, or - for the standard input")
    .option("--shade <id>", "which window; the first of the job unless given")
    .option("--json", "print the answer as JSON")
    .action(async (path: string, options: { shade?: string; json?: boolean }) => {
      const job = await readJob(path, io);
      const [room, window] = placeOf(job, options.shade);
      const found = chooseHardware(job, room, window);
      if (found === undefined) return;
      io.out(
        options.json ? json("shadewright-hardware", { ...found }) : hardwareText(found, job, io.columns),
      );
    });
  ask
    .command("why")
    .description("What can be behind a symptom of one shade, what its own numbers point to first")
    .addArgument(new Argument("<symptom>", "what is wrong").choices(SYMPTOMS))
    .argument("<job>", "job file, or - for the standard input")
    .option("--shade <id>", "which window; the first of the job unless given")
    .option("--json", "print the answer as JSON")
    .action(async (symptom: Symptom, path: string, options: { shade?: string; json?: boolean }) => {
      const job = await readJob(path, io);
      const place = placeOf(job, options.shade);
      const causes = diagnose(job, ...place, symptom).map((cause) => ({
        ...cause,
        remedies: cause.remedies.filter(
          (remedy) => isWithinFields(remedy) && answersCause(job, ...place, cause, remedy),
        ),
      }));
      io.out(
        options.json
          ? json("shadewright-causes", { symptom, causes })
          : causesText(symptom, causes, io.columns),
      );
    });
}

function json(format: string, body: object): string {
  return `${JSON.stringify({ format, version: 2, ...body }, null, 2)}\n`;
}

function countOf(text: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= 60) return count;
  throw badInput("--cords", plainLine(text), "a whole number from 1 to 60");
}

function diameterOf(text: string): number {
  const read = parseLength(text, "mm");
  if (!read.ok) throw badInput("--diameter", plainLine(text), read.reason);
  if (read.lengthMm >= 0.3 && read.lengthMm <= 6) return read.lengthMm;
  throw badInput("--diameter", plainLine(text), "0.3 to 6 mm");
}

/** Where the shade stands in the job; the first unless it is named. */
function placeOf(job: Job, shadeId: string | undefined): [room: number, window: number] {
  if (shadeId !== undefined) return findWindow(job, shadeId);
  const room = job.rooms.findIndex(({ windows }) => windows.length > 0);
  if (room < 0) throw badInput("(file)", "a job without windows", "a job with at least one");
  return [room, 0];
}

function hardwareText({ search, choices }: HardwareChoices, { units }: Job, columns: number): string {
  const lines = choices.map(({ set, pullN, raisedHeightMm, stops, fixes, safety, chosen }) => {
    const parts = [set.lock, set.eye, set.tube, set.drive, set.cord].flatMap((part) => part?.name ?? []);
    const pull = LIFT_TRAITS[set.kind].poweredBy === "motor" ? "no pull" : `pull ${forceText(pullN, units)}`;
    return `${chosen ? "* " : "  "}${parts.join(", ")}: ${pull}, raised ${lengthText(raisedHeightMm, units)}, ${stops} stop, ${fixes} fix, cord rules ${safety.failed} failed and ${safety["not-proven"]} not proven`;
  });
  const refused = search.refusals.map(({ text }) => `  ${text}`);
  const wrap = (line: string) => wrapped(line, columns - 4, "    ");
  return [
    `${search.considered} sets of parts, ${search.feasible} of which go together on this shade. The best of each kind (* as it is):`,
    ...lines.map(wrap),
    ...(refused.length === 0 ? [] : ["", "What does not go:", ...refused.map(wrap)]),
    "",
  ].join("\n");
}

const EVIDENCE: Record<Cause["evidence"], string> = {
  "points-to-it": "the numbers point to it",
  "cannot-tell": "only a look can tell",
  "speaks-against": "the numbers speak against it",
};

function causesText(symptom: Symptom, causes: readonly Cause[], columns: number): string {
  const wrap = (line: string) => wrapped(line, columns - 4, "    ");
  return [
    SYMPTOM_NAMES[symptom],
    ...causes.flatMap(({ title, evidence, why, test, cure, remedies, cite }, i) => [
      `${i + 1}. ${title} (${EVIDENCE[evidence]})`,
      wrap(`    ${why}`),
      wrap(`    To be sure: ${test}`),
      wrap(`    Cure: ${cure}`),
      ...(remedies.length === 0
        ? []
        : [wrap(`    Would do: ${remedies.map(({ label }) => label).join("; or: ")}`)]),
      wrap(`    Source: ${citeText(cite)}`),
    ]),
    "",
  ].join("\n");
}
