import type { RoomTrx } from "../store/store.ts";

/** Notes who did what; nobody who works through the server can change or remove it. */
export async function noteDeed(
  trx: RoomTrx,
  workroomId: string,
  personId: string | null,
  action: string,
  subject?: string,
): Promise<void> {
  await trx
    .insertInto("audit")
    .values({ workroom_id: workroomId, person_id: personId, action, subject: subject ?? null })
    .execute();
}
