import { Argument, type Command } from "commander";
import {
  answersCause,
  type Cause,
  diagnose,
  SYMPTOM_NAMES,
  SYMPTOMS,
  type Symptom,
} from "../../diagnose/index.ts";
import { englishOf, type Job, LIFT_TRAITS } from "../../job/index.ts";
import { chooseHardware, type HardwareChoices, isWithinFields } from "../../plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { forceText, lengthText } from "../../units/index.ts";
import { answerText, placeOf } from "../asking.ts";
import type { Io } from "../io.ts";
import { wrapped } from "../plain-text.ts";
import { PARTS_OPTION, readJobWith } from "../read-job.ts";
import { speltIo } from "../spelt.ts";
import { type NumbersOptions, numbersOptions, shadeOf } from "../typed-numbers.ts";
import { addAskAbout } from "./ask-about.ts";
import { addAskFit, addAskLock } from "./ask-fit.ts";

/** `shadewright ask`: questions with a few numbers, or about one shade of a job. */
export function addAsk(program: Command, io: Io): void {
  const ask = program
    .command("ask")
    .description("Ask a question in your own words; which lock, which hardware, what is wrong")
    .helpCommand(false);
  addAskAbout(ask, io);
  addAskLock(ask, io);
  addAskFit(ask, io);
  ask
    .command("hardware")
    .description("Every way to raise one shade with the parts at hand, ranked, and what does not go")
    .argument("<job>", "job file, or - for the standard input")
    .option("--shade <id>", "which window; the first of the job unless given")
    .option(...PARTS_OPTION)
    .option("--json", "print the answer as JSON")
    .action(async (path: string, options: { shade?: string; parts?: string; json?: boolean }) => {
      const job = await readJobWith(path, options.parts, io);
      const [room, window] = placeOf(job, options.shade);
      const found = chooseHardware(job, room, window);
      if (found === undefined) return;
      if (options.json) return io.out(answerText("shadewright-hardware", { ...found }, englishOf(job)));
      const words = speltIo(io, englishOf(job));
      words.out(hardwareText(found, job, words.columns));
    });
  const why = ask
    .command("why")
    .description("What can be behind a symptom, what the numbers of the shade point to first")
    .addArgument(new Argument("<symptom>", "what is wrong").choices(SYMPTOMS))
    .argument("[job]", "job file, or - for the standard input; without one the numbers that are typed");
  for (const option of numbersOptions().filter(({ long }) => long !== "--job")) why.addOption(option);
  why
    .option("--json", "print the answer as JSON")
    .action(
      async (symptom: Symptom, path: string | undefined, options: NumbersOptions & { json?: boolean }) => {
        const { job, room, window } = await shadeOf(
          { ...options, ...(path === undefined ? {} : { job: path }) },
          io,
        );
        const causes = diagnose(job, room, window, symptom).map((cause) => ({
          ...cause,
          remedies: cause.remedies.filter(
            (remedy) => isWithinFields(remedy) && answersCause(job, room, window, cause, remedy),
          ),
        }));
        if (options.json)
          return io.out(answerText("shadewright-causes", { symptom, causes }, englishOf(job)));
        const words = speltIo(io, englishOf(job));
        words.out(causesText(symptom, causes, words.columns));
      },
    );
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
