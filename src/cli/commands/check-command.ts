import type { Command } from "commander";
import { spellerOf } from "../../job/index.ts";
import { plan, proveRemedies } from "../../plan/index.ts";
import type { Io } from "../io.ts";
import { PARTS_OPTION, readJobWith } from "../read-job.ts";
import { allFindings, findingsText } from "../report.ts";
import { ALLOW_FINDINGS, SafetyStop, safetyJson, stampedShades } from "../safety-stop.ts";
import { speltIo, speltTexts } from "../spelt.ts";

interface CheckOptions {
  json?: boolean;
  parts?: string;
  allowFindings?: boolean;
}

/** `shadewright check`: plans without writing anything, and says what was found. */
export function addCheck(program: Command, io: Io): void {
  program
    .command("check")
    .description("Read a job and say what was found, without writing anything")
    .argument("<job>", "job file, or - for the standard input")
    .option("--json", "print the findings as JSON")
    .option(...PARTS_OPTION)
    .option(...ALLOW_FINDINGS)
    .action(async (path: string, { json, parts, allowFindings }: CheckOptions) => {
      const job = await readJobWith(path, parts, io);
      const planned = proveRemedies(job, plan(job));
      const words = speltIo(io, planned.english);
      words.err(findingsText(planned, words.columns));
      if (json) {
        const document = {
          format: "shadewright-findings",
          version: 2,
          jobId: planned.jobId,
          shades: planned.shades.length,
          findings: allFindings(planned),
          safety: safetyJson(planned),
        };
        io.out(`${JSON.stringify(document, speltTexts(spellerOf(planned.english)), 2)}\n`);
      }
      const stamped = stampedShades(planned);
      if (stamped.length > 0 && !allowFindings) throw new SafetyStop(planned, false);
    });
}
