import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import {
  type JoinLook,
  joinLookSchema,
  joinSchema,
  type Me,
  recoverSchema,
  signInSchema,
  signUpSchema,
} from "../../workroom/protocol/index.ts";
import { asPerson } from "../http/as-person.ts";
import type { Answer, AnyoneHandlers, AskedByAnyone } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { makeShop } from "../jobs/shop.ts";
import { countAttempt, forgetAttempts } from "../people/attempts.ts";
import { noteDeed } from "../people/audit.ts";
import { findWorkroom, shortNameOf } from "../people/find-workroom.ts";
import { refuseGuessable } from "../people/guessable.ts";
import { isPassword, passwordHash } from "../people/password.ts";
import { personOf } from "../people/person-of.ts";
import { makeRecoveryCodes, spendRecoveryCode } from "../people/recovery-codes.ts";
import { beginSession, endSessionsOf } from "../people/sessions.ts";
import { Refused } from "../refused.ts";
import { hashOf, isSameSecret, readToken } from "../secrets.ts";
import { inWorkroom, type RoomTrx } from "../store/store.ts";

const WRONG = "That name and password do not go together.";

/** Ways in, for who is not signed in yet. */
export const signInRoutes: AnyoneHandlers = {
  async me(asked) {
    const { room, cookie } = asked;
    if (!(await room.door.isBegun())) return isNew(room.setUpCode !== undefined);
    if (cookie !== undefined) {
      try {
        return await asPerson(asked, "signed-in", async ({ trx, workroomId, person, session }) => {
          const workroom = await trx
            .selectFrom("workrooms")
            .select(["id", "name", "short_name"])
            .where("id", "=", workroomId)
            .executeTakeFirstOrThrow();
          const { id, name, short_name: shortName } = workroom;
          const body: Me = {
            state: "signed-in",
            workroom: { id, name, shortName },
            person: personOf(person),
            session,
          };
          return { body };
        });
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
      }
    }
    return { body: { state: "signed-out" } satisfies Me };
  },

  async signUp(asked) {
    const { room, device } = asked;
    const { workroom, name, signInName, password, code, system } = bodyAs(signUpSchema, asked.body);
    const hasCode = room.setUpCode !== undefined && code !== undefined && isSameSecret(code, room.setUpCode);
    if (room.setUpCode !== undefined && !hasCode)
      throw new Refused(403, "That is not the code that the server printed.");
    if (!hasCode && (await room.door.isBegun()))
      throw new Refused(409, "There is a workroom already. Ask its owner in.");
    await refuseGuessable(password, [workroom, name, signInName]);
    const hash = await passwordHash(password, room.passwordCost);
    const store = await room.door.open();
    const [workroomId, personId] = [randomUUID(), randomUUID()];
    const shortName = shortNameOf(workroom);
    await store.db.transaction().execute(async (trx) => {
      // Two who are first at once: one of them is.
      await sql`lock table workrooms in exclusive mode`.execute(trx);
      const others = await trx.selectFrom("workrooms").select("short_name").execute();
      if (others.length > 0 && !hasCode)
        throw new Refused(409, "There is a workroom already. Ask its owner in.");
      const taken = others.some((other) => other.short_name === shortName);
      await trx
        .insertInto("workrooms")
        .values({
          id: workroomId,
          name: workroom,
          short_name: taken ? `${shortName}-${workroomId.slice(0, 4)}` : shortName,
        })
        .execute();
      await trx
        .insertInto("people")
        .values({
          workroom_id: workroomId,
          id: personId,
          name,
          sign_in_name: signInName,
          role: "owner",
          password: hash,
        })
        .execute();
      await makeShop(trx, workroomId, personId, system);
      await noteDeed(trx, workroomId, personId, "made the workroom");
    });
    await room.door.begin();
    return await inWorkroom(store, workroomId, async (trx) => {
      const codes = await makeRecoveryCodes(trx, workroomId, personId);
      return { status: 201, body: { codes }, cookie: await beginSession(trx, workroomId, personId, device) };
    });
  },

  async signIn(asked) {
    const { workroom, signInName, password } = bodyAs(signInSchema, asked.body);
    return await enter(asked, workroom, signInName, async (_trx, person) =>
      isPassword(password, person?.password),
    );
  },

  async recover(asked) {
    const { workroom, signInName, code, password } = bodyAs(recoverSchema, asked.body);
    await refuseGuessable(password, [signInName]);
    const hash = await passwordHash(password, asked.room.passwordCost);
    return await enter(asked, workroom, signInName, async (trx, person, workroomId) => {
      if (!person || !(await spendRecoveryCode(trx, workroomId, person.id, code))) return false;
      await setPassword(trx, workroomId, person.id, hash);
      await noteDeed(trx, workroomId, person.id, "set a new password by a recovery code");
      return true;
    });
  },

  async joinLook(asked) {
    const { token } = bodyAs(joinLookSchema, asked.body);
    return await byInvitation(asked, token, async (trx, workroomId, invitation) => {
      const workroom = await trx
        .selectFrom("workrooms")
        .select("name")
        .where("id", "=", workroomId)
        .executeTakeFirstOrThrow();
      const person =
        invitation.person_id === null
          ? undefined
          : await personBy(trx, workroomId, "id", invitation.person_id);
      const body: JoinLook = {
        workroom: workroom.name,
        kind: invitation.kind,
        role: invitation.role,
        ...(invitation.name === null ? {} : { name: invitation.name }),
        ...(person === undefined ? {} : { name: person.name, signInName: person.sign_in_name }),
      };
      return { body };
    });
  },

  async join(asked) {
    const { token, name, signInName, password } = bodyAs(joinSchema, asked.body);
    await refuseGuessable(password, [name, signInName]);
    const hash = await passwordHash(password, asked.room.passwordCost);
    return await byInvitation(asked, token, async (trx, workroomId, invitation) => {
      await trx
        .updateTable("invitations")
        .set({ used_at: sql<Date>`now()` })
        .where("workroom_id", "=", workroomId)
        .where("id", "=", invitation.id)
        .execute();
      let personId = invitation.person_id;
      if (personId === null) {
        personId = await addPerson(trx, workroomId, { name, signInName, hash, role: invitation.role });
        await noteDeed(trx, workroomId, personId, "joined", invitation.role);
      } else {
        await setPassword(trx, workroomId, personId, hash);
        await noteDeed(trx, workroomId, personId, "set a new password by a link");
      }
      return {
        status: 201,
        body: { codes: await makeRecoveryCodes(trx, workroomId, personId) },
        cookie: await beginSession(trx, workroomId, personId, asked.device),
      };
    });
  },
};

