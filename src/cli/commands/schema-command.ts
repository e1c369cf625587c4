import { readFileSync } from "node:fs";
import { Argument, type Command } from "commander";
import { JOB_VERSION } from "../../job/index.ts";
import { PLAN_VERSION } from "../../plan/index.ts";
import type { Io } from "../io.ts";

const VERSIONS = { job: JOB_VERSION, plan: PLAN_VERSION } as const;

/** `shadewright schema`: the published JSON Schema of the job or of the plan. */
export function addSchema(program: Command, io: Io): void {
  program
    .command("schema")
    .description("Print the JSON Schema of the job document, or of the plan")
    .addArgument(new Argument("[document]", "which one").choices(["job", "plan"]).default("job"))
    .option("--json", "it is JSON in any case")
    .action((document: "job" | "plan") => {
      const file = new URL(
        `../../../schema/shadewright-${document}-${VERSIONS[document]}.schema.json`,
        import.meta.url,
      );
      io.out(readFileSync(file, "utf8"));
    });
}
