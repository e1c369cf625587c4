import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import { hashOf, newSecret, readToken, tokenOf } from "../secrets.ts";
import type { RoomTrx } from "../store/store.ts";
import type { PersonRow } from "../store/tables.ts";

/** A session ends after so many days, or after so many in which nobody used it. */
const LASTS = sql<Date>`now() + interval '90 days'`;
const IDLE = sql<Date>`now() - interval '14 days'`;
/** How often it is noted that a session is in use. */
const NOTED = sql<Date>`now() - interval '10 minutes'`;

export interface SignedIn {
  session: string;
  person: PersonRow;
}

/** Makes a session; gives back what the cookie holds. */
export async function beginSession(
  trx: RoomTrx,
  workroomId: string,
  personId: string,
  device: string,
): Promise<string> {
  const secret = newSecret();
  await trx
    .insertInto("sessions")
    .values({
      workroom_id: workroomId,
      id: randomUUID(),
      secret: hashOf(secret),
      person_id: personId,
      device: device.slice(0, 200),
      until: LASTS,
    })
    .execute();
  return tokenOf(workroomId, secret);
}

/** Who a cookie belongs to; nobody where its session ended or the person left. */
export async function signedInBy(
  trx: RoomTrx,
  workroomId: string,
  cookie: string,
): Promise<SignedIn | undefined> {
  const secret = readToken(cookie)?.secret;
  if (secret === undefined) return undefined;
  const row = await trx
    .selectFrom("sessions as s")
    .innerJoin("people as p", (join) =>
      join.onRef("p.workroom_id", "=", "s.workroom_id").onRef("p.id", "=", "s.person_id"),
    )
    .selectAll("p")
    .select(["s.id as session", sql<boolean>`s.seen_at < ${NOTED}`.as("isToNote")])
    .where("s.workroom_id", "=", workroomId)
    .where("s.secret", "=", hashOf(secret))
    .where("s.until", ">", sql<Date>`now()`)
    .where("s.seen_at", ">", IDLE)
    .where("p.is_here", "=", true)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const { session, isToNote, ...person } = row;
  if (isToNote) {
    await trx
      .updateTable("sessions")
      .set({ seen_at: sql<Date>`now()` })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", session)
      .execute();
  }
  return { session, person };
}

/** Ends every session of a person, but one where it is named. */
export async function endSessionsOf(
  trx: RoomTrx,
  workroomId: string,
  personId: string,
  except?: string,
): Promise<void> {
  await trx
    .deleteFrom("sessions")
    .where("workroom_id", "=", workroomId)
    .where("person_id", "=", personId)
    .$if(except !== undefined, (query) => query.where("id", "!=", String(except)))
    .execute();
}
