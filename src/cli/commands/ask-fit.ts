import type { Command } from "commander";
import { askLock } from "../../diagnose/index.ts";
import { CATALOGUE, partsOf, plannedLock } from "../../job/index.ts";
import { ownFit } from "../../lift/index.ts";
import { planWindow } from "../../plan/index.ts";
import { FIT_VERDICTS, FIT_WORDS, type OwnFit } from "../../shade-plan/index.ts";
import { fineText, parseLength } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { answerText, placeOf } from "../asking.ts";
import { badInput } from "../bad-input.ts";
import type { Io } from "../io.ts";
import { plainLine, wrapped } from "../plain-text.ts";
import { PARTS_OPTION, readJobWith, readParts } from "../read-job.ts";

interface LockOptions {
  cords: string;
  diameter?: string;
  parts?: string;
  json?: boolean;
}

/** `ask lock`: which lock takes so many cords, with no job at all. */
export function addAskLock(ask: Command, io: Io): void {
  ask
    .command("lock")
    .description(
      "Which cord lock takes so many cords, with no job at all: of one diameter, or the cords of a parts file",
    )
    .requiredOption("--cords <number>", "how many cords")
    .option(
      "--diameter <length>",
      "of one cord; a bare number is in mm; with --parts each cord of the file unless given",
    )
    .option(...PARTS_OPTION)
    .option("--json", "print the answer as JSON")
    .action((options: LockOptions) => answerLock(options, io));
}

async function answerLock({ cords, diameter, parts: path, json }: LockOptions, io: Io): Promise<void> {
  const count = countOf(cords);
  const parts = path === undefined ? undefined : await readParts(path);
  if (diameter === undefined) {
    if (parts === undefined || path === undefined) {
      throw badInput(
        "--diameter",
        "nothing",
        "the diameter of one cord, such as 1.4; or --parts, a file with your cords",
      );
    }
    if ((parts.locks ?? []).length === 0)
      throw badInput("locks", "none", `at least one lock in ${plainLine(path)}`);
    const fit = ownFit(partsOf({ cloths: [], hardware: { locks: parts.locks, cords: parts.cords } }), count);
    return io.out(json ? answerText("shadewright-fit", { ...fit }) : fitText(fit, io.columns));
  }
  const locks = parts === undefined ? CATALOGUE.locks : (parts.locks ?? []).map(plannedLock);
  const answers = askLock(count, diameterOf(diameter), locks);
  if (json) return io.out(answerText("shadewright-locks", { answers }));
  const lines = answers.map(({ lock, takes, remarks }) => {
    const words = remarks.map(({ text }) => text).join(" ");
    return `${lock.name}: ${takes ? "takes them." : "does not."}${words === "" ? "" : ` ${words}`}`;
  });
  io.out(`${lines.map((line) => wrapped(line, io.columns - 2, "  ")).join("\n")}\n`);
}

/** `ask fit`: every lock with every cord, for the shade at hand. */
export function addAskFit(ask: Command, io: Io): void {
  ask
    .command("fit")
    .description("Which lock goes with which cord on one shade: fits, inner slots, jams, too many, not known")
    .argument("<job>", "job file, or - for the standard input")
    .option("--shade <id>", "which window; the first of the job unless given")
    .option(...PARTS_OPTION)
    .option("--json", "print the answer as JSON")
    .action(async (path: string, options: { shade?: string; parts?: string; json?: boolean }) => {
      const job = await readJobWith(path, options.parts, io);
      const shade = planWindow(job, ...placeOf(job, options.shade));
      if (shade === undefined) return;
      const fit = ownFit(partsOf(job), shade.grid.columns.length, shade.lift.cordId);
      io.out(options.json ? answerText("shadewright-fit", { ...fit }) : fitText(fit, io.columns));
    });
}

/** Longest name of a part in the head of a table. */
const NAME_CHARS = 24;

function short(name: string): string {
  const plain = plainLine(name);
  return plain.length > NAME_CHARS ? `${plain.slice(0, NAME_CHARS - 1)}…` : plain;
}

/** The table, and under it what stands behind each word but “fits”. */
function fitText({ cordCount, cords, rows }: OwnFit, columns: number): string {
  const heads = cords.map(({ name, diameterMm }) => `${short(name)}, ${fineText(diameterMm)}`);
  const words = Math.max(...FIT_VERDICTS.map((verdict) => FIT_WORDS[verdict].length));
  const first = Math.max(0, ...rows.map(({ lock }) => short(lock.name).length)) + 2;
  const wide = heads.map((head) => Math.max(head.length, words) + 2);
  const line = (lead: string, cells: string[]) =>
    `${lead.padEnd(first)}${cells.map((cell, i) => cell.padEnd(wide[i] ?? 0)).join("")}`.trimEnd();
  const reasons = rows.flatMap(({ lock, cells }) =>
    cells.flatMap(({ reasons: against }, i) =>
      against.length === 0
        ? []
        : [
            wrapped(
              `  ${lock.name} with ${cords[i]?.name ?? ""}: it ${against.join("; it ")}.`,
              columns - 4,
              "    ",
            ),
          ],
    ),
  );
  return [
    `${counted(cordCount, "cord")}:`,
    line("", heads),
    ...rows.map(({ lock, cells }) =>
      line(
        short(lock.name),
        cells.map(({ verdict }) => FIT_WORDS[verdict]),
      ),
    ),
    ...(reasons.length === 0 ? [] : ["", ...reasons]),
    "",
  ].join("\n");
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
