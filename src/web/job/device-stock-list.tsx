import { useEffect } from "react";
import type { StockPiece } from "../../job/index.ts";
import { followStock, layInShop, takeOutOfShop, useDeviceStock } from "../state/device-stock.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { pieceName, pieceSizeText, piecesOf, type StockKind, takePatch } from "../state/shop-pieces.ts";
import { edit, usePlanner } from "../state/store.ts";

/** Keeps what the device’s shop knows of the open job equal to what the job has, whoever took or undid it. */
export function useFollowStock(isAlone: boolean): void {
  const job = useJob();
  const mine = useCanEdit();
  useEffect(() => {
    if (isAlone && mine) followStock(job);
  }, [isAlone, mine, job]);
}

/** What lies in the shop of this device and can be taken for this job, and what of it another job has. */
export function DeviceStockList({ kind }: { kind: StockKind }) {
  const job = useJob();
  const units = useUnits();
  const mine = useCanEdit();
  const shop = useDeviceStock();
  const own = new Set(piecesOf(job.stock, kind).map(({ id }) => id));
  const others = piecesOf(shop.stock, kind).filter(({ id }) => !own.has(id));
  if (others.length === 0) return null;
  return (
    <>
      <h4 className="shop-stock-title">In the shop of this device</h4>
      <ul className="room-list">
        {others.map((piece) => {
          const name = pieceName(piece, shop);
          const holder = shop.takenBy[piece.id];
          return (
            <li key={piece.id}>
              <span>
                {name}, {pieceSizeText(piece, units)}
                {holder === undefined ? null : <span className="quiet small"> · {holder.name} has it</span>}
              </span>
              <span className="page-actions">
                {holder === undefined ? (
                  <button
                    type="button"
                    className="button-plain small"
                    disabled={!mine}
                    onClick={() => take(kind, piece)}
                  >
                    Take for this job<span className="hidden-words">: {name}</span>
                  </button>
                ) : null}
                <button
                  type="button"
                  className="button-plain small"
                  onClick={() => takeOutOfShop(kind, piece.id)}
                >
                  Take out of the shop<span className="hidden-words">: {name}</span>
                </button>
              </span>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** Lets other jobs of this device have a piece once this job lets it go; says where another has it already. */
export function InDeviceShop({ kind, piece }: { kind: StockKind; piece: StockPiece }) {
  const shop = useDeviceStock();
  const job = useJob();
  const isThere = piecesOf(shop.stock, kind).some(({ id }) => id === piece.id);
  const holder = shop.takenBy[piece.id];
  if (isThere && holder !== undefined && holder.id !== job.id)
    return (
      <p role="alert" className="notice notice-stop">
        {holder.name} has this piece, too: settle who gets it, and take it out of the other’s stock.
      </p>
    );
  if (isThere)
    return <p className="quiet small">Of this device’s shop: taken out here, it lies free again.</p>;
  return (
    <button
      type="button"
      className="button-plain small"
      onClick={() => {
        const { job: now } = usePlanner.getState();
        if (now) layInShop(now, kind, piece);
      }}
    >
      Lay it into this device’s shop
    </button>
  );
}

function take(kind: StockKind, piece: StockPiece): void {
  const { job } = usePlanner.getState();
  if (!job) return;
  edit({ label: "Take from the shop", patch: takePatch(job, useDeviceStock.getState(), kind, piece) });
}
