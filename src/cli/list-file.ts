import type { Plan } from "../plan/index.ts";
import {
  type Cell,
  csvParts,
  type PlanList,
  readableTable,
  rowGroups,
  speltTable,
  type Table,
} from "../tables/index.ts";
import type { Spell } from "../words/index.ts";
import type { OutFile } from "./write-files.ts";
import { writeInParts } from "./write-in-parts.ts";

interface ListOf {
  plan: Pick<Plan, "units">;
  spell: Spell;
  stamp: string | undefined;
}

/** A list as a file that a spreadsheet opens, in the English of the job. */
export function listFile(folder: string, { name, header, rows }: Table, of: ListOf): OutFile {
  return fileOf(folder, { name, header }, () => [rows], of);
}

/** A list of the plan, made and written a shade at a time. */
export function planListFile(folder: string, list: PlanList, of: ListOf & { plan: Plan }): OutFile {
  return fileOf(folder, list, () => rowGroups(list, of.plan), of);
}

function fileOf(
  folder: string,
  { name, header }: Omit<Table, "rows">,
  groups: () => Iterable<Cell[][]>,
  { plan, spell, stamp }: ListOf,
): OutFile {
  const shown = (rows: Cell[][]) =>
    speltTable(readableTable({ name, header, rows }, plan.units.system), spell);
  return {
    path: `${folder}/${name}.csv`,
    content: (write) => writeInParts(csvParts(shown([]).header, mapped(groups(), shown), stamp), write),
  };
}

function* mapped(groups: Iterable<Cell[][]>, shown: (rows: Cell[][]) => Table): Generator<Cell[][]> {
  for (const rows of groups) yield shown(rows).rows;
}
