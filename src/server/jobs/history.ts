import type { HistoryEntry } from "../../workroom/protocol/index.ts";
import type { AskedByPerson } from "../http/asked.ts";
import { Refused } from "../refused.ts";

/**
 * Who did how much on which day, newest first. Work of one person on one day that another's lies between is two entries.
 * @param zone in which days are told, `Europe/Berlin`; UTC where it is left out
 * @throws {Refused} a zone that there is not
 */
export async function historyOf(
  { trx, workroomId }: Pick<AskedByPerson, "trx" | "workroomId">,
  jobId: string,
  zone = "UTC",
): Promise<HistoryEntry[]> {
  const dayOf = days(zone);
  const rows = await trx
    .selectFrom("operations")
    .select(["version", "person_id", "at"])
    .where("workroom_id", "=", workroomId)
    .where("job_id", "=", jobId)
    .orderBy("version", "desc")
    .execute();
  const entries: HistoryEntry[] = [];
  for (const { version, person_id: person, at } of rows) {
    const day = dayOf(at);
    const last = entries.at(-1);
    if (last?.day === day && last.person === person) {
      last.fromVersion = version;
      last.changes++;
    } else entries.push({ day, person, fromVersion: version, toVersion: version, changes: 1 });
  }
  return entries;
}

function days(zone: string): (at: Date) => string {
  try {
    const format = new Intl.DateTimeFormat("sv-SE", {
      timeZone: zone,
      year: "numeric",
      month: "2-digit",
      day: "2-digit",
    });
    return (at) => format.format(at);
  } catch {
    const given = JSON.stringify(zone.slice(0, 80));
    throw new Refused(400, "The request cannot be used.", [
      { field: "zone", given, wanted: "a time zone, as Europe/Berlin" },
    ]);
  }
}
