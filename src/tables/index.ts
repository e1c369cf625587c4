import type { Plan } from "../plan/index.ts";
import { boardList } from "./board-list.ts";
import { cordList } from "./cord-list.ts";
import { labourList, shoppingList } from "./cost-lists.ts";
import { cutList } from "./cut-list.ts";
import { findingsList } from "./findings-list.ts";
import { markingList } from "./marking-list.ts";
import { safetyList } from "./safety-list.ts";
import type { Table } from "./table.ts";
import { workingsList } from "./workings-list.ts";

export { spreadsheetCells } from "./cells.ts";
export { toCsv } from "./csv.ts";
export { cuttingLists } from "./cutting-lists.ts";
export { readableTable } from "./readable-table.ts";
export { speltTable } from "./spelt.ts";
export type { Cell, Table } from "./table.ts";
export {
  boardList,
  cordList,
  cutList,
  findingsList,
  labourList,
  markingList,
  safetyList,
  shoppingList,
  workingsList,
};

/** Every list of a plan, in the order of the work. */
export function allLists(plan: Plan): Table[] {
  return [
    cutList(plan),
    markingList(plan),
    cordList(plan),
    boardList(plan),
    shoppingList(plan),
    labourList(plan),
    findingsList(plan),
    safetyList(plan),
    workingsList(plan),
  ];
}
