import { create } from "zustand";
import {
  fieldAccepts,
  type Job,
  ownPartsOf,
  PART_KINDS,
  partIdOf,
  type StockPiece,
  stockPieces,
  withPartsFrom,
} from "../../job/index.ts";
import { type PartsHeld, partsOfPiece, piecesOf, type StockKind } from "./shop-pieces.ts";

/** Stock that lies in the shop of this device, for whichever job takes it; each piece goes to one job alone. */
export interface DeviceStock extends PartsHeld, Pick<Job, "stock"> {
  /** The job that has a piece, by the piece’s id. */
  takenBy: Readonly<Record<string, { id: string; name: string }>>;
}

const KEY = "shadewright-shop-stock";
const EMPTY: DeviceStock = { cloths: [], hardware: {}, stock: {}, takenBy: {} };

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

/**
 * The shop’s stock after a look at a job: what the job has is taken by it and as long as it is there; what the job had
 * and has no more lies free again, whoever undid or took it back.
 */
export function shopAfter(job: Pick<Job, "id" | "name" | "stock">, shop: DeviceStock): DeviceStock {
  const own = new Map(stockPieces(job.stock).map((piece) => [piece.id, piece]));
  const takenBy = { ...shop.takenBy };
  const stock = { ...shop.stock };
  for (const kind of ["cloth", "lengths"] as const) {
    if (stock[kind] === undefined) continue;
    const list = piecesOf(stock, kind).map((piece) => {
      const held = own.get(piece.id);
      const holder = takenBy[piece.id]?.id;
      if (holder !== undefined && holder !== job.id) return piece;
      if (held === undefined) {
        delete takenBy[piece.id];
        return piece;
      }
      takenBy[piece.id] = { id: job.id, name: job.name };
      return held;
    });
    Object.assign(stock, { [kind]: list });
  }
  const next = { ...shop, stock, takenBy };
  return JSON.stringify(next) === JSON.stringify(shop) ? shop : next;
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
  const bare = { ...job, cloths: [], hardware: {} };
  const { cloths, hardware } = withPartsFrom(withPartsFrom(bare, others), partsOfPiece(job, piece));
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
