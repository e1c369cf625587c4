import { hashOfCode, newCode } from "../secrets.ts";
import type { RoomTrx } from "../store/store.ts";

const CODES = 8;

/** New codes for the day that a password is lost; those of before are void. They are told this once. */
export async function makeRecoveryCodes(
  trx: RoomTrx,
  workroomId: string,
  personId: string,
): Promise<string[]> {
  const codes = Array.from({ length: CODES }, newCode);
  await trx
    .deleteFrom("recovery_codes")
    .where("workroom_id", "=", workroomId)
    .where("person_id", "=", personId)
    .execute();
  await trx
    .insertInto("recovery_codes")
    .values(codes.map((code) => ({ workroom_id: workroomId, person_id: personId, code: hashOfCode(code) })))
    .execute();
  return codes;
}

/** Uses a code up; false where it is none of theirs. */
export async function spendRecoveryCode(
  trx: RoomTrx,
  workroomId: string,
  personId: string,
  code: string,
): Promise<boolean> {
  const used = await trx
    .deleteFrom("recovery_codes")
    .where("workroom_id", "=", workroomId)
    .where("person_id", "=", personId)
    .where("code", "=", hashOfCode(code))
    .returning("code")
    .execute();
  return used.length > 0;
}
