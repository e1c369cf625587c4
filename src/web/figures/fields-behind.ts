import { fieldsBehind } from "../../figures/index.ts";
import type { Window } from "../../job/index.ts";
import { GIVEN_SIZE } from "../../measure/index.ts";
import { figuresOf, type ShadePlan } from "../../plan/index.ts";

/** Pointers of the fields that change a figure of a shade, the nearest first. */
export function pointersBehind(
  shade: ShadePlan,
  figure: string,
  windowPointer: string,
  window: Window,
): string[] {
  return fieldsBehind(figuresOf(shade), figure, GIVEN_SIZE).flatMap((field) =>
    pointersOf(field, windowPointer, window),
  );
}

/** Where a field stands in the job: only sides that were measured, and only the deductions of this mount. */
function pointersOf(field: string, windowPointer: string, { opening, shade }: Window): string[] {
  const [group = "", name = ""] = field.split("/");
  if (group === "shade") return [`${windowPointer}/${field}`];
  if (group === "opening") {
    const measured = opening[name as keyof typeof opening];
    return Array.isArray(measured)
      ? measured.map((_, i) => `${windowPointer}/${field}/${i}`)
      : [`${windowPointer}/${field}`];
  }
  if (name.startsWith("inside") && shade.mount !== "inside") return [];
  if (name.startsWith("overlap") && shade.mount !== "outside") return [];
  return [`${windowPointer}/shade/making/${field}`];
}
