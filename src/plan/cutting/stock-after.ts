import type { BoltPlan, CutBar } from "../../cutting/index.ts";
import { type Job, resolveCutting, type Stock } from "../../job/index.ts";
import type { ClothCutting, CuttingPlan, LengthsCutting } from "./cutting-plan.ts";

type ClothInStock = NonNullable<Stock["cloth"]>[number];
type LengthInStock = NonNullable<Stock["lengths"]>[number];

/** The stock once everything is cut as planned: what was used is shorter or gone, what is worth keeping is there by name. */
export function stockAfter(job: Job, cutting: CuttingPlan): Stock {
  const taken = new Set([...(job.stock.cloth ?? []), ...(job.stock.lengths ?? [])].map(({ id }) => id));
  const freshId = (wish: string) => {
    let id = wish.slice(0, 50);
    for (let n = 2; taken.has(id); n++) id = `${wish.slice(0, 50)}-${n}`;
    taken.add(id);
    return id;
  };
  return {
    ...job.stock,
    cloth: clothAfter(job, cutting.cloths, freshId),
    lengths: lengthsAfter(job, cutting.lengths, freshId),
  };
}

function clothAfter(
  job: Job,
  cloths: readonly ClothCutting[],
  freshId: (wish: string) => string,
): ClothInStock[] {
  const { keepClothLengthMm } = resolveCutting(job.cutting);
  const used = new Map<string, { cloth: ClothCutting; bolt: BoltPlan }>();
  for (const cloth of cloths) {
    if (!("bolts" in cloth.answer)) continue;
    for (const bolt of cloth.answer.bolts) used.set(`${cloth.clothId} ${bolt.boltId}`, { cloth, bolt });
  }
  const held = (job.stock.cloth ?? []).flatMap((piece) => {
    const cut = used.get(`${piece.cloth} ${piece.id}`);
    if (cut === undefined) return [piece];
    const lengthMm = piece.lengthMm - cut.bolt.usedMm;
    return lengthMm < keepClothLengthMm ? [] : [shortened(piece, cut.bolt.usedMm, cut.cloth)];
  });
  const kept = [...used.values()].flatMap(({ cloth, bolt }) => {
    const from = (job.stock.cloth ?? []).find(({ id }) => id === bolt.boltId);
    return bolt.remnants.map(
      (remnant): ClothInStock => ({
        id: freshId(`${cloth.clothId}-${remnant.name}`),
        name: `Remnant ${remnant.name}`,
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
  job: Job,
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
  const held = (job.stock.lengths ?? []).flatMap((piece) => offcutOf(piece, cut.get(piece.id)));
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
