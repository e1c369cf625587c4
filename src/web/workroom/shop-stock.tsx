import { LEAST_PIECE_MM, type StockPiece } from "../../job/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { goesByLength, SHOP_ID } from "../../workroom/protocol/index.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { pieceName, pieceSizeText, piecesOf, type StockKind, takePatch } from "../state/shop-pieces.ts";
import { edit } from "../state/store.ts";
import { usePromiseWords } from "./piece-promises.tsx";
import type { RoomShop } from "./room-shop.ts";
import { promisesOf, type StockPromises } from "./stock-promises.ts";

/** What lies in the workroom's shop and can be taken for this job, and what of it another job has. */
export function ShopStock({ kind, promises }: { kind: StockKind; promises: StockPromises }) {
  const job = useJob();
  const { room } = promises;
  const own = new Set(piecesOf(job.stock, kind).map(({ id }) => id));
  const others = piecesOf(room.shop.stock, kind).filter(({ id }) => !own.has(id));
  if (job.id === SHOP_ID || others.length === 0) return null;
  return (
    <>
      <h4 className="shop-stock-title">In the workroom’s shop</h4>
      <ul className="room-list">
        {others.map((piece) => (
          <OfShop key={piece.id} kind={kind} piece={piece} name={pieceName(piece, room.shop)} room={room} />
        ))}
      </ul>
    </>
  );
}

interface OfShopProps {
  kind: StockKind;
  piece: StockPiece;
  name: string;
  room: RoomShop;
}

/** A piece of the shop: all of it for one job, or of a bolt what other jobs have not been promised. */
function OfShop({ kind, piece, name, room: { shop, reservations } }: OfShopProps) {
  const job = useJob();
  const units = useUnits();
  const mine = useCanEdit();
  const { others, leftMm } = promisesOf(piece, reservations, job.id);
  const isShared = goesByLength(piece);
  const words = usePromiseWords(others, isShared);
  const isFree = isShared ? leftMm >= LEAST_PIECE_MM : others.length === 0;
  const taken = isShared ? { ...piece, lengthMm: leftMm } : piece;
  return (
    <li>
      <span>
        {name}, {pieceSizeText(piece, units)}
        {others.length === 0 ? null : <span className="quiet small"> · {words}</span>}
      </span>
      {isFree ? (
        <button
          type="button"
          className="button-plain small"
          disabled={!mine}
          onClick={() => edit({ label: "Take from the shop", patch: takePatch(job, shop, kind, taken) })}
        >
          Take{others.length === 0 ? "" : ` ${clothLengthText(leftMm, units, "down")}`} for this job
          <span className="hidden-words">: {name}</span>
        </button>
      ) : null}
    </li>
  );
}
