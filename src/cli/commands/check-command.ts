import type { Command } from "commander";
import { plan } from "../../plan/index.ts";
import type { Io } from "../io.ts";
import { readJob } from "../read-job.ts";
import { allFindings, findingsText } from "../report.ts";

/** `shadewright check`: plans without writing anything, and says what was found. */
export function addCheck(program: Command, io: Io): void {
  program
    .command("check")
    .description("Read a job and say what was found, without writing anything")
    .argument("<job>", "job file, or - for the standard input")
    .option("--json", "print the findings as JSON")
    .action(async (path: string, { json }: { json?: boolean }) => {
      const planned = plan(await readJob(path, io));
      io.err(findingsText(planned, io.columns));
      if (json) {
        const document = {
          format: "shadewright-findings",
          version: 1,
          jobId: planned.jobId,
          shades: planned.shades.length,
          findings: allFindings(planned),
        };
        io.out(`${JSON.stringify(document, null, 2)}\n`);
      }
    });
}
