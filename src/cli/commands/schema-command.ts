import { readFileSync } from "node:fs";
import { Argument, type Command } from "commander";
import { JOB_VERSION, PARTS_VERSION } from "../../job/index.ts";
import { CUTTING_VERSION, PLAN_VERSION } from "../../plan/index.ts";
import type { Io } from "../io.ts";

const VERSIONS = {
  job: JOB_VERSION,
  plan: PLAN_VERSION,
  parts: PARTS_VERSION,
  cutting: CUTTING_VERSION,
} as const;

/** `shadewright schema`: the published JSON Schema of the job, of the plan, of a parts file or of a cutting plan. */
export function addSchema(program: Command, io: Io): void {
  program
    .command("schema")
    .description(
      "Print the JSON Schema of the job document, of the plan, of a parts file, or of a cutting plan",
    )
    .addArgument(
      new Argument("[document]", "which one").choices(["job", "plan", "parts", "cutting"]).default("job"),
    )
    .option("--json", "it is JSON in any case")
    .action((document: keyof typeof VERSIONS) => {
      const file = new URL(
        `../../../schema/shadewright-${document}-${VERSIONS[document]}.schema.json`,
        import.meta.url,
      );
      io.out(readFileSync(file, "utf8"));
    });
}
