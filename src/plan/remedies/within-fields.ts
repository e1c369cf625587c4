import { type Remedy, segmentsOf } from "../../figures/index.ts";
import { fieldAccepts } from "../../job/index.ts";

/** Whether every field that a remedy sets takes its value, as the job's schema has it. */
export function isWithinFields({ patch }: Pick<Remedy, "patch">): boolean {
  return patch.every((operation) =>
    fieldAccepts(segmentsOf(operation.path), operation.op === "remove" ? undefined : operation.value),
  );
}
