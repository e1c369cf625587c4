import { type Command, Option } from "commander";
import { jobLessons } from "../../answers/index.ts";
import { plan } from "../../plan/index.ts";
import { makeWorkbook } from "../../workbook/index.ts";
import type { Io } from "../io.ts";
import { plainLine } from "../plain-text.ts";
import { type NumbersOptions, numbersOptions, shadeOf } from "../typed-numbers.ts";
import { readWorkbookFonts } from "../workbook-fonts.ts";
import { writeFiles } from "../write-files.ts";

interface LessonOptions extends NumbersOptions {
  out: string;
  paper?: "letter" | "a4";
}

/** `shadewright lesson`: the lessons of one shade as PDF, a page each, from typed numbers or from a job. */
export function addLesson(program: Command, io: Io): void {
  const lesson = program
    .command("lesson")
    .description("Seven pages to teach from: folds, cloth, the lock, threading, loads, cords and children")
    .requiredOption("--out <folder>", "folder to write lessons.pdf into; it is made where it is missing")
    .addOption(new Option("--paper <size>", "paper; else as the units have it").choices(["letter", "a4"]));
  for (const option of numbersOptions()) lesson.addOption(option);
  lesson.action((options: LessonOptions) => writeLessons(options, io));
}

async function writeLessons(options: LessonOptions, io: Io): Promise<void> {
  const { job, room, window } = await shadeOf(options, io);
  const shadeId = job.rooms[room]?.windows[window]?.id ?? "";
  const planned = plan(job, { only: [shadeId] });
  const pdf = await makeWorkbook({
    plan: planned,
    shadeIds: [shadeId],
    sets: ["lesson"],
    lessonsOf: jobLessons(job),
    paper: options.paper ?? (job.units.system === "imperial" ? "letter" : "a4"),
    fonts: readWorkbookFonts(),
    createdOn: new Date(),
  });
  async function* files() {
    yield { path: "lessons.pdf", content: pdf };
  }
  await writeFiles(options.out, files(), options.job === "-" ? undefined : options.job);
  io.err(`Wrote lessons.pdf into ${plainLine(options.out)}.\n`);
}
