import type { BoltPlan, LaidOnBolt, Leaf, Placement, Rect } from "../../cutting/index.ts";
import { type PatchOperation, setPatch } from "../../figures/index.ts";
import type { CutCloth, Job, LaidPiece } from "../../job/index.ts";
import { type ClothInStock, restOf, sheetInStock } from "./cloth-left.ts";
import { boltName, type ClothCutting, type KnownCloth } from "./cutting-plan.ts";
import { halves } from "./halves.ts";
import { freshNames, withOwnIds } from "./own-ids.ts";

/** The cuts of a ticket that are made, up to one and with it. */
export interface CutsMade {
  cloth: ClothCutting;
  bolt: BoltPlan;
  /** Number of the last cut made. */
  upTo: number;
  /** What is left on the bolt as it was measured, mm; left out: as planned. Needed of cloth bought to no known length. */
  leftMm?: number;
}

/** Shorter or narrower than this nothing is kept, mm. */
const LEAST_MM = 10;

/** Ids of what a bolt is cut into begin so, with room for a number. */
function stemOf({ clothId }: ClothCutting, { boltId }: BoltPlan): string {
  return `${clothId}-${boltId}-cut`.slice(0, MOST_STEM);
}

const MOST_STEM = 44;

/** Whether a bolt of a plan was cut into after that plan was made: it is gone or shorter, or sheets or pieces came of it. */
export function isCutSince(job: Job, cloth: ClothCutting, bolt: BoltPlan): boolean {
  const held = (job.stock.cloth ?? []).filter((one) => one.cloth === cloth.clothId);
  const then = new Map(cloth.problem.bolts.map((one) => [one.id, one]));
  const now = held.find(({ id }) => id === bolt.boltId);
  const isWhole = bolt.boltId === cloth.newBoltId || now?.lengthMm === then.get(bolt.boltId)?.lengthMm;
  const stem = stemOf(cloth, bolt);
  const cut = (job.cutCloth ?? []).flatMap((one) => (one.cloth === cloth.clothId ? one.pieces : []));
  const isCut = new Set(cut.map(({ piece }) => piece));
  return (
    !isWhole ||
    held.some(({ id }) => id.startsWith(stem) && !then.has(id)) ||
    bolt.placements.some(({ pieceId }) => isCut.has(pieceId))
  );
}

/** What follows from cuts made. */
export interface AfterCuts {
  /** What the job takes in. */
  patch: PatchOperation[];
  /** How the rest was to be cut, on the sheets and bolts as they are in stock now: a plan to go on from. */
  still: KnownCloth;
}

/**
 * What a job holds once some cuts of a bolt are made: the pieces that came free are cut, every sheet that is still to be
 * cut and what is left on the bolt lie in stock, and the rest is planned anew from there.
 *
 * @throws where the bolt has no cut of that number
 */
export function cutsMade(job: Job, { cloth, bolt, upTo, leftMm }: CutsMade): AfterCuts {
  if (!bolt.cuts.some(({ number }) => number === upTo)) throw new Error(`invalid cut number: ${upTo}`);
  const stock = withOwnIds(job.stock);
  const from = (stock.cloth ?? []).find(({ id, cloth: of }) => id === bolt.boltId && of === cloth.clothId);
  const { sheets, pieces, rest } = sheetsAfter(cloth, bolt, upTo);
  const { freshId, freshName } = freshNames(stock);
  const name = boltName(cloth, bolt.boltId);
  const lot = lotOf(cloth, bolt, from, freshName);
  const inStock = (sheet: Rect, wish: string): ClothInStock =>
    sheetInStock(cloth, { boltId: bolt.boltId, from }, sheet, {
      id: freshId(stemOf(cloth, bolt)),
      name: freshName(wish),
      widthMm: asCut(sheet.widthMm),
      lengthMm: asCut(sheet.lengthMm),
      lot,
    });
  const lengthMm = leftMm ?? (from === undefined ? 0 : from.lengthMm - rest.yMm);
  const left = () =>
    from === undefined
      ? inStock({ ...rest, lengthMm }, `${name}, left on the bolt`)
      : { ...restOf(from, rest.yMm, cloth), lengthMm: asCut(lengthMm), lot };
  const onBolt = lengthMm < LEAST_MM ? [] : [left()];
  const cutOff = sheets.map((sheet, n) => inStock(sheet, `${name}, sheet ${n + 1} cut off`));
  const boughtMm = from === undefined ? rest.yMm + lengthMm : 0;
  const cutPieces = pieces.map((piece) => ({ ...piece, lot }));
  // Of what was measured too short to keep, all is gone.
  const off = from && { bolt: from.id, cutMm: asCut(onBolt.length === 0 ? from.lengthMm : rest.yMm) };
  const restId = onBolt[0]?.id;
  const areas = [
    ...(restId === undefined ? [] : [{ boltId: restId, area: rest }]),
    ...sheets.map((area, n) => ({ boltId: cutOff[n]?.id ?? "", area })),
  ];
  return {
    patch: [
      ...setPatch(job, "/stock/cloth", [
        ...(stock.cloth ?? []).filter((one) => one !== from),
        ...onBolt,
        ...cutOff,
      ]),
      ...setPatch(
        job,
        "/cutCloth",
        withCuts(job.cutCloth ?? [], { clothId: cloth.clothId, boughtMm, pieces: cutPieces, off }),
      ),
      ...laidAfter(job, { cloth, bolt }, pieces, { offMm: rest.yMm, restId }),
    ],
    still: { clothId: cloth.clothId, laid: stillLaid(cloth, bolt, areas) },
  };
}

