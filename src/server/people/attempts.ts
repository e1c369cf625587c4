import { sql } from "kysely";
import { Refused } from "../refused.ts";
import type { RoomTrx } from "../store/store.ts";

/** Wrong passwords or codes of one name in a quarter of an hour. */
const MOST_FOR_NAME = 10;
/** Of one address, over all names. */
const MOST_FOR_ADDRESS = 50;
const WINDOW = sql`now() + interval '15 minutes'`;

/** Later than that it can only end where the clock was set back meanwhile: nobody is to wait for a day. */
const IS_OVER = sql`(attempts.until < now() or attempts.until > ${WINDOW})`;

/**
 * Counts one attempt to sign in before it is judged, for all processes.
 * @throws {Refused} above the limit
 */
export async function countAttempt(
  trx: RoomTrx,
  workroomId: string,
  signInName: string,
  address: string,
): Promise<void> {
  const limits = [
    [`name ${signInName}`, MOST_FOR_NAME],
    [`address ${address}`, MOST_FOR_ADDRESS],
  ] as const;
  for (const [key, most] of limits) {
    const { count } = await trx
      .insertInto("attempts")
      .values({ workroom_id: workroomId, key, count: 1, until: sql<Date>`${WINDOW}` })
      .onConflict((clash) =>
        clash.columns(["workroom_id", "key"]).doUpdateSet({
          count: sql`case when ${IS_OVER} then 1 else attempts.count + 1 end`,
          until: sql`case when ${IS_OVER} then ${WINDOW} else attempts.until end`,
        }),
      )
      .returning("count")
      .executeTakeFirstOrThrow();
    if (count > most) throw new Refused(429, "Too many attempts. Wait a quarter of an hour.");
  }
}

/** Forgets the attempts of a name that signed in. */
export async function forgetAttempts(trx: RoomTrx, workroomId: string, signInName: string): Promise<void> {
  await trx
    .deleteFrom("attempts")
    .where("workroom_id", "=", workroomId)
    .where("key", "=", `name ${signInName}`)
    .execute();
}
