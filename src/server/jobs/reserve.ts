import { sql } from "kysely";
import type { Job, JobIssue } from "../../job/index.ts";
import { SHOP_ID } from "../../workroom/protocol/index.ts";
import type { AskedByPerson } from "../http/asked.ts";
import { Refused } from "../refused.ts";
import { seeJob } from "./see-job.ts";

/** A bolt, remnant or length of the shop that a job promises itself, or some of it. */
export interface WantedStock {
  stock: string;
  lengthMm?: number | undefined;
}

/** Lengths that differ by less are the same, mm. */
const SAME_MM = 0.05;

/**
 * Promises a job parts of the shop's stock, in place of what it had. Whoever reserves waits for who does so before: no
 * two get the same piece.
 * @throws {Refused} what is not there, or is promised already
 */
export async function reserve(
  asked: AskedByPerson,
  jobId: string,
  wanted: readonly WantedStock[],
): Promise<void> {
  const { trx, workroomId, person, room } = asked;
  const shopRow = await seeJob(asked, SHOP_ID, true);
  const shop = await room.states.at(trx, workroomId, SHOP_ID, shopRow.version, shopRow.request);
  const others = await trx
    .selectFrom("reservations")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .where("job_id", "!=", jobId)
    .execute();
  const lengths = stockLengths(shop);
  const issues: JobIssue[] = [];
  const byStock = new Map<string, WantedStock>();
  for (const [index, item] of wanted.entries()) {
    const field = `items[${index}]`;
    const whole = lengths.get(item.stock);
    if (whole === undefined || byStock.has(item.stock)) {
      const given = JSON.stringify(item.stock);
      issues.push({ field: `${field}.stock`, given, wanted: "something of the shop's stock, once" });
      continue;
    }
    byStock.set(item.stock, item);
    const theirs = others.filter(({ stock_id }) => stock_id === item.stock);
    const left = theirs.reduce((rest, { length_mm }) => rest - (length_mm ?? whole), whole);
    if ((item.lengthMm ?? whole) > left + SAME_MM) {
      issues.push({
        field: `${field}.lengthMm`,
        given: `${item.lengthMm ?? whole} mm`,
        wanted: `at most ${Math.max(0, left)} mm: the rest is promised to ${theirs.map(({ job_id }) => job_id).join(", ") || "nobody, it is no longer"}`,
      });
    }
  }
  if (issues.length > 0) throw new Refused(409, "Some of it is promised already.", issues);
  await trx
    .deleteFrom("reservations")
    .where("workroom_id", "=", workroomId)
    .where("job_id", "=", jobId)
    .execute();
  // So that those who watch read the shop again.
  await trx
    .updateTable("jobs")
    .set({ changed_at: sql<Date>`now()` })
    .where("workroom_id", "=", workroomId)
    .where("id", "=", SHOP_ID)
    .execute();
  if (wanted.length === 0) return;
  await trx
    .insertInto("reservations")
    .values(
      wanted.map(({ stock, lengthMm }) => ({
        workroom_id: workroomId,
        stock_id: stock,
        job_id: jobId,
        length_mm: lengthMm ?? null,
        person_id: person.id,
      })),
    )
    .execute();
}

/** Everything that lies in the shop, by its id, with its length, mm. */
function stockLengths({ stock }: Job): Map<string, number> {
  return new Map(
    [...(stock.cloth ?? []), ...(stock.lengths ?? [])].map(({ id, lengthMm }) => [id, lengthMm]),
  );
}
