import type { StepChapter } from "../../../shade-plan/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { openPage } from "../../typeset/heading.ts";
import { stepTicks, tickColumns } from "./tick-lines.ts";

/** Cutting stands on a sheet of its own. */
const CHAPTERS: readonly StepChapter[] = ["make", "board", "string"];

/** Every step from the cut pieces to the strung shade in a line, with the figures that are this shade’s own. */
export function makePage(context: ShadeContext): void {
  openPage(context.book, {
    title: "Make",
    lead: "A line for each step, numbered as on the sheets “Step by step”, which say how.",
  });
  tickColumns(context.book, stepTicks(context, CHAPTERS));
}
