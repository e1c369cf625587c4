import { randomUUID } from "node:crypto";
import {
  cutOffBoltMm,
  type Job,
  LEAST_PIECE_MM,
  partsOfPiece,
  type Stock,
  type StockPiece,
  stockPieces,
  withPartsFrom,
} from "../../job/index.ts";
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
import { type Known, takeOperations } from "./take-operations.ts";

/**
 * Takes operations on a job; what they cut off a bolt that the shop promised to it, the shop's bolt is shorter by in the
 * same breath, and longer again where a cut is undone. What was left when all was cut comes into the shop so, too.
 * @param row the job, held by this request
 * @param known what is known of them already
 */
export async function takeEdits(
  asked: AskedByPerson,
  row: JobRow,
  operations: readonly Operation[],
  known?: Known,
): Promise<OperationAnswers> {
  const { before, job, ...answers } = await takeOperations(asked, row, operations, known);
  const isCut = answers.answers.some(
    (answer) =>
      answer.ok &&
      answer.operation.changes.some(({ path }) => path[0] === "cutCloth" || path[0] === "leftOver"),
  );
  if (isCut && may(asked.person.role, "change-shop")) await accountCuts(asked, before, job);
  return answers;
}

/** So much a job has cut off a piece of the stock, mm. */
export function cutOffMm({ cutCloth = [], stock, leftOver }: Job, piece: string): number {
  const cutMm = cutOffBoltMm(cutCloth, piece);
  // Lengths are cut all at once, with everything else.
  const length = leftOver?.lengths && stock.lengths?.find(({ id }) => id === piece);
  if (length === undefined) return cutMm;
  const rest = leftOver?.lengths?.find(({ id }) => id === piece);
  return length.lengthMm - (rest?.lengthMm ?? 0);
}

/** Less than this is no cut, mm. */
const LEAST_CUT_MM = 0.01;

async function accountCuts(asked: AskedByPerson, before: Job, job: Job): Promise<void> {
  const { trx, workroomId, room } = asked;
  const all = await trx
    .selectFrom("reservations")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .execute();
  const cuts = all
    .filter(({ job_id }) => job_id === job.id)
    .map((row) => ({ row, cutMm: cutOffMm(job, row.stock_id) - row.cut_mm }))
    .filter(({ cutMm }) => Math.abs(cutMm) > LEAST_CUT_MM);
  const laid = laidBetween(before, job);
  if (cuts.length + laid.added.length + laid.removed.length === 0) return;
  const shopRow = await seeJob(asked, SHOP_ID, true);
  const shop = await room.states.at(trx, workroomId, SHOP_ID, shopRow.version, shopRow.request);
  const cutMm = new Map(cuts.map(({ row, cutMm }) => [row.stock_id, cutMm]));
  const promised = new Set(all.filter(({ job_id }) => job_id !== job.id).map(({ stock_id }) => stock_id));
  const removed = new Set(laid.removed.filter((id) => !promised.has(id)));
  const cut = { ...shop, stock: withoutPieces(stockCut(shop.stock, cutMm, job), removed) };
  const changes = changesBetween(shop, withLaid(cut, job, laid.added));
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

/** Pieces of its own that a job lays into the shop between two states of it, and the ids of those that it takes back. */
function laidBetween(before: Job, after: Job): { added: StockPiece[]; removed: string[] } {
  const of = (job: Job) => new Map(stockPieces(job.leftOver ?? {}).map((piece) => [piece.id, piece]));
  const [had, has] = [of(before), of(after)];
  // Of what the shop had before there is less now, which the cuts tell.
  const ofStock = new Set([before, after].flatMap(({ stock }) => stockPieces(stock).map(({ id }) => id)));
  return {
    added: [...has.values()].filter(({ id }) => !had.has(id) && !ofStock.has(id)),
    removed: [...had.keys()].filter((id) => !has.has(id) && !ofStock.has(id)),
  };
}

function withoutPieces(stock: Stock, ids: ReadonlySet<string>): Stock {
  const { cloth, lengths } = stock;
  return {
    ...(cloth && { cloth: cloth.filter(({ id }) => !ids.has(id)) }),
    ...(lengths && { lengths: lengths.filter(({ id }) => !ids.has(id)) }),
  };
}

/** The shop with pieces of a job, and the cloths and parts that they are of where it has none such. */
function withLaid(shop: Job, job: Job, pieces: readonly StockPiece[]): Job {
  const there = new Set(stockPieces(shop.stock).map(({ id }) => id));
  const added = pieces.filter(({ id }) => !there.has(id));
  const { cloth = [], lengths = [] } = shop.stock;
  return {
    ...added.reduce((held, piece) => withPartsFrom(held, partsOfPiece(job, piece)), shop),
    stock: {
      ...shop.stock,
      cloth: [...cloth, ...added.filter((piece) => "cloth" in piece)],
      lengths: [...lengths, ...added.filter((piece) => "part" in piece)],
    },
  };
}

/** @param job the job that cut, after that */
function stockCut(shop: Stock, cutMm: ReadonlyMap<string, number>, job: Job): Stock {
  return {
    ...shop,
    cloth: piecesCut(shop.cloth ?? [], cutMm, [...(job.stock.cloth ?? []), ...(job.leftOver?.cloth ?? [])]),
    lengths: piecesCut(shop.lengths ?? [], cutMm, job.stock.lengths ?? []),
  };
}

function piecesCut<T extends StockPiece>(
  shop: readonly T[],
  cutMm: ReadonlyMap<string, number>,
  mine: readonly T[],
): T[] {
  const left = shop.flatMap((piece) => {
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
    const isThere = shop.some(({ id }) => id === piece.id);
    return off < 0 && !isThere ? [{ ...piece, lengthMm: -off }] : [];
  });
  return [...left, ...back];
}
