import { sql } from "kysely";
import { type News, PRESENCE_LASTS_S, type Presence } from "../../workroom/protocol/index.ts";
import { sendAhead } from "../store/send-ahead.ts";
import type { RoomTrx } from "../store/store.ts";

/**
 * What is looked back over: a change is stamped when its transaction begins and seen when it ends, which is later by as
 * much as a request may take.
 */
const OVERLAP = sql`interval '60 seconds'`;

const LASTS = sql`make_interval(secs => ${sql.lit(PRESENCE_LASTS_S)})`;

interface JobNews {
  version: number;
  /** Not only the job itself: what a client said of it, or is promised of the shop. */
  changedAt: string;
  isBinned: boolean;
  madeBy: string;
  isPupils: boolean;
}

/** A workroom as those who watch it are told of it. */
export interface NewsFor {
  now: Date;
  jobs: ReadonlyMap<string, JobNews>;
  /** Tells one state of the work in hand from the next, whatever the clock says. */
  workAt: string;
  here: Presence[];
  sessions: ReadonlySet<string>;
}

/** What was changed since a moment, the last minute where none is given. */
export async function readNews(trx: RoomTrx, workroomId: string, since?: Date): Promise<NewsFor> {
  // A clock that was set back is before what it told: then what was changed since it was set back is new.
  const from =
    since === undefined
      ? sql<Date>`now() - ${OVERLAP}`
      : sql<Date>`least(${since}::timestamptz, now()) - ${OVERLAP}`;
  const jobs = await sendAhead(
    trx,
    trx
      .selectFrom("jobs as j")
      .innerJoin("people as p", (join) =>
        join.onRef("p.workroom_id", "=", "j.workroom_id").onRef("p.id", "=", "j.made_by"),
      )
      .select(["j.id", "j.version", "j.binned_at", "j.made_by", "p.role"])
      .select(sql<string>`j.changed_at::text`.as("changed_at"))
      .where("j.workroom_id", "=", workroomId)
      .where("j.changed_at", ">", from),
  );
  const work = await sendAhead(
    trx,
    trx
      .selectFrom("work")
      .select([
        sql<Date>`now()`.as("now"),
        sql<string | null>`md5(string_agg(changed_at::text, ' ' order by job_id, window_id))`.as("last"),
      ])
      .where("workroom_id", "=", workroomId)
      .where("changed_at", ">", from),
  );
  const here = await sendAhead(
    trx,
    trx
      .selectFrom("presence")
      .select(["session_id", "person_id", "job_id", "window_id"])
      .where("workroom_id", "=", workroomId)
      .where("seen_at", ">", sql<Date>`now() - ${LASTS}`)
      // Later than now only who was seen before the clock was set back.
      .where("seen_at", "<", sql<Date>`now() + ${LASTS}`)
      .orderBy("session_id"),
  );
  const sessions = await trx
    .selectFrom("sessions as s")
    .innerJoin("people as p", (join) =>
      join.onRef("p.workroom_id", "=", "s.workroom_id").onRef("p.id", "=", "s.person_id"),
    )
    .select("s.id")
    .where("s.workroom_id", "=", workroomId)
    .where("s.until", ">", sql<Date>`now()`)
    .where("p.is_here", "=", true)
    .execute();
  const [atWork] = await work();
  if (!atWork) throw new Error("a sum over no row has a row");
  return {
    now: atWork.now,
    jobs: new Map(
      (await jobs()).map(({ id, version, changed_at, binned_at, made_by, role }) => [
        id,
        {
          version,
          changedAt: changed_at,
          isBinned: binned_at !== null,
          madeBy: made_by,
          isPupils: role === "class",
        },
      ]),
    ),
    workAt: atWork.last ?? "",
    here: (await here()).map(({ session_id, person_id, job_id, window_id }) => ({
      session: session_id,
      person: person_id,
      ...(job_id === null ? {} : { jobId: job_id }),
      ...(window_id === null ? {} : { windowId: window_id }),
    })),
    sessions: new Set(sessions.map(({ id }) => id)),
  };
}

/** What one watcher is told: what differs from `last`, everything where there is none. */
export function sentTo(
  { personId, isClass }: { personId: string; isClass: boolean },
  now: NewsFor,
  last?: NewsFor,
): News {
  const seen = [...now.jobs].filter(([, job]) => !isClass || !job.isPupils || job.madeBy === personId);
  const changed = seen.filter(([id, { version, changedAt }]) => {
    const before = last?.jobs.get(id);
    return before?.version !== version || before.changedAt !== changedAt;
  });
  const moved = seen.filter(([id, { isBinned }]) => last?.jobs.get(id)?.isBinned !== isBinned);
  return {
    now: now.now.toISOString(),
    jobs: changed.map(([id, { version }]) => ({ id, version })),
    isShelfChanged: moved.length > 0,
    isWorkChanged: now.workAt !== "" && now.workAt !== last?.workAt,
    here: now.here,
  };
}
