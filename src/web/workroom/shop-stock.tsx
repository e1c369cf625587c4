import { setPatch } from "../../figures/index.ts";
import {
  type Catalogue,
  type Job,
  type OwnParts,
  partsOf,
  type Stock,
  withPartsFrom,
} from "../../job/index.ts";
import { clothLengthText, lengthText } from "../../units/index.ts";
import { goesByLength, SHOP_ID } from "../../workroom/protocol/index.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { usePromiseWords } from "./piece-promises.tsx";
import { partsOfShop, type RoomShop } from "./room-shop.ts";
import { promisesOf, type StockPromises } from "./stock-promises.ts";

type Piece<K extends keyof Stock> = NonNullable<Stock[K]>[number];

/** What lies in the workroom's shop and can be taken for this job, and what of it another job has. */
export function ShopStock({ kind, promises }: { kind: keyof Stock; promises: StockPromises }) {
  const job = useJob();
  const { room } = promises;
  const own = new Set((job.stock[kind] ?? []).map(({ id }) => id));
  const pieces: readonly (Piece<"cloth"> | Piece<"lengths">)[] = room.shop.stock[kind] ?? [];
  const others = pieces.filter(({ id }) => !own.has(id));
  if (job.id === SHOP_ID || others.length === 0) return null;
  const parts = partsOf(room.shop);
  return (
    <>
      <h4 className="shop-stock-title">In the workroom’s shop</h4>
      <ul className="room-list">
        {others.map((piece) => (
          <OfShop key={piece.id} kind={kind} piece={piece} name={pieceName(piece, parts)} room={room} />
        ))}
      </ul>
    </>
  );
}

/** Shorter than this the stock has nothing, mm: as the job document has it. */
const LEAST_MM = 1;

interface OfShopProps {
  kind: keyof Stock;
  piece: Piece<"cloth"> | Piece<"lengths">;
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
  const isFree = isShared ? leftMm >= LEAST_MM : others.length === 0;
  const length = ("cloth" in piece ? clothLengthText : lengthText)(piece.lengthMm, units);
  const taken = isShared ? { ...piece, lengthMm: leftMm } : piece;
  return (
    <li>
      <span>
        {name}, {length}
        {"lot" in piece && piece.lot !== undefined ? `, lot ${piece.lot}` : ""}
        {others.length === 0 ? null : <span className="quiet small"> · {words}</span>}
      </span>
      {isFree ? (
        <button
          type="button"
          className="button-plain small"
          disabled={!mine}
          onClick={() => edit({ label: "Take from the shop", patch: takePatch(job, shop, kind, taken) })}
        >
          Take{others.length === 0 ? "" : ` ${clothLengthText(leftMm, units)}`} for this job
          <span className="hidden-words">: {name}</span>
        </button>
      ) : null}
    </li>
  );
}

/** Its own name, and what it is of, an example part too. */
function pieceName(piece: Piece<"cloth"> | Piece<"lengths">, parts: Catalogue): string {
  const id = "cloth" in piece ? piece.cloth : piece.part;
  const { cloths, cords, bars, ribs, boards } = parts;
  const of = [...cloths, ...cords, ...bars, ...ribs, ...boards].find((part) => part.id === id)?.name ?? id;
  return "name" in piece && piece.name !== undefined ? `${piece.name} (${of})` : of;
}

/** The piece, and the cloth or part that it is of where the job has none such yet. */
function takePatch(job: Job, shop: Job, kind: keyof Stock, piece: Piece<"cloth"> | Piece<"lengths">) {
  const id = "cloth" in piece ? piece.cloth : piece.part;
  const its = Object.fromEntries(
    Object.entries(partsOfShop(shop)).map(([of, list]) => [of, list?.filter((part) => part.id === id)]),
  ) as OwnParts;
  const { cloths, hardware } = withPartsFrom(job, its);
  return [
    ...setPatch(job, "/cloths", cloths),
    ...setPatch(job, "/hardware", hardware),
    ...setPatch(job, `/stock/${kind}`, [...(job.stock[kind] ?? []), piece]),
  ];
}
