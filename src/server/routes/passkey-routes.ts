import { randomUUID } from "node:crypto";
import type {
  AuthenticationResponseJSON,
  AuthenticatorTransport,
  RegistrationResponseJSON,
} from "@simplewebauthn/server";
import { sql } from "kysely";
import * as z from "zod";
import {
  type Passkey,
  passkeyAddSchema,
  passkeyOptionsSchema,
  passkeySignInSchema,
} from "../../workroom/protocol/index.ts";
import type { AnyoneHandlers, PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { countAttempt } from "../people/attempts.ts";
import { noteDeed } from "../people/audit.ts";
import { findWorkroom } from "../people/find-workroom.ts";
import { beginSession } from "../people/sessions.ts";
import { notHere, Refused } from "../refused.ts";
import { inWorkroom, type RoomTrx } from "../store/store.ts";

const CHALLENGE_LASTS = sql<Date>`now() + interval '5 minutes'`;
const WRONG = "That passkey does not open this workroom.";

const library = () => import("@simplewebauthn/server");
const transportsSchema = z.array(z.string().max(20)).max(10);

/** The name that passkeys are bound to: that of the server's address. */
const nameOf = (origin: string) => new URL(origin).hostname;

export const passkeyRoutes: PersonHandlers = {
  async passkeys({ trx, workroomId, person }) {
    const rows = await trx
      .selectFrom("passkeys")
      .select(["id", "name", "made_at"])
      .where("workroom_id", "=", workroomId)
      .where("person_id", "=", person.id)
      .orderBy("made_at")
      .execute();
    const passkeys = rows.map(
      ({ id, name, made_at }): Passkey => ({ id, name, madeAt: made_at.toISOString() }),
    );
    return { body: { passkeys } };
  },

  async passkeyOptions({ trx, workroomId, person, origin }) {
    const { generateRegistrationOptions } = await library();
    const had = await trx
      .selectFrom("passkeys")
      .select("id")
      .where("workroom_id", "=", workroomId)
      .where("person_id", "=", person.id)
      .execute();
    const options = await generateRegistrationOptions({
      rpName: "Shadewright",
      rpID: nameOf(origin),
      userID: new TextEncoder().encode(person.id),
      userName: person.sign_in_name,
      userDisplayName: person.name,
      excludeCredentials: had,
      authenticatorSelection: { residentKey: "required", userVerification: "required" },
    });
    return {
      body: { challenge: await keepChallenge(trx, workroomId, person.id, options.challenge), options },
    };
  },

  async addPasskey({ trx, workroomId, person, origin, body }) {
    const { verifyRegistrationResponse } = await library();
    const { challenge, name, response } = bodyAs(passkeyAddSchema, body);
    const expectedChallenge = await takeChallenge(trx, workroomId, person.id, challenge);
    const verified = await verifyRegistrationResponse({
      response: response as unknown as RegistrationResponseJSON,
      expectedChallenge,
      expectedOrigin: origin,
      expectedRPID: nameOf(origin),
      requireUserVerification: true,
    }).catch(() => undefined);
    if (!verified?.verified) throw new Refused(400, "The passkey could not be checked. Try again.");
    const { id, publicKey, counter, transports } = verified.registrationInfo.credential;
    await trx
      .insertInto("passkeys")
      .values({
        workroom_id: workroomId,
        id,
        person_id: person.id,
        public_key: publicKey,
        counter,
        transports: JSON.stringify(transportsSchema.catch([]).parse(transports ?? [])),
        name,
      })
      .execute();
    await noteDeed(trx, workroomId, person.id, "added a passkey", name);
    return { status: 201 };
  },

  async removePasskey({ trx, workroomId, person, params }) {
    const removed = await trx
      .deleteFrom("passkeys")
      .where("workroom_id", "=", workroomId)
      .where("person_id", "=", person.id)
      .where("id", "=", params.passkey ?? "")
      .returning("name")
      .executeTakeFirst();
    if (!removed) throw notHere();
    await noteDeed(trx, workroomId, person.id, "removed a passkey", removed.name);
    return {};
  },
};

export const passkeySignInRoutes: AnyoneHandlers = {
  async passkeySignInOptions({ room, origin, address, body }) {
    const { workroom } = bodyAs(passkeyOptionsSchema, body ?? {});
    const workroomId = (await room.door.isBegun())
      ? await findWorkroom(await room.door.open(), workroom)
      : undefined;
    if (workroomId === undefined) throw new Refused(401, WRONG);
    const { generateAuthenticationOptions } = await library();
    const options = await generateAuthenticationOptions({
      rpID: nameOf(origin),
      userVerification: "required",
    });
    return await inWorkroom(await room.door.open(), workroomId, async (trx) => {
      await countAttempt(trx, workroomId, `passkey ${address}`, address);
      const challenge = await keepChallenge(trx, workroomId, null, options.challenge);
      return { body: { challenge: `${workroomId}.${challenge}`, options } };
    });
  },

  async passkeySignIn({ room, origin, device, body }) {
    const { verifyAuthenticationResponse } = await library();
    const { challenge, response } = bodyAs(passkeySignInSchema, body);
    const [workroomId = "", challengeId = ""] = challenge.split(".");
    if (!(await room.door.isBegun())) throw new Refused(401, WRONG);
    const store = await room.door.open();
    // On its own: it is used up whether or not the passkey fits.
    const expectedChallenge = await inWorkroom(store, workroomId, (trx) =>
      takeChallenge(trx, workroomId, null, challengeId),
    );
    return await inWorkroom(store, workroomId, async (trx) => {
      const passkey = await trx
        .selectFrom("passkeys as k")
        .innerJoin("people as p", (join) =>
          join.onRef("p.workroom_id", "=", "k.workroom_id").onRef("p.id", "=", "k.person_id"),
        )
        .select(["k.id", "k.public_key", "k.counter", "k.transports", "k.person_id"])
        .where("k.workroom_id", "=", workroomId)
        .where("k.id", "=", String(response.id))
        .where("p.is_here", "=", true)
        .executeTakeFirst();
      if (!passkey) throw new Refused(401, WRONG);
      const verified = await verifyAuthenticationResponse({
        response: response as unknown as AuthenticationResponseJSON,
        expectedChallenge,
        expectedOrigin: origin,
        expectedRPID: nameOf(origin),
        requireUserVerification: true,
        credential: {
          id: passkey.id,
          publicKey: new Uint8Array(passkey.public_key),
          counter: passkey.counter,
          transports: passkey.transports as AuthenticatorTransport[],
        },
      }).catch(() => undefined);
      if (!verified?.verified) throw new Refused(401, WRONG);
      await trx
        .updateTable("passkeys")
        .set({ counter: verified.authenticationInfo.newCounter })
        .where("workroom_id", "=", workroomId)
        .where("id", "=", passkey.id)
        .execute();
      await noteDeed(trx, workroomId, passkey.person_id, "signed in with a passkey");
      return { cookie: await beginSession(trx, workroomId, passkey.person_id, device) };
    });
  },
};

async function keepChallenge(
  trx: RoomTrx,
  workroomId: string,
  personId: string | null,
  challenge: string,
): Promise<string> {
  const id = randomUUID();
  await trx
    .insertInto("challenges")
    .values({ workroom_id: workroomId, id, person_id: personId, challenge, until: CHALLENGE_LASTS })
    .execute();
  return id;
}

/** A challenge is good once. */
async function takeChallenge(
  trx: RoomTrx,
  workroomId: string,
  personId: string | null,
  id: string,
): Promise<string> {
  const taken = await trx
    .deleteFrom("challenges")
    .where("workroom_id", "=", workroomId)
    .where("id", "=", id)
    .where("person_id", personId === null ? "is" : "=", personId)
    .where("until", ">", sql<Date>`now()`)
    .returning("challenge")
    .executeTakeFirst();
  if (!taken) throw new Refused(400, "That took too long. Try again.");
  return taken.challenge;
}
