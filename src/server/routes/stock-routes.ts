import { type Reservation, reserveSchema } from "../../workroom/protocol/index.ts";
import type { PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { reserve } from "../jobs/reserve.ts";
import { seeJobOnShelf } from "../jobs/see-job.ts";

export const stockRoutes: PersonHandlers = {
  async reservations({ trx, workroomId }) {
    const rows = await trx
      .selectFrom("reservations")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where((where) => where.or([where("length_mm", "is", null), where("length_mm", ">", 0)]))
      .execute();
    const reservations = rows.map(
      (row): Reservation => ({
        stock: row.stock_id,
        jobId: row.job_id,
        ...(row.length_mm === null ? {} : { lengthMm: row.length_mm }),
        person: row.person_id,
        at: row.at.toISOString(),
      }),
    );
    return { body: { reservations } };
  },

  async reserve(asked) {
    const { items } = bodyAs(reserveSchema, asked.body);
    const row = await seeJobOnShelf(asked, asked.params.job ?? "", true);
    await reserve(asked, row, items);
    asked.afterwards(() => asked.room.news.wake(asked.workroomId));
    return {};
  },
};
