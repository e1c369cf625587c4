import { randomUUID } from "node:crypto";
import { type Job, type JobIssue, LEAST_PIECE_MM, type Stock } from "../../job/index.ts";
import { changesBetween } from "../../workroom/merge/index.ts";
import {
  goesByLength,
  may,
  type Operation,
  type OperationAnswers,
  SHOP_ID,
} from "../../workroom/protocol/index.ts";
import type { AskedByPerson } from "../http/asked.ts";
import type { JobRow } from "../store/tables.ts";
import { seeJob } from "./see-job.ts";
import { takeOperations } from "./take-operations.ts";

/**
 * Takes operations on a job; what they cut off a bolt that the shop promised to it, the shop's bolt is shorter by in the
 * same breath, and longer again where a cut is undone.
 * @param row the job, held by this request
 * @param unfit what is known to be wrong with operations, by their ids
 */
export async function takeEdits(
  asked: AskedByPerson,
  row: JobRow,
  operations: readonly Operation[],
  unfit?: ReadonlyMap<string, JobIssue[]>,
): Promise<OperationAnswers> {
  const { job, ...answers } = await takeOperations(asked, row, operations, unfit);
  const isCut = answers.answers.some(
    (answer) => answer.ok && answer.operation.changes.some(({ path }) => path[0] === "cutCloth"),
  );
  if (isCut && may(asked.person.role, "change-shop")) await accountCuts(asked, job);
  return answers;
}

/** So much a job has cut off a piece of the stock, mm. */
export function cutOffMm(job: Job, stock: string): number {
  return (job.cutCloth ?? [])
    .flatMap(({ bolts = [] }) => bolts)
    .reduce((sum, { bolt, cutMm }) => (bolt === stock ? sum + cutMm : sum), 0);
}

/** Less than this is no cut, mm. */
const LEAST_CUT_MM = 0.01;

async function accountCuts(asked: AskedByPerson, job: Job): Promise<void> {
  const { trx, workroomId, room } = asked;
  const own = await trx
    .selectFrom("reservations")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .where("job_id", "=", job.id)
    .execute();
  const cuts = own
    .map((row) => ({ row, cutMm: cutOffMm(job, row.stock_id) - row.cut_mm }))
    .filter(({ cutMm }) => Math.abs(cutMm) > LEAST_CUT_MM);
  if (cuts.length === 0) return;
  const shopRow = await seeJob(asked, SHOP_ID, true);
  const shop = await room.states.at(trx, workroomId, SHOP_ID, shopRow.version, shopRow.request);
  const cutMm = new Map(cuts.map(({ row, cutMm }) => [row.stock_id, cutMm]));
  const changes = changesBetween(shop, { ...shop, stock: stockCut(shop.stock, cutMm, job.stock) });
  if (changes.length > 0) {
    const at = new Date().toISOString();
    const base = { jobId: SHOP_ID, baseVersion: shopRow.version, at };
    await takeOperations(asked, shopRow, [{ id: randomUUID(), ...base, changes }]);
  }
  for (const { row, cutMm } of cuts) {
    await trx
      .updateTable("reservations")
      .set({
        cut_mm: row.cut_mm + cutMm,
        length_mm: row.length_mm === null ? null : Math.max(0, row.length_mm - cutMm),
      })
      .where("workroom_id", "=", workroomId)
      .where("job_id", "=", job.id)
      .where("stock_id", "=", row.stock_id)
      .execute();
  }
}

function stockCut(shop: Stock, cutMm: ReadonlyMap<string, number>, { cloth: mine = [] }: Stock): Stock {
  const cloth = (shop.cloth ?? []).flatMap((piece) => {
    const off = cutMm.get(piece.id);
    if (off === undefined) return [piece];
    const lengthMm = Math.round((piece.lengthMm - off) * 1e4) / 1e4;
    if (lengthMm < LEAST_PIECE_MM) return [];
    // Who has all of it knows best where its flaws and its pattern are now.
    const asLeft = goesByLength(piece) ? undefined : mine.find(({ id }) => id === piece.id);
    return [{ ...(asLeft ?? piece), lengthMm }];
  });
  // A cut that used a piece up and is undone.
  const back = mine.flatMap((piece) => {
    const off = cutMm.get(piece.id) ?? 0;
    const isThere = shop.cloth?.some(({ id }) => id === piece.id);
    return off < 0 && !isThere ? [{ ...piece, lengthMm: -off }] : [];
  });
  return { ...shop, cloth: [...cloth, ...back] };
}
