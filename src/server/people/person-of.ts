import type { Person } from "../../workroom/protocol/index.ts";
import type { PersonRow } from "../store/tables.ts";

/** Someone as the others see them. */
export function personOf(row: Pick<PersonRow, "id" | "name" | "sign_in_name" | "role" | "is_here">): Person {
  return {
    id: row.id,
    name: row.name,
    signInName: row.sign_in_name,
    role: row.role,
    isHere: row.is_here,
  };
}
