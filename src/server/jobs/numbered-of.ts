import type { Selectable } from "kysely";
import type { NumberedOperation } from "../../workroom/protocol/index.ts";
import type { RoomTables } from "../store/tables.ts";

/** An operation as it is told: the same whenever it is asked for. */
export function numberedOf(row: Selectable<RoomTables["operations"]>): NumberedOperation {
  return {
    id: row.id,
    jobId: row.job_id,
    version: row.version,
    person: row.person_id,
    at: row.at.toISOString(),
    changes: row.changes,
    conflicts: row.conflicts,
    settles: row.settles,
  };
}
