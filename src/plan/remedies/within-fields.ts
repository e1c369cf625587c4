import { parseJSONPointer } from "immutable-json-patch";
import type { Remedy } from "../../figures/index.ts";
import { fieldAccepts } from "../../job/index.ts";

/** Whether every field that a remedy sets takes its value, as the job's schema has it. */
export function isWithinFields({ patch }: Pick<Remedy, "patch">): boolean {
  return patch.every((operation) =>
    fieldAccepts(parseJSONPointer(operation.path), operation.op === "remove" ? undefined : operation.value),
  );
}
