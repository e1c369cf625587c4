import { randomInt } from "node:crypto";
import {
  LABEL_CODE_LENGTH,
  LABEL_LETTERS,
  type Label,
  newLabelsSchema,
  readLabelCode,
} from "../../workroom/protocol/index.ts";
import type { AskedByPerson, PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { seeJobOnShelf } from "../jobs/see-job.ts";
import { Refused } from "../refused.ts";

/** Short codes that stand on the labels of shades. A code tells nothing: what it opens is for who may see the job. */
export const labelRoutes: PersonHandlers = {
  async makeLabels(asked) {
    const { windows } = bodyAs(newLabelsSchema, asked.body);
    const row = await seeJobOnShelf(asked, asked.params.job ?? "", true);
    const { trx, workroomId, room } = asked;
    const job = await room.states.at(trx, workroomId, row.id, row.version, row.request);
    const there = new Set(job.rooms.flatMap((one) => one.windows.map(({ id }) => id)));
    const before = await labelsOf(asked, row.id);
    const known = new Set(before.map(({ windowId }) => windowId));
    const lacking = [...new Set(windows)].filter((id) => there.has(id) && !known.has(id));
    for (const windowId of lacking) await makeLabel(asked, row.id, windowId);
    const labels = (await labelsOf(asked, row.id)).filter(({ windowId }) => windows.includes(windowId));
    return { status: 201, body: { labels } };
  },

  async label(asked) {
    const code = readLabelCode(asked.params.code ?? "");
    const found =
      code === undefined
        ? undefined
        : await asked.trx
            .selectFrom("labels")
            .selectAll()
            .where("workroom_id", "=", asked.workroomId)
            .where("code", "=", code)
            .executeTakeFirst();
    if (!found) throw new Refused(404, "No shade of this workroom has that code.");
    await seeJobOnShelf(asked, found.job_id);
    const body: Label = { code: found.code, jobId: found.job_id, windowId: found.window_id };
    return { body };
  },
};

async function labelsOf({ trx, workroomId }: AskedByPerson, jobId: string): Promise<Label[]> {
  const rows = await trx
    .selectFrom("labels")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .where("job_id", "=", jobId)
    .execute();
  return rows.map(({ code, job_id, window_id }) => ({ code, jobId: job_id, windowId: window_id }));
}

/** Of 31⁶ codes another is drawn where one is taken. */
const MOST_DRAWN = 20;

async function makeLabel({ trx, workroomId }: AskedByPerson, jobId: string, windowId: string): Promise<void> {
  for (let drawn = 0; drawn < MOST_DRAWN; drawn++) {
    const made = await trx
      .insertInto("labels")
      .values({ workroom_id: workroomId, code: newLabelCode(), job_id: jobId, window_id: windowId })
      .onConflict((clash) => clash.doNothing())
      .returning("code")
      .executeTakeFirst();
    if (made) return;
  }
  throw new Error(`no code was free for a label of ${jobId}`);
}

function newLabelCode(): string {
  return Array.from({ length: LABEL_CODE_LENGTH }, () => LABEL_LETTERS[randomInt(LABEL_LETTERS.length)]).join(
    "",
  );
}