/** The dye lot of a bolt: all that comes off it is of one. */
export function lotOf(
  cloth: ClothCutting,
  { boltId }: BoltPlan,
  from: ClothInStock | undefined,
  freshName: (wish: string) => string,
): string {
  const name = from === undefined ? `${cloth.clothName}, bought for this job` : boltName(cloth, boltId);
  return from?.lot ?? freshName(name);
}

/** Pieces of a plan on what its bolt is cut into; other bolts are as they were. */
function stillLaid(
  { answer }: ClothCutting,
  bolt: BoltPlan,
  areas: readonly { boltId: string; area: Rect }[],
): LaidOnBolt[] {
  const others = "bolts" in answer ? answer.bolts.filter(({ boltId }) => boltId !== bolt.boltId) : [];
  return [
    ...others.map(({ boltId, placements }) => ({ boltId, placements })),
    ...areas.map(({ boltId, area }) => ({
      boltId,
      placements: bolt.placements
        .filter((one) => isWithin(one, area))
        .map((one) => ({ ...one, xMm: one.xMm - area.xMm, yMm: one.yMm - area.yMm })),
    })),
  ];
}

const SAME_MM = 0.01;

function isWithin(one: Rect, area: Rect): boolean {
  return (
    one.xMm >= area.xMm - SAME_MM &&
    one.yMm >= area.yMm - SAME_MM &&
    one.xMm + one.widthMm <= area.xMm + area.widthMm + SAME_MM &&
    one.yMm + one.lengthMm <= area.yMm + area.lengthMm + SAME_MM
  );
}

/**
 * What should be left on a bolt after some of its cuts, mm.
 *
 * @param boughtMm how much is bought of a cloth that has no length yet; left out: as much as the plan takes
 */
export function leftAfterCut(cloth: ClothCutting, bolt: BoltPlan, upTo: number, boughtMm?: number): number {
  const lengthMm = cloth.problem.bolts.find(({ id }) => id === bolt.boltId)?.lengthMm;
  const wholeMm = lengthMm ?? Math.max(bolt.usedMm, boughtMm ?? 0);
  return Math.max(0, wholeMm - sheetsAfter(cloth, bolt, upTo).rest.yMm);
}

interface SheetsAfter {
  /** Cut off, and still to be cut or worth keeping. */
  sheets: Rect[];
  pieces: CutCloth["pieces"];
  /** Still on the bolt, from its yMm on. */
  rest: Rect;
}

