import type { Plan, ShadePlan } from "../plan/index.ts";
import type { Cell, Table } from "./table.ts";

/** A list of a plan: what stands in it for the job as a whole, then what for each shade. */
export interface PlanList extends Omit<Table, "rows"> {
  rowsOfJob?: (plan: Plan) => Cell[][];
  rowsOfShade?: (shade: ShadePlan, plan: Plan) => Cell[][];
}

/** The whole list at once. */
export function wholeList(list: PlanList, plan: Plan): Table {
  const { name, header } = list;
  return { name, header, rows: [...rowGroups(list, plan)].flat() };
}

/** The rows of the job, then those of one shade after another: those of ten thousand at once would fill the memory. */
export function* rowGroups({ rowsOfJob, rowsOfShade }: PlanList, plan: Plan): Generator<Cell[][]> {
  if (rowsOfJob !== undefined) yield rowsOfJob(plan);
  if (rowsOfShade === undefined) return;
  for (const shade of plan.shades) yield rowsOfShade(shade, plan);
}
