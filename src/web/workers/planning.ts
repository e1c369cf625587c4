import type { PlanningService } from "../workbook/planning-worker.ts";
import { KeptWorker } from "./kept-worker.ts";

/** A worker that plans, sums up and sets workbooks off the page's thread. */
export function planningWorker(): KeptWorker<PlanningService> {
  return new KeptWorker(
    () => new Worker(new URL("../workbook/planning-worker.ts", import.meta.url), { type: "module" }),
  );
}
