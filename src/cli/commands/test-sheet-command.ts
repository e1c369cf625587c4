import { type Command, Option } from "commander";
import type { PaperKind } from "../../workbook/index.ts";
import type { Io } from "../io.ts";
import { plainLine } from "../plain-text.ts";
import { writeNewFile } from "../write-files.ts";

/** `shadewright test-sheet`: one page to fill in at the bench, with no job at all. */
export function addTestSheet(program: Command, io: Io): void {
  program
    .command("test-sheet")
    .description("Write the sheet for the five tests at the bench, to fill in with a pencil, as PDF")
    .requiredOption("--out <file>", "new file to write")
    .addOption(new Option("--paper <size>", "paper of the sheet").choices(["letter", "a4"]).default("letter"))
    .action(async ({ out, paper }: { out: string; paper: PaperKind }) => {
      // The PDF library is large: only who prints waits for it.
      const [{ makeTestSheet }, { readWorkbookFonts }] = await Promise.all([
        import("../../workbook/index.ts"),
        import("../workbook-fonts.ts"),
      ]);
      const bytes = await makeTestSheet(paper, readWorkbookFonts());
      await writeNewFile(out, bytes);
      io.err(`Wrote ${plainLine(out)}.\n`);
    });
}