/** Follows the cuts made: what they set free, and the sheets that remain. */
function sheetsAfter(cloth: ClothCutting, bolt: BoltPlan, upTo: number): SheetsAfter {
  const of = cloth.problem.bolts.find(({ id }) => id === bolt.boltId);
  const whole: Rect = { xMm: 0, yMm: 0, widthMm: of?.widthMm ?? 0, lengthMm: of?.lengthMm ?? Infinity };
  const open = new Map<number, Rect>([[0, whole]]);
  let hanging = 0;
  for (const cut of bolt.cuts) {
    const { number, sheet, first, second, direction } = cut;
    if (number > upTo) break;
    const area = open.get(sheet);
    if (area === undefined) continue;
    open.delete(sheet);
    const [one, other] = halves(area, cut);
    open.set(first, one);
    open.set(second, other);
    // What lies beyond a cut across the bolt stays on it.
    if (sheet === hanging) hanging = direction === "across" ? second : first;
  }
  const leaves = new Map(bolt.leaves.map((leaf) => [leaf.sheet, leaf]));
  const pieces: CutCloth["pieces"] = [];
  const sheets: Rect[] = [];
  for (const [id, area] of open) {
    const leaf = leaves.get(id);
    if (leaf?.holds.kind === "piece") pieces.push(...cutPiece(bolt, leaf));
    else if (id !== hanging && isKept(leaf, area)) sheets.push(area);
  }
  return { sheets, pieces, rest: open.get(hanging) ?? { ...whole, yMm: bolt.usedMm, lengthMm: 0 } };
}

function isKept(leaf: Leaf | undefined, { widthMm, lengthMm }: Rect): boolean {
  if (leaf?.holds.kind === "waste") return false;
  return widthMm >= LEAST_MM && lengthMm >= LEAST_MM;
}

/** The size of the piece itself, not turned. */
function cutPiece({ placements }: BoltPlan, { holds }: Leaf): CutCloth["pieces"] {
  const placed = placements.find(({ pieceId }) => holds.kind === "piece" && holds.pieceId === pieceId);
  return placed === undefined ? [] : [asCutPiece(placed)];
}

export function asCutPiece({ pieceId, widthMm, lengthMm, turn }: Placement): CutCloth["pieces"][number] {
  const isQuarter = turn === 90 || turn === 270;
  const size = isQuarter ? { widthMm: lengthMm, lengthMm: widthMm } : { widthMm, lengthMm };
  return { piece: pieceId, ...size };
}

interface CutNow {
  clothId: string;
  boughtMm: number;
  pieces: CutCloth["pieces"];
  off: { bolt: string; cutMm: number } | undefined;
}

/** What is cut already, and what is cut now. */
export function withCuts(cut: readonly CutCloth[], { clothId, boughtMm, pieces, off }: CutNow): CutCloth[] {
  const known: CutCloth = cut.find(({ cloth }) => cloth === clothId) ?? {
    cloth: clothId,
    boughtMm: 0,
    pieces: [],
  };
  const bolts = known.bolts ?? [];
  const before = bolts.find(({ bolt }) => bolt === off?.bolt);
  const more: CutCloth = {
    ...known,
    boughtMm: known.boughtMm + boughtMm,
    pieces: [...known.pieces, ...pieces],
    ...(off === undefined
      ? {}
      : {
          bolts: [
            ...bolts.filter((one) => one !== before),
            { bolt: off.bolt, cutMm: (before?.cutMm ?? 0) + off.cutMm },
          ],
        }),
  };
  return [...cut.filter((one) => one !== known), more];
}

/** Pieces laid by hand farther along the bolt keep their place on what is left of it. */
function laidAfter(
  job: Job,
  { cloth, bolt }: Pick<CutsMade, "cloth" | "bolt">,
  cut: CutCloth["pieces"],
  { offMm, restId }: { offMm: number; restId: string | undefined },
): PatchOperation[] {
  const { laidPieces } = job;
  if (laidPieces === undefined) return [];
  const isCut = new Set(cut.map(({ piece }) => piece));
  const kept = laidPieces.flatMap((laid): LaidPiece[] => {
    const isHere = laid.cloth === cloth.clothId && (laid.bolt ?? cloth.newBoltId) === bolt.boltId;
    if (!isHere) return [laid];
    if (isCut.has(laid.piece) || restId === undefined || laid.yMm < offMm) return [];
    return [{ ...laid, bolt: restId, yMm: laid.yMm - offMm }];
  });
  return setPatch(job, "/laidPieces", kept);
}

/** Fine enough for what was planned to fit still: sizes in inches are no whole tenths of a millimetre. */
export function asCut(mm: number): number {
  return Math.round(mm * 1e4) / 1e4;
}
