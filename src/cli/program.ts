import { Command } from "commander";
import { addAsk } from "./commands/ask-command.ts";
import { addBackup } from "./commands/backup-command.ts";
import { addBenchTest } from "./commands/bench-test-command.ts";
import { addCheck } from "./commands/check-command.ts";
import { addCompletion } from "./commands/completion-command.ts";
import { addCut } from "./commands/cut-command.ts";
import { addDoctor } from "./commands/doctor-command.ts";
import { addLesson } from "./commands/lesson-command.ts";
import { addNew } from "./commands/new-command.ts";
import { addPlan } from "./commands/plan-command.ts";
import { addSchema } from "./commands/schema-command.ts";
import { addServe } from "./commands/serve-command.ts";
import { addTestSheet } from "./commands/test-sheet-command.ts";
import type { Io } from "./io.ts";
import { packageVersion } from "./version.ts";

const AFTER = `
Lengths are written as makers write them: 35 3/8, 2' 11 3/8", 90,5 cm, 905 mm.
Ends with 0 when done, 1 when Shadewright itself is at fault, 2 when the input cannot be used, and 3 when a rule
on cords failed for a shade that is sold, given or hung where the public is (--allow-findings makes that 0).
`;

/** The commands and their options. Throws commander's own error on any that are wrong. */
export function program(io: Io): Command {
  const root = new Command("shadewright")
    .description("Plans soft, cord-lifted window shades, from a few measurements to a workbook.")
    .version(packageVersion(), "-V, --version", "print the version")
    .helpOption("-h, --help", "say what can be written here")
    .helpCommand("help [command]", "the same of one command")
    .addHelpText("after", AFTER)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.out(text),
      // Errors are told in one place, by `main`.
      writeErr: () => {},
      getOutHelpWidth: () => io.columns,
    });
  addPlan(root, io);
  addCut(root, io);
  addCheck(root, io);
  addAsk(root, io);
  addLesson(root, io);
  addBenchTest(root, io);
  addTestSheet(root, io);
  addNew(root, io);
  addSchema(root, io);
  addCompletion(root, io);
  addServe(root, io);
  addBackup(root, io);
  addDoctor(root, io);
  return root;
}
