import { sql } from "kysely";
import { type Job, type JobIssue, stockPieces } from "../../job/index.ts";
import { goesByLength, SHOP_ID } from "../../workroom/protocol/index.ts";
import type { AskedByPerson } from "../http/asked.ts";
import { Refused } from "../refused.ts";
import type { JobRow, ReservationRow } from "../store/tables.ts";
import { cutOffMm } from "./account-cuts.ts";
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
 * two get the same piece, nor the same length of a bolt.
 * @param jobRow held by this request
 * @throws {Refused} what is not there, is promised already, or cannot be shared
 */
export async function reserve(
  asked: AskedByPerson,
  jobRow: JobRow,
  wanted: readonly WantedStock[],
): Promise<void> {
  const { trx, workroomId, person, room } = asked;
  const jobId = jobRow.id;
  const shopRow = await seeJob(asked, SHOP_ID, true);
  const shop = await room.states.at(trx, workroomId, SHOP_ID, shopRow.version, shopRow.request);
  const all = await trx
    .selectFrom("reservations")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .execute();
  const others = all.filter(({ job_id }) => job_id !== jobId);
  const issues = issuesOf(wanted, shop, others);
  if (issues.length > 0) throw new Refused(409, "Some of it is promised already.", issues);
  const before = new Map(all.filter(({ job_id }) => job_id === jobId).map((one) => [one.stock_id, one]));
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
  const own = { workroom_id: workroomId, job_id: jobId, person_id: person.id };
  // What was cut of a piece before it was promised is gone from the shop's length already.
  const job =
    wanted.length === 0
      ? undefined
      : await room.states.at(trx, workroomId, jobId, jobRow.version, jobRow.request);
  const rows = wanted.map(({ stock, lengthMm }) => {
    const cut_mm = before.get(stock)?.cut_mm ?? (job === undefined ? 0 : cutOffMm(job, stock));
    return { ...own, stock_id: stock, length_mm: lengthMm ?? null, cut_mm };
  });
  // Cut off it, and no more of it wanted: remembered, so that undoing the cut gives the shop its length back.
  const cut = [...before.values()]
    .filter(({ stock_id, cut_mm }) => cut_mm > 0 && !wanted.some(({ stock }) => stock === stock_id))
    .map(({ stock_id, cut_mm }) => ({ ...own, stock_id, length_mm: 0, cut_mm }));
  if (rows.length + cut.length === 0) return;
  await trx
    .insertInto("reservations")
    .values([...rows, ...cut])
    .execute();
}

function issuesOf(wanted: readonly WantedStock[], shop: Job, others: readonly ReservationRow[]): JobIssue[] {
  const pieces = new Map(stockPieces(shop.stock).map((piece) => [piece.id, piece]));
  const seen = new Set<string>();
  return wanted.flatMap(({ stock, lengthMm }, index): JobIssue[] => {
    const field = `items[${index}]`;
    const piece = pieces.get(stock);
    if (piece === undefined || seen.has(stock)) {
      return [
        {
          field: `${field}.stock`,
          given: JSON.stringify(stock),
          wanted: "something of the shop's stock, once",
        },
      ];
    }
    seen.add(stock);
    const whole = piece.lengthMm;
    if (lengthMm !== undefined && !goesByLength(piece)) {
      const reason = "all of it: only plain cloth of full width is shared by length";
      return [{ field: `${field}.lengthMm`, given: `${lengthMm} mm`, wanted: reason }];
    }
    const theirs = others.filter(({ stock_id }) => stock_id === stock);
    const left = theirs.reduce((rest, { length_mm }) => rest - (length_mm ?? whole), whole);
    if ((lengthMm ?? whole) <= left + SAME_MM) return [];
    const by = theirs.map(({ job_id }) => job_id).join(", ") || "nobody, it is no longer";
    return [
      {
        field: `${field}.lengthMm`,
        given: `${lengthMm ?? whole} mm`,
        wanted: `at most ${Math.max(0, left)} mm: the rest is promised to ${by}`,
      },
    ];
  });
}
