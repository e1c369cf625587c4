import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import {
  type AuditEntry,
  type Invitation,
  newInvitationSchema,
  newPasswordSchema,
  personChangeSchema,
  type Session,
} from "../../workroom/protocol/index.ts";
import type { AskedByPerson, PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { noteDeed } from "../people/audit.ts";
import { refuseGuessable } from "../people/guessable.ts";
import { isPassword, passwordHash } from "../people/password.ts";
import { personOf } from "../people/person-of.ts";
import { makeRecoveryCodes } from "../people/recovery-codes.ts";
import { endSessionsOf } from "../people/sessions.ts";
import { notHere, Refused } from "../refused.ts";
import { hashOf, newSecret, tokenOf } from "../secrets.ts";

/** Entries of the audit log in one answer. */
const AUDIT_PAGE = 200;
const RECOVERY_DAYS = 2;
const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** People, their sessions and their invitations. */
export const peopleRoutes: PersonHandlers = {
  async signOut({ trx, workroomId, session, person, room, afterwards }) {
    await trx
      .deleteFrom("sessions")
      .where("workroom_id", "=", workroomId)
      .where("id", "=", session)
      .execute();
    await noteDeed(trx, workroomId, person.id, "signed out");
    afterwards(() => room.news.wake(workroomId));
    return { cookie: null };
  },

  async password({ trx, workroomId, person, session, body, room }) {
    const { current, password } = bodyAs(newPasswordSchema, body);
    if (!(await isPassword(current, person.password))) {
      throw new Refused(403, "That is not your password.", [
        { field: "current", given: "another", wanted: "the password that you sign in with" },
      ]);
    }
    await refuseGuessable(password, [person.name, person.sign_in_name]);
    await trx
      .updateTable("people")
      .set({ password: await passwordHash(password, room.passwordCost) })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", person.id)
      .execute();
    await endSessionsOf(trx, workroomId, person.id, session);
    await noteDeed(trx, workroomId, person.id, "set a new password");
    return {};
  },

  async recoveryCodes({ trx, workroomId, person }) {
    await noteDeed(trx, workroomId, person.id, "made new recovery codes");
    return { status: 201, body: { codes: await makeRecoveryCodes(trx, workroomId, person.id) } };
  },

  async sessions({ trx, workroomId, person, session }) {
    const rows = await trx
      .selectFrom("sessions")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where("until", ">", sql<Date>`now()`)
      // The owner sees, and ends, those of all.
      .$if(person.role !== "owner", (query) => query.where("person_id", "=", person.id))
      .orderBy("seen_at", "desc")
      .execute();
    const sessions = rows.map(
      (row): Session => ({
        id: row.id,
        person: row.person_id,
        device: row.device,
        madeAt: row.made_at.toISOString(),
        seenAt: row.seen_at.toISOString(),
        isThis: row.id === session,
      }),
    );
    return { body: { sessions } };
  },

  async endSession(asked) {
    const { trx, workroomId, person, room } = asked;
    const ended = await trx
      .deleteFrom("sessions")
      .where("workroom_id", "=", workroomId)
      .where("id", "=", uuidParam(asked, "session"))
      .$if(person.role !== "owner", (query) => query.where("person_id", "=", person.id))
      .returning("person_id")
      .executeTakeFirst();
    if (!ended) throw notHere();
    await noteDeed(trx, workroomId, person.id, "ended a session", ended.person_id);
    asked.afterwards(() => room.news.wake(workroomId));
    return {};
  },

  async people({ trx, workroomId, person }) {
    const rows = await trx
      .selectFrom("people")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .orderBy("made_at")
      .execute();
    // Names to sign in with are half of what one needs to.
    const names = (id: string) => person.role === "owner" || person.id === id;
    return {
      body: {
        people: rows.map((row) => ({ ...personOf(row), ...(names(row.id) ? {} : { signInName: "" }) })),
      },
    };
  },

  async changePerson(asked) {
    const { trx, workroomId, person, room } = asked;
    const { name, role, isHere } = bodyAs(personChangeSchema, asked.body);
    const id = uuidParam(asked, "person");
    const changed = await trx
      .updateTable("people")
      .set({
        ...(name === undefined ? {} : { name }),
        ...(role === undefined ? {} : { role }),
        ...(isHere === undefined ? {} : { is_here: isHere }),
        // A person without a change is looked up all the same.
        made_at: sql<Date>`made_at`,
      })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", id)
      .returningAll()
      .executeTakeFirst();
    if (!changed) throw notHere();
    await keepAnOwner(asked);
    if (isHere === false) await endSessionsOf(trx, workroomId, id);
    const what = JSON.stringify({ name, role, isHere });
    await noteDeed(trx, workroomId, person.id, "changed a person", `${id} ${what}`);
    asked.afterwards(() => room.news.wake(workroomId));
    return { body: personOf(changed) };
  },

  async recoverPerson(asked) {
    const { trx, workroomId } = asked;
    const person = await trx
      .selectFrom("people")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where("id", "=", uuidParam(asked, "person"))
      .where("is_here", "=", true)
      .executeTakeFirst();
    if (!person) throw notHere();
    return await invite(asked, {
      kind: "recovery",
      role: person.role,
      person_id: person.id,
      days: RECOVERY_DAYS,
    });
  },

  async invite(asked) {
    const { role, name = null, days } = bodyAs(newInvitationSchema, asked.body);
    return await invite(asked, { kind: "join", role, name, days });
  },

  async invitations({ trx, workroomId }) {
    const rows = await trx
      .selectFrom("invitations")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where("used_at", "is", null)
      .where("taken_back_at", "is", null)
      .where("until", ">", sql<Date>`now()`)
      .orderBy("made_at", "desc")
      .execute();
    return { body: { invitations: rows.map(invitationOf) } };
  },

  async takeBackInvitation(asked) {
    const { trx, workroomId, person } = asked;
    const id = uuidParam(asked, "invitation");
    const taken = await trx
      .updateTable("invitations")
      .set({ taken_back_at: sql<Date>`now()` })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", id)
      .where("used_at", "is", null)
      .returning("id")
      .executeTakeFirst();
    if (!taken) throw notHere();
    await noteDeed(trx, workroomId, person.id, "took back an invitation", id);
    return {};
  },

  async audit({ trx, workroomId, query }) {
    const before = Number(query("before") ?? 2_147_483_647);
    const rows = await trx
      .selectFrom("audit")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where("number", "<", Number.isInteger(before) ? before : 0)
      .orderBy("number", "desc")
      .limit(AUDIT_PAGE)
      .execute();
    const entries = rows.map(
      ({ number, at, person_id, action, subject }): AuditEntry => ({
        number,
        at: at.toISOString(),
        ...(person_id === null ? {} : { person: person_id }),
        action,
        ...(subject === null ? {} : { subject }),
      }),
    );
    return { body: { entries } };
  },
};

/** @throws {Refused} where the address holds no id */
export function uuidParam({ params }: Pick<AskedByPerson, "params">, name: string): string {
  const id = params[name] ?? "";
  if (!UUID.test(id)) throw notHere();
  return id;
}

/** @throws {Refused} where nobody would be left to run the workroom; what was changed is undone with it */
async function keepAnOwner({ trx, workroomId }: AskedByPerson): Promise<void> {
  const owner = await trx
    .selectFrom("people")
    .select("id")
    .where("workroom_id", "=", workroomId)
    .where("role", "=", "owner")
    .where("is_here", "=", true)
    .executeTakeFirst();
  if (!owner) throw new Refused(409, "A workroom keeps at least one owner. Make another first.");
}

interface NewInvitation {
  kind: "join" | "recovery";
  role: Invitation["role"];
  name?: string | null;
  person_id?: string | null;
  days: number;
}

async function invite(asked: AskedByPerson, { days, name = null, person_id = null, ...rest }: NewInvitation) {
  const { trx, workroomId, person } = asked;
  const secret = newSecret();
  const row = await trx
    .insertInto("invitations")
    .values({
      workroom_id: workroomId,
      id: randomUUID(),
      secret: hashOf(secret),
      ...rest,
      name,
      person_id,
      made_by: person.id,
      until: sql<Date>`now() + make_interval(days => ${sql.lit(days)})`,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  await noteDeed(
    trx,
    workroomId,
    person.id,
    rest.kind === "join" ? "invited" : "made a recovery link",
    person_id ?? rest.role,
  );
  return {
    status: 201 as const,
    body: { invitation: invitationOf(row), token: tokenOf(workroomId, secret) },
  };
}

function invitationOf(row: {
  id: string;
  kind: Invitation["kind"];
  role: Invitation["role"];
  name: string | null;
  made_at: Date;
  until: Date;
}): Invitation {
  return {
    id: row.id,
    kind: row.kind,
    role: row.role,
    ...(row.name === null ? {} : { name: row.name }),
    madeAt: row.made_at.toISOString(),
    until: row.until.toISOString(),
  };
}
