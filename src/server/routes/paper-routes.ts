import type { Selectable } from "kysely";
import { type AskedPaper, newPaperSchema } from "../../workroom/protocol/index.ts";
import type { PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { seeJob, seeJobOnShelf } from "../jobs/see-job.ts";
import { notHere } from "../refused.ts";
import type { RoomTables } from "../store/tables.ts";
import { uuidParam } from "./people-routes.ts";

/** Columns without the file itself. */
const HEAD = ["id", "job_id", "kind", "version", "state", "asked_at", "done_at", "why"] as const;

/** Workbooks, pictures and cutting plans that a worker makes. */
export const paperRoutes: PersonHandlers = {
  async papers(asked) {
    const row = await seeJob(asked, asked.params.job ?? "");
    const rows = await asked.trx
      .selectFrom("papers")
      .select(HEAD)
      .where("workroom_id", "=", asked.workroomId)
      .where("job_id", "=", row.id)
      .orderBy("asked_at", "desc")
      .limit(50)
      .execute();
    return { body: { papers: rows.map(paperOf) } };
  },

  async askForPaper(asked) {
    const { trx, workroomId, person, room } = asked;
    const { id, kind } = bodyAs(newPaperSchema, asked.body);
    const row = await seeJobOnShelf(asked, asked.params.job ?? "");
    await trx
      .insertInto("papers")
      .values({
        workroom_id: workroomId,
        id,
        job_id: row.id,
        kind,
        version: row.version,
        state: "waiting",
        asked_by: person.id,
      })
      .onConflict((clash) => clash.doNothing())
      .execute();
    const paper = await trx
      .selectFrom("papers")
      .select(HEAD)
      .where("workroom_id", "=", workroomId)
      .where("id", "=", id)
      .where("job_id", "=", row.id)
      .executeTakeFirst();
    if (!paper) throw notHere();
    if (paper.state === "waiting") asked.afterwards(() => room.queue?.send({ workroomId, paperId: id }));
    return { status: 201, body: paperOf(paper) };
  },

  async paperFile(asked) {
    const found = await asked.trx
      .selectFrom("papers")
      .select(["job_id", "file", "file_name"])
      .where("workroom_id", "=", asked.workroomId)
      .where("id", "=", uuidParam(asked, "paper"))
      .executeTakeFirst();
    if (!found?.file) throw notHere();
    await seeJob(asked, found.job_id);
    const name = found.file_name ?? "paper";
    const type = name.endsWith(".pdf") ? "application/pdf" : "application/json";
    return { file: { bytes: found.file, type, name } };
  },
};

function paperOf(row: Pick<Selectable<RoomTables["papers"]>, (typeof HEAD)[number]>): AskedPaper {
  return {
    id: row.id,
    jobId: row.job_id,
    kind: row.kind,
    version: row.version,
    state: row.state,
    askedAt: row.asked_at.toISOString(),
    ...(row.done_at === null ? {} : { doneAt: row.done_at.toISOString() }),
    ...(row.why === null ? {} : { why: row.why }),
  };
}