function isNew(needsCode: boolean): Answer {
  return { body: { state: "new", needsCode } satisfies Me };
}

type FoundPerson = NonNullable<Awaited<ReturnType<typeof personBy>>>;

async function personBy(trx: RoomTrx, workroomId: string, column: "id" | "sign_in_name", value: string) {
  return await trx
    .selectFrom("people")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .where(column, "=", value)
    .executeTakeFirst();
}

/** Lets someone in who proves who they are; counts the attempt whether or not they do. */
async function enter(
  asked: AskedByAnyone,
  shortName: string | undefined,
  signInName: string,
  proves: (trx: RoomTrx, person: FoundPerson | undefined, workroomId: string) => Promise<boolean>,
): Promise<Answer> {
  const { room, address, device } = asked;
  if (!(await room.door.isBegun())) throw new Refused(401, WRONG);
  const store = await room.door.open();
  const workroomId = await findWorkroom(store, shortName);
  if (workroomId === undefined) throw new Refused(401, WRONG);
  // On its own, so that the count stands although the attempt fails.
  await inWorkroom(store, workroomId, (trx) => countAttempt(trx, workroomId, signInName, address));
  const cookie = await inWorkroom(store, workroomId, async (trx) => {
    const found = await personBy(trx, workroomId, "sign_in_name", signInName);
    const person = found?.is_here ? found : undefined;
    const isProved = await proves(trx, person, workroomId);
    if (!person || !isProved) {
      await noteDeed(trx, workroomId, found?.id ?? null, "failed to sign in", signInName);
      return undefined;
    }
    await forgetAttempts(trx, workroomId, signInName);
    await noteDeed(trx, workroomId, person.id, "signed in");
    return await beginSession(trx, workroomId, person.id, device);
  });
  if (cookie === undefined) throw new Refused(401, WRONG);
  return { cookie };
}

/** A new password ends every session that began with the old one. */
async function setPassword(trx: RoomTrx, workroomId: string, personId: string, hash: string): Promise<void> {
  await trx
    .updateTable("people")
    .set({ password: hash })
    .where("workroom_id", "=", workroomId)
    .where("id", "=", personId)
    .execute();
  await endSessionsOf(trx, workroomId, personId);
}

async function byInvitation(
  { room }: AskedByAnyone,
  token: string,
  work: (trx: RoomTrx, workroomId: string, invitation: FoundInvitation) => Promise<Answer>,
): Promise<Answer> {
  const { workroomId, secret } = readToken(token) ?? {};
  if (workroomId === undefined || secret === undefined || !(await room.door.isBegun())) throw linkIsVoid();
  const store = await room.door.open();
  return await inWorkroom(store, workroomId, async (trx) => {
    const invitation = await invitationBy(trx, workroomId, secret);
    if (!invitation) throw linkIsVoid();
    return await work(trx, workroomId, invitation);
  });
}

function linkIsVoid(): Refused {
  return new Refused(404, "This link is used up, taken back or too old. Ask for a new one.");
}

type FoundInvitation = NonNullable<Awaited<ReturnType<typeof invitationBy>>>;

async function invitationBy(trx: RoomTrx, workroomId: string, secret: string) {
  return await trx
    .selectFrom("invitations")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .where("secret", "=", hashOf(secret))
    .where("used_at", "is", null)
    .where("taken_back_at", "is", null)
    .where("until", ">", sql<Date>`now()`)
    .forUpdate()
    .executeTakeFirst();
}

async function addPerson(
  trx: RoomTrx,
  workroomId: string,
  {
    name,
    signInName,
    hash,
    role,
  }: { name?: string | undefined; signInName?: string | undefined; hash: string; role: FoundPerson["role"] },
): Promise<string> {
  const missing = Object.entries({ name, signInName }).filter(([, value]) => value === undefined);
  if (name === undefined || signInName === undefined) {
    const issues = missing.map(([field]) => ({ field, given: "nothing", wanted: "a name" }));
    throw new Refused(400, "The request cannot be used.", issues);
  }
  const id = randomUUID();
  const made = await trx
    .insertInto("people")
    .values({ workroom_id: workroomId, id, name, sign_in_name: signInName, role, password: hash })
    .onConflict((clash) => clash.doNothing())
    .returning("id")
    .executeTakeFirst();
  if (!made) {
    throw new Refused(409, "Someone here signs in with that name already.", [
      { field: "signInName", given: JSON.stringify(signInName), wanted: "a name of your own" },
    ]);
  }
  return id;
}
