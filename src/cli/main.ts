import { CommanderError } from "commander";
import type { JobIssue } from "../job/index.ts";
import { BadInput } from "./bad-input.ts";
import type { Io } from "./io.ts";
import { plainLine } from "./plain-text.ts";
import { program } from "./program.ts";
import { issuesText } from "./report.ts";
import { SafetyStop, stopText } from "./safety-stop.ts";

const EXIT = { done: 0, ourFault: 1, badInput: 2, safetyStop: 3 } as const;

/**
 * Runs one command line and says how it ended. Never throws and never shows a stack trace.
 * @param words what was typed after `shadewright`
 */
export async function main(words: readonly string[], io: Io): Promise<number> {
  let answered = false;
  const heard: Io = {
    ...io,
    out(text) {
      answered = true;
      io.out(text);
    },
    outPart(bytes) {
      answered = true;
      return io.outPart(bytes);
    },
  };
  try {
    const root = program(heard);
    if (words.length === 0) {
      io.err(root.helpInformation());
      return EXIT.badInput;
    }
    await root.parseAsync([...words], { from: "user" });
    return EXIT.done;
  } catch (error) {
    return ending(error, words, io, answered);
  }
}

function ending(error: unknown, words: readonly string[], io: Io, answered: boolean): number {
  if (error instanceof BadInput) {
    io.err(issuesText(error.subject, error.issues, io.columns));
    if (words.includes("--json")) io.out(issuesJson(error.issues));
    return EXIT.badInput;
  }
  if (error instanceof SafetyStop) {
    io.err(stopText(error, io.columns));
    return EXIT.safetyStop;
  }
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return EXIT.done;
    const asked = words.find((word) => word !== "help") ?? "";
    const said =
      error.code === "commander.help"
        ? `There is no command ${JSON.stringify(asked.slice(0, 60))}.`
        : plainLine(error.message.replace(/^error: /, ""));
    io.err(`${said}\nSee: shadewright --help\n`);
    if (words.includes("--json")) {
      io.out(issuesJson([{ field: "(command line)", given: words.join(" ").slice(0, 200), wanted: said }]));
    }
    return EXIT.badInput;
  }
  const said = plainLine(error instanceof Error ? error.message : String(error)).slice(0, 300);
  io.err(
    `Shadewright made a mistake of its own and stopped: ${said}\n` +
      "No file was changed. Please report it with this line, what you typed and, if you may share it, the job file; " +
      "CONTRIBUTING.md says how.\n",
  );
  // Behind half an answer a second document would spoil both.
  if (words.includes("--json") && !answered) {
    io.out(issuesJson([{ field: "(Shadewright)", given: words.join(" ").slice(0, 200), wanted: said }]));
  }
  return EXIT.ourFault;
}

function issuesJson(issues: readonly JobIssue[]): string {
  return `${JSON.stringify({ format: "shadewright-issues", version: 1, issues }, null, 2)}\n`;
}
