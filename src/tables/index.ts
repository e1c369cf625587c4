import type { Plan } from "../plan/index.ts";
import { BOARD_LIST } from "./board-list.ts";
import { CORD_LIST } from "./cord-list.ts";
import { LABOUR_LIST, SHOPPING_LIST } from "./cost-lists.ts";
import { CUT_LIST } from "./cut-list.ts";
import { FINDINGS_LIST } from "./findings-list.ts";
import { MARKING_LIST } from "./marking-list.ts";
import { type PlanList, wholeList } from "./plan-list.ts";
import { SAFETY_LIST } from "./safety-list.ts";
import type { Table } from "./table.ts";
import { WORKINGS_LIST } from "./workings-list.ts";

export { spreadsheetCells } from "./cells.ts";
export { csvParts, toCsv } from "./csv.ts";
export { cuttingLists } from "./cutting-lists.ts";
export { type PlanList, rowGroups, wholeList } from "./plan-list.ts";
export { readableTable } from "./readable-table.ts";
export { speltTable } from "./spelt.ts";
export type { Cell, Table } from "./table.ts";
export {
  BOARD_LIST,
  CORD_LIST,
  CUT_LIST,
  FINDINGS_LIST,
  LABOUR_LIST,
  MARKING_LIST,
  SAFETY_LIST,
  SHOPPING_LIST,
  WORKINGS_LIST,
};

/** Every list of a plan, in the order of the work. */
export const PLAN_LISTS: readonly PlanList[] = [
  CUT_LIST,
  MARKING_LIST,
  CORD_LIST,
  BOARD_LIST,
  SHOPPING_LIST,
  LABOUR_LIST,
  FINDINGS_LIST,
  SAFETY_LIST,
  WORKINGS_LIST,
];

/** All of them, each whole. */
export function allLists(plan: Plan): Table[] {
  return PLAN_LISTS.map((list) => wholeList(list, plan));
}
