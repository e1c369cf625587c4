import type { Plan } from "../plan/index.ts";
import { readableTable, speltTable, type Table, toCsv } from "../tables/index.ts";
import type { Spell } from "../words/index.ts";
import type { OutFile } from "./write-files.ts";

interface ListOf {
  plan: Pick<Plan, "units">;
  spell: Spell;
  stamp: string | undefined;
}

/** A list as a file that a spreadsheet opens, in the English of the job. */
export function listFile(folder: string, list: Table, { plan, spell, stamp }: ListOf): OutFile {
  const shown = speltTable(readableTable(list, plan.units.system), spell);
  return { path: `${folder}/${list.name}.csv`, content: toCsv(shown, stamp) };
}
