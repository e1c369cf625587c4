import { create } from "zustand";
import {
  cutOffBoltMm,
  fieldAccepts,
  heldStock,
  type Job,
  ownPartsOf,
  PART_KINDS,
  partIdOf,
  partsOfPiece,
  type StockPiece,
  stockPieces,
  withPartsFrom,
} from "../../job/index.ts";
import { type PartsHeld, piecesOf, type StockKind } from "./shop-pieces.ts";

interface Holder {
  id: string;
  name: string;
  /** What it had cut off the piece at the last look, mm. */
  cutMm?: number;
}

/** Stock that lies in the shop of this device, for whichever job takes it; each piece goes to one job alone. */
export interface DeviceStock extends PartsHeld, Pick<Job, "stock"> {
  /** The job that has a piece, by the piece’s id. */
  takenBy: Readonly<Record<string, Holder>>;
  /** The job that cut a piece up, by the piece’s id: undone there, it is back. */
  cutUp: Readonly<Record<string, string>>;
  /** Pieces that were left when all of a job was cut, by the job’s id. */
  laidBy: Readonly<Record<string, readonly string[]>>;
}

const KEY = "shadewright-shop-stock";
const EMPTY: DeviceStock = { cloths: [], hardware: {}, stock: {}, takenBy: {}, cutUp: {}, laidBy: {} };

/** Only what this release can use. */
function kept(): DeviceStock {
  try {
    const known = { ...EMPTY, ...JSON.parse(localStorage.getItem(KEY) ?? "{}") } as DeviceStock;
    const isRead = (["cloths", "hardware", "stock"] as const).every((part) =>
      fieldAccepts([part], known[part]),
    );
    return isRead ? known : EMPTY;
  } catch {
    return EMPTY;
  }
}

export const useDeviceStock = create<DeviceStock>()(kept);

/** Another tab may have changed it. */
if (typeof window !== "undefined")
  window.addEventListener("storage", ({ key }) => {
    if (key === KEY) useDeviceStock.setState(kept(), true);
  });

function keep(next: DeviceStock): void {
  if (next === useDeviceStock.getState()) return;
  useDeviceStock.setState(next, true);
  try {
    localStorage.setItem(KEY, JSON.stringify(next));
  } catch {
    // A device that keeps nothing has it until the page is left.
  }
}

/** What of a job the shop’s stock follows. */
export type LookedAt = Pick<Job, "id" | "name" | "stock" | "leftOver" | "cutCloth" | "cloths" | "hardware">;

const KINDS: readonly StockKind[] = ["cloth", "lengths"];

/**
 * The shop’s stock after a look at a job: what the job has is taken by it and as long as it is there. What the job had
 * and has no more lies free again, whoever undid or took it back; what it cut up is gone; what was left when all was cut
 * lies there for other jobs, until that is undone.
 */
export function shopAfter(job: LookedAt, shop: DeviceStock): DeviceStock {
  let next: DeviceStock = { ...shop, takenBy: { ...shop.takenBy }, cutUp: { ...shop.cutUp } };
  for (const kind of KINDS) next = { ...next, stock: { ...next.stock, ...listAfter(kind, job, next) } };
  const laid = stockPieces(job.leftOver ?? {});
  const { [job.id]: told = [], ...others } = shop.laidBy;
  const isNew = laid.filter(({ id }) => !told.includes(id));
  next = {
    ...isNew.reduce((held, piece) => withPartsFrom(held, partsOfPiece(job, piece)), next),
    laidBy: laid.length === 0 ? others : { ...others, [job.id]: laid.map(({ id }) => id) },
  };
  return JSON.stringify(next) === JSON.stringify(shop) ? shop : next;
}

/** Writes who has what into `takenBy` and `cutUp` of the shop, which are the caller’s own. */
function listAfter(kind: StockKind, job: LookedAt, shop: DeviceStock): Partial<DeviceStock["stock"]> {
  const takenBy = shop.takenBy as Record<string, Holder>;
  const cutUp = shop.cutUp as Record<string, string>;
  const { cutCloth = [] } = job;
  const own = new Map(piecesOf(heldStock(job), kind).map((piece) => [piece.id, piece]));
  const left = new Map(piecesOf(job.leftOver ?? {}, kind).map((piece) => [piece.id, piece]));
  const told = new Set(shop.laidBy[job.id]);
  const take = (piece: StockPiece): StockPiece => {
    const offMm = cutOffBoltMm(cutCloth, piece.id);
    takenBy[piece.id] = { id: job.id, name: job.name, ...(offMm > 0 ? { cutMm: offMm } : {}) };
    return piece;
  };
  const before = piecesOf(shop.stock, kind);
  const list = before.flatMap((piece): StockPiece[] => {
    const { id } = piece;
    const holder = takenBy[id];
    if (holder !== undefined && holder.id !== job.id) return [piece];
    const held = own.get(id);
    if (held !== undefined) return [take(held)];
    delete takenBy[id];
    const rest = left.get(id);
    if (holder !== undefined && rest !== undefined) return [rest];
    const isCutUp =
      cutOffBoltMm(cutCloth, id) > (holder?.cutMm ?? 0) ||
      (kind === "lengths" && job.leftOver?.lengths !== undefined);
    if (holder !== undefined && isCutUp) {
      cutUp[id] = job.id;
      return [];
    }
    // Laid there by a cut that was undone.
    return told.has(id) && rest === undefined ? [] : [piece];
  });
  const there = new Set(list.map(({ id }) => id));
  const back = [...own.values()].filter(({ id }) => cutUp[id] === job.id && !there.has(id));
  for (const { id } of back) delete cutUp[id];
  const laid = [...left.values()].filter(({ id }) => !told.has(id) && !there.has(id));
  const all = [...list, ...back.map(take), ...laid];
  return all.length === 0 && shop.stock[kind] === undefined ? {} : { [kind]: all };
}

/** Looks at the open job; to be called when its stock has changed. */
export function followStock(job: Job): void {
  keep(shopAfter(job, useDeviceStock.getState()));
}

/** Lays a piece of a job into the shop, with the part that it is of; the job goes on having it. */
export function layInShop(job: Job, kind: StockKind, piece: StockPiece): void {
  const shop = useDeviceStock.getState();
  const partId = partIdOf(piece);
  const others = Object.fromEntries(
    PART_KINDS.map((of) => [of, ownPartsOf(shop, of).filter(({ id }) => id !== partId)]),
  );
  const { cloths, hardware } = withPartsFrom(
    withPartsFrom({ cloths: [], hardware: {} }, others),
    partsOfPiece(job, piece),
  );
  const list = [...piecesOf(shop.stock, kind).filter(({ id }) => id !== piece.id), piece];
  keep(
    shopAfter(job, {
      ...shop,
      cloths,
      hardware,
      stock: { ...shop.stock, [kind]: list },
    }),
  );
}

/** Takes a piece out of the shop; a job that has it keeps it. */
export function takeOutOfShop(kind: StockKind, id: string): void {
  const shop = useDeviceStock.getState();
  const { [id]: _, ...takenBy } = shop.takenBy;
  const list = piecesOf(shop.stock, kind).filter((piece) => piece.id !== id);
  keep({ ...shop, takenBy, stock: { ...shop.stock, [kind]: list } });
}
