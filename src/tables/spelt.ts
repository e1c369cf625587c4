import { asWritten, type Spell } from "../words/index.ts";
import type { Table } from "./table.ts";

/** The list in the English of its reader. */
export function speltTable(list: Table, spell: Spell): Table {
  if (spell === asWritten) return list;
  return {
    ...list,
    header: list.header.map(spell),
    rows: list.rows.map((row) => row.map((cell) => (typeof cell === "string" ? spell(cell) : cell))),
  };
}
