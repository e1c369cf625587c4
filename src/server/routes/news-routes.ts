import { sql } from "kysely";
import { herePresenceSchema } from "../../workroom/protocol/index.ts";
import type { PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { readNews, sentTo } from "../news/read-news.ts";
import { Refused } from "../refused.ts";

export const newsRoutes: PersonHandlers = {
  async news({ trx, workroomId, person, query }) {
    const text = query("since");
    const since = text === undefined ? undefined : new Date(text);
    if (since !== undefined && Number.isNaN(since.getTime())) {
      const given = String(text).slice(0, 40);
      throw new Refused(400, "The request cannot be used.", [{ field: "since", given, wanted: "a moment" }]);
    }
    const now = await readNews(trx, workroomId, since);
    return { body: sentTo({ personId: person.id, isClass: person.role === "class" }, now) };
  },

  async presence({ trx, workroomId, person, session, body, room, afterwards }) {
    const { jobId = null, windowId = null } = bodyAs(herePresenceSchema, body);
    const place = { job_id: jobId, window_id: windowId, seen_at: sql<Date>`now()` };
    await trx
      .insertInto("presence")
      .values({ workroom_id: workroomId, session_id: session, person_id: person.id, ...place })
      .onConflict((clash) => clash.columns(["workroom_id", "session_id"]).doUpdateSet(place))
      .execute();
    afterwards(() => room.news.wake(workroomId));
    return {};
  },
};
