import { sql } from "kysely";
import { JOB_BIN_DAYS } from "../../workroom/protocol/index.ts";
import type { PaperQueue } from "../queue/paper-queue.ts";
import type { OwnedDoor } from "../store/doors.ts";
import type { Store } from "../store/store.ts";

const EVERY_MS = 60 * 60 * 1000;
/** Papers that nobody took up by then were lost on their way into the queue. */
const LOST_AFTER = sql`interval '2 minutes'`;

/** Does, every hour while the store is open, what no request does; gives back how to stop. */
export function keepUp(door: OwnedDoor, queue?: PaperQueue): () => void {
  const timer = setInterval(() => {
    const store = door.ifOpen();
    store
      ?.then((open) => removeOld(open).then(() => findLostPapers(open, queue)))
      .catch((error) => {
        console.error(`The upkeep failed: ${error instanceof Error ? error.message : error}`);
      });
  }, EVERY_MS).unref();
  return () => clearInterval(timer);
}

/** Removes for good what nobody can reach any longer: jobs that lay in the bin for a month, and what ran out. */
export async function removeOld({ db }: Store): Promise<void> {
  const now = sql<Date>`now()`;
  const days = (count: number) => sql<Date>`now() - make_interval(days => ${sql.lit(count)})`;
  await db.deleteFrom("jobs").where("binned_at", "<", days(JOB_BIN_DAYS)).execute();
  await db.deleteFrom("challenges").where("until", "<", now).execute();
  await db.deleteFrom("attempts").where("until", "<", now).execute();
  await db.deleteFrom("sessions").where("until", "<", now).execute();
  await db.deleteFrom("presence").where("seen_at", "<", days(1)).execute();
  await db.deleteFrom("papers").where("asked_at", "<", days(30)).execute();
}

async function findLostPapers({ db }: Store, queue: PaperQueue | undefined): Promise<void> {
  if (!queue) return;
  const lost = await db
    .selectFrom("papers")
    .select(["workroom_id", "id"])
    .where("state", "=", "waiting")
    .where(sql<boolean>`(asked_at < now() - ${LOST_AFTER} or asked_at > now())`)
    .execute();
  for (const { workroom_id, id } of lost) queue.send({ workroomId: workroom_id, paperId: id });
}
