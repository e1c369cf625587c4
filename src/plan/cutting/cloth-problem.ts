import type { Bolt, ClothProblem, Piece } from "../../cutting/index.ts";
import type { Cloth, CutCloth, Job, LaidPiece, ResolvedCutting, Stock } from "../../job/index.ts";
import { columnsOf, onRepeatGridMm } from "./cloth-pieces.ts";

/** What is at hand costs so little beside new cloth, but something: less of it is better too. */
const AT_HAND_SHARE = 0.01;
/** Dearer than this beside new cloth nothing is told apart. */
const MOST_SHARE = 1000;
const NEW = "new";

/** The pieces of one cloth and where they can come from; undefined where no shade takes any of it. */
export function clothProblem(
  all: readonly Piece[],
  cloth: Cloth,
  stock: Stock,
  cutting: ResolvedCutting,
  { laidPieces = [], cutCloth = [] }: Pick<Job, "laidPieces" | "cutCloth"> = {},
): { problem: ClothProblem; newBoltId: string; boltNames: Record<string, string> } | undefined {
  if (all.length === 0) return undefined;
  const cutPieces = cutCloth.flatMap((one) => (one.cloth === cloth.id ? one.pieces : []));
  const cut = new Set(cutPieces.map((one) => one.piece));
  const pieces = all.filter((one) => !cut.has(one.id));
  const held = (stock.cloth ?? []).filter((one) => one.cloth === cloth.id);
  const newBoltId = unusedId(held.map(({ id }) => id));
  const boltNames: Record<string, string> = { [newBoltId]: "New cloth" };
  for (const [n, { id, name }] of held.entries()) boltNames[id] = name ?? `Piece ${n + 1} in stock`;
  const columnMm = columnsOf(cloth).firstMm;
  const bolts: Bolt[] = held.map((one) => ({
    ...boltInStock(one, cloth, columnMm),
    name: boltNames[one.id] ?? one.id,
  }));
  bolts.push({
    id: newBoltId,
    name: cloth.name,
    remnant: false,
    widthMm: cloth.usableWidthMm,
    flaws: [],
    costPerMm: 1,
    ...(cloth.repeat ? { columnMm } : {}),
  });
  return {
    newBoltId,
    boltNames,
    problem: {
      id: cloth.id,
      bolts,
      pieces,
      ...repeatOf(
        cloth,
        pieces.some(({ start }) => start?.acrossMm !== undefined),
      ),
      gapMm: cutting.gapMm,
      cutting: cutting.way === "free" ? { kind: "free" } : { kind: "straight", stages: cutting.stages },
      ...(cutting.tableMm === undefined ? {} : { tableMm: cutting.tableMm }),
      table: {
        toleranceMm: cutting.toleranceMm,
        ...(cutting.spread === "doubled" ? { doubled: true } : {}),
        ...(cutting.hand === "left" ? { leftHanded: true } : {}),
      },
      keep: { widthMm: cutting.keepClothWidthMm, lengthMm: cutting.keepClothLengthMm },
      ...lotsOf(all, cutPieces),
      ...heldOf(laidPieces, cloth.id, newBoltId, cut),
      seed: cutting.seed,
    },
  };
}

/** The lots that the rest of a shade must match: of what is cut of it, where that is of one lot. */
function lotsOf(all: readonly Piece[], cutPieces: CutCloth["pieces"]): Pick<ClothProblem, "boundLots"> {
  const groups = new Map(all.map(({ id, lotGroup }) => [id, lotGroup]));
  const lots = new Map<string, Set<string>>();
  for (const { piece, lot } of cutPieces) {
    const group = groups.get(piece);
    if (group === undefined || lot === undefined) continue;
    lots.set(group, (lots.get(group) ?? new Set()).add(lot));
  }
  const bound = [...lots].flatMap(([group, [lot, ...more]]) =>
    lot === undefined || more.length > 0 ? [] : [[group, lot] as const],
  );
  return bound.length === 0 ? {} : { boundLots: Object.fromEntries(bound) };
}

/** What is cut is held no more. */
function heldOf(
  laidPieces: readonly LaidPiece[],
  clothId: string,
  newBoltId: string,
  cut: ReadonlySet<string>,
): Pick<ClothProblem, "held"> {
  const held = laidPieces.flatMap(({ cloth, piece, bolt, xMm, yMm, turn }) =>
    cloth !== clothId || cut.has(piece)
      ? []
      : [{ pieceId: piece, boltId: bolt ?? newBoltId, xMm, yMm, turn }],
  );
  return held.length === 0 ? {} : { held };
}

function unusedId(taken: readonly string[]): string {
  let id = NEW;
  while (taken.includes(id)) id = `${id}-cloth`;
  return id;
}

type ClothInStock = NonNullable<Stock["cloth"]>[number];

/** Costs are in millimetres of new cloth. */
function boltInStock(held: ClothInStock, cloth: Cloth, columnMm: number): Bolt {
  const widthMm = Math.min(held.widthMm ?? cloth.usableWidthMm, cloth.usableWidthMm);
  const priced = held.pricePerM !== undefined && cloth.pricePerM !== undefined && cloth.pricePerM > 0;
  const share = priced ? (held.pricePerM ?? 0) / (cloth.pricePerM ?? 1) : AT_HAND_SHARE;
  return {
    id: held.id,
    remnant: true,
    widthMm,
    lengthMm: held.lengthMm,
    flaws: (held.flaws ?? []).map(({ fromMm, lengthMm, xMm = 0, widthMm: across }) => ({
      xMm,
      yMm: fromMm,
      widthMm: across ?? Math.max(0.1, widthMm - xMm),
      lengthMm,
    })),
    costPerMm: Math.min(MOST_SHARE, Math.max(share, AT_HAND_SHARE)),
    ...(held.lot === undefined ? {} : { lot: held.lot }),
    ...(cloth.repeat ? { columnMm: held.columnStartMm ?? columnMm, rowMm: held.repeatStartMm ?? 0 } : {}),
  };
}

/** A repeat shorter than this is not matched by anybody, mm. */
const LEAST_REPEAT_MM = 10;
/** Without a known width of the repeat each piece has its own place along, half drops included. */
function repeatOf(cloth: Cloth, acrossKnown: boolean): Pick<ClothProblem, "repeat"> {
  const { repeat } = cloth;
  if (repeat === undefined || repeat.verticalMm < LEAST_REPEAT_MM) return {};
  const alongMm = onRepeatGridMm(repeat.verticalMm);
  const { stepMm } = columnsOf(cloth);
  if (!acrossKnown || stepMm < LEAST_REPEAT_MM) return { repeat: { alongMm, match: "straight" } };
  return { repeat: { alongMm, acrossMm: stepMm, match: repeat.match } };
}
