import type { BoltPlan, CutBar } from "../../cutting/index.ts";
import { type Job, resolveCutting, type Stock } from "../../job/index.ts";
import type { ClothCutting, CuttingPlan, LengthsCutting } from "./cutting-plan.ts";
import { withOwnIds } from "./own-ids.ts";

type ClothInStock = NonNullable<Stock["cloth"]>[number];
type LengthInStock = NonNullable<Stock["lengths"]>[number];

/** Room for a number behind them, within what a job may hold. */
const MOST_ID = 50;
const MOST_NAME = 110;

/** The stock once everything is cut as planned: what was used is shorter or gone, what is worth keeping is there by name. */
export function stockAfter(job: Job, cutting: CuttingPlan): Stock {
  const stock = withOwnIds(job.stock);
  const names = new Set((stock.cloth ?? []).flatMap(({ name }) => name ?? []));
  const freshName = (wish: string) => fresh(names, wish.slice(0, MOST_NAME), " ");
  const ids = new Set([...(stock.cloth ?? []), ...(stock.lengths ?? [])].map(({ id }) => id));
  const freshId = (wish: string) => fresh(ids, wish.slice(0, MOST_ID), "-");
  return {
    ...stock,
    cloth: clothAfter(stock, resolveCutting(job.cutting).keepClothLengthMm, cutting.cloths, {
      freshId,
      freshName,
    }),
    lengths: lengthsAfter(stock, cutting.lengths, freshId),
  };
}

/** The wish, or the first of it with a number that is not taken yet; takes it. */
function fresh(taken: Set<string>, wish: string, joint: string): string {
  let found = wish;
  for (let n = 2; taken.has(found); n++) found = `${wish}${joint}${n}`;
  taken.add(found);
  return found;
}

function clothAfter(
  stock: Stock,
  keepMm: number,
  cloths: readonly ClothCutting[],
  { freshId, freshName }: Record<"freshId" | "freshName", (wish: string) => string>,
): ClothInStock[] {
  const used = new Map<string, { cloth: ClothCutting; bolt: BoltPlan }>();
  for (const cloth of cloths) {
    if (!("bolts" in cloth.answer)) continue;
    for (const bolt of cloth.answer.bolts) used.set(`${cloth.clothId} ${bolt.boltId}`, { cloth, bolt });
  }
  const held = (stock.cloth ?? []).flatMap((piece) => {
    const cut = used.get(`${piece.cloth} ${piece.id}`);
    if (cut === undefined) return [piece];
    const lengthMm = piece.lengthMm - cut.bolt.usedMm;
    return lengthMm < keepMm ? [] : [shortened(piece, cut.bolt.usedMm, cut.cloth)];
  });
  const kept = [...used.values()].flatMap(({ cloth, bolt }) => {
    const from = (stock.cloth ?? []).find(({ id }) => id === bolt.boltId);
    return bolt.remnants.map(
      (remnant, n): ClothInStock => ({
        id: freshId(`${cloth.clothId}-${bolt.boltId}-${n + 1}`),
        name: freshName(remnant.name),
        cloth: cloth.clothId,
        widthMm: tenth(remnant.widthMm),
        lengthMm: tenth(remnant.lengthMm),
        ...(from?.lot === undefined ? {} : { lot: from.lot }),
        ...repeatAfter(cloth, bolt.boltId, remnant.yMm),
      }),
    );
  });
  return [...held, ...kept];
}

/** What stays of a bolt: its flaws, and the pattern, come nearer to the end. */
function shortened(piece: ClothInStock, usedMm: number, cloth: ClothCutting): ClothInStock {
  const { flaws, ...rest } = piece;
  const left = (flaws ?? []).flatMap(({ fromMm, lengthMm, ...flaw }) => {
    const endMm = fromMm + lengthMm - usedMm;
    const startMm = Math.max(0, fromMm - usedMm);
    return endMm > 0 ? [{ ...flaw, fromMm: startMm, lengthMm: endMm - startMm }] : [];
  });
  return {
    ...rest,
    lengthMm: tenth(piece.lengthMm - usedMm),
    ...repeatAfter(cloth, piece.id, usedMm),
    ...(left.length > 0 ? { flaws: left } : {}),
  };
}

/** Where a repeat begins on cloth of which so much was cut off. */
function repeatAfter(
  { problem }: ClothCutting,
  boltId: string,
  offMm: number,
): Pick<ClothInStock, "repeatStartMm"> {
  const { repeat } = problem;
  if (repeat === undefined) return {};
  const from = (problem.bolts.find(({ id }) => id === boltId)?.rowMm ?? 0) - offMm;
  return { repeatStartMm: tenth(from - Math.floor(from / repeat.alongMm) * repeat.alongMm) };
}

function lengthsAfter(
  stock: Stock,
  lengths: readonly LengthsCutting[],
  freshId: (wish: string) => string,
): LengthInStock[] {
  const bars = lengths.flatMap((one) =>
    one.answer.kind === "infeasible" ? [] : one.answer.plan.bars.map((bar) => ({ one, bar })),
  );
  const cut = new Map(
    bars
      .filter(({ one, bar }) => !one.newStockIds.includes(bar.stockId))
      .map(({ bar }) => [bar.stockId, bar]),
  );
  const held = (stock.lengths ?? []).flatMap((piece) => offcutOf(piece, cut.get(piece.id)));
  const kept = bars.flatMap(({ one, bar }): LengthInStock[] =>
    bar.kept && one.newStockIds.includes(bar.stockId)
      ? [{ id: freshId(`${one.partId}-offcut`), part: one.partId, lengthMm: tenth(bar.offcutMm) }]
      : [],
  );
  return [...held, ...kept];
}

function offcutOf(piece: LengthInStock, bar: CutBar | undefined): LengthInStock[] {
  if (bar === undefined) return [piece];
  return bar.kept ? [{ ...piece, lengthMm: tenth(bar.offcutMm) }] : [];
}

/** Down to the tenth of a millimetre: nobody measures a remnant finer. */
function tenth(mm: number): number {
  return Math.floor(mm * 10 + 1e-6) / 10;
}
