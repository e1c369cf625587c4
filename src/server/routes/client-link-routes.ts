import { randomUUID } from "node:crypto";
import { type Selectable, sql } from "kysely";
import {
  type ClientLink,
  type ClientPage,
  clientAcceptSchema,
  clientLookSchema,
  newClientLinkSchema,
} from "../../workroom/protocol/index.ts";
import type { AnyoneHandlers, AskedByAnyone, PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { seeJob, seeJobOnShelf } from "../jobs/see-job.ts";
import { noteDeed } from "../people/audit.ts";
import { notHere, Refused } from "../refused.ts";
import { hashOf, newSecret, readToken, tokenOf } from "../secrets.ts";
import { inWorkroom, type RoomTrx } from "../store/store.ts";
import type { RoomTables } from "../store/tables.ts";
import { uuidParam } from "./people-routes.ts";

/** The planner is large: only who makes or opens such a page waits for it. */
const offered = async () => (await import("../client/client-page.ts")).offeredJob;

/** Links for clients, as the workroom makes them and takes them back. */
export const clientLinkRoutes: PersonHandlers = {
  async clientLinks(asked) {
    const row = await seeJob(asked, asked.params.job ?? "");
    const rows = await asked.trx
      .selectFrom("client_links")
      .selectAll()
      .where("workroom_id", "=", asked.workroomId)
      .where("job_id", "=", row.id)
      .orderBy("made_at", "desc")
      .execute();
    return { body: { links: rows.map(linkOf) } };
  },

  async makeClientLink(asked) {
    const { trx, workroomId, person } = asked;
    const { days } = bodyAs(newClientLinkSchema, asked.body ?? {});
    const row = await seeJobOnShelf(asked, asked.params.job ?? "");
    const page = (await offered())(await asked.room.states.at(trx, workroomId, row.id, row.version));
    if (typeof page === "string") throw new Refused(409, page);
    const secret = newSecret();
    const made = await trx
      .insertInto("client_links")
      .values({
        workroom_id: workroomId,
        id: randomUUID(),
        secret: hashOf(secret),
        job_id: row.id,
        version: row.version,
        made_by: person.id,
        until: sql<Date>`now() + make_interval(days => ${sql.lit(days)})`,
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    await noteDeed(trx, workroomId, person.id, "made a link for a client", row.id);
    return { status: 201, body: { link: linkOf(made), token: tokenOf(workroomId, secret) } };
  },

  async takeBackClientLink(asked) {
    const { trx, workroomId, person } = asked;
    const id = uuidParam(asked, "link");
    const taken = await trx
      .updateTable("client_links")
      .set({ taken_back_at: sql<Date>`now()` })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", id)
      .returning("job_id")
      .executeTakeFirst();
    if (!taken) throw notHere();
    await noteDeed(trx, workroomId, person.id, "took back a link for a client", taken.job_id);
    return {};
  },
};

/** What a client can do by a link: look, and accept. */
export const clientRoutes: AnyoneHandlers = {
  async clientLook(asked) {
    const { token } = bodyAs(clientLookSchema, asked.body);
    return {
      body: await byLink(asked, token, (trx, workroomId, link) => pageOf(asked, trx, workroomId, link)),
    };
  },

  async clientAccept(asked) {
    const { token, name } = bodyAs(clientAcceptSchema, asked.body);
    const body = await byLink(asked, token, async (trx, workroomId, link) => {
      if (link.accepted_at !== null) return await pageOf(asked, trx, workroomId, link);
      const accepted = await trx
        .updateTable("client_links")
        .set({ accepted_at: sql<Date>`now()`, accepted_by: name })
        .where("workroom_id", "=", workroomId)
        .where("id", "=", link.id)
        .returningAll()
        .executeTakeFirstOrThrow();
      await noteDeed(trx, workroomId, null, "a client accepted", link.job_id);
      // So that the shelf of those who watch is read again.
      await trx
        .updateTable("jobs")
        .set({ changed_at: sql<Date>`now()` })
        .where("workroom_id", "=", workroomId)
        .where("id", "=", link.job_id)
        .execute();
      return await pageOf(asked, trx, workroomId, accepted);
    });
    return { body };
  },
};

type LinkRow = Selectable<RoomTables["client_links"]>;

async function byLink(
  { room }: AskedByAnyone,
  token: string,
  work: (trx: RoomTrx, workroomId: string, link: LinkRow) => Promise<ClientPage>,
): Promise<ClientPage> {
  const { workroomId, secret } = readToken(token) ?? {};
  if (workroomId === undefined || secret === undefined || !(await room.door.isBegun())) throw linkIsGone();
  return await inWorkroom(await room.door.open(), workroomId, async (trx) => {
    const link = await trx
      .selectFrom("client_links as l")
      .innerJoin("jobs as j", (join) =>
        join.onRef("j.workroom_id", "=", "l.workroom_id").onRef("j.id", "=", "l.job_id"),
      )
      .selectAll("l")
      .where("l.workroom_id", "=", workroomId)
      .where("l.secret", "=", hashOf(secret))
      .where("l.taken_back_at", "is", null)
      .where("l.until", ">", sql<Date>`now()`)
      .where("j.binned_at", "is", null)
      .forUpdate("l")
      .executeTakeFirst();
    if (!link) throw linkIsGone();
    return await work(trx, workroomId, link);
  });
}

function linkIsGone(): Refused {
  return new Refused(404, "This link was taken back or is too old. Ask who sent it for a new one.");
}

async function pageOf(
  { room }: AskedByAnyone,
  trx: RoomTrx,
  workroomId: string,
  link: LinkRow,
): Promise<ClientPage> {
  const job = await room.states.at(trx, workroomId, link.job_id, link.version);
  const page = (await offered())(job);
  if (typeof page === "string") throw new Refused(409, page);
  const { name } = await trx
    .selectFrom("workrooms")
    .select("name")
    .where("id", "=", workroomId)
    .executeTakeFirstOrThrow();
  const { acceptedAt, acceptedBy, until } = linkOf(link);
  return {
    workroom: name,
    ...page,
    until,
    ...(acceptedAt === undefined ? {} : { acceptedAt }),
    ...(acceptedBy === undefined ? {} : { acceptedBy }),
  };
}

function linkOf(row: LinkRow): ClientLink {
  return {
    id: row.id,
    jobId: row.job_id,
    version: row.version,
    madeBy: row.made_by,
    madeAt: row.made_at.toISOString(),
    until: row.until.toISOString(),
    ...(row.taken_back_at === null ? {} : { takenBackAt: row.taken_back_at.toISOString() }),
    ...(row.accepted_at === null ? {} : { acceptedAt: row.accepted_at.toISOString() }),
    ...(row.accepted_by === null ? {} : { acceptedBy: row.accepted_by }),
  };
}
