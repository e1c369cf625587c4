import { setPatch } from "../../figures/index.ts";
import {
  type Catalogue,
  type Job,
  type OwnParts,
  partsOf,
  type Stock,
  withPartsFrom,
} from "../../job/index.ts";
import { lengthText } from "../../units/index.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { partsOfShop } from "./room-shop.ts";
import type { StockPromises } from "./stock-promises.ts";

type Piece<K extends keyof Stock> = NonNullable<Stock[K]>[number];

/** What lies in the workroom's shop and can be taken for this job, and what of it another job has. */
export function ShopStock({ kind, promises }: { kind: keyof Stock; promises: StockPromises }) {
  const job = useJob();
  const units = useUnits();
  const mine = useCanEdit();
  const { room, promisedTo } = promises;
  const own = new Set((job.stock[kind] ?? []).map(({ id }) => id));
  const pieces: readonly (Piece<"cloth"> | Piece<"lengths">)[] = room.shop.stock[kind] ?? [];
  const others = pieces.filter(({ id }) => !own.has(id));
  if (others.length === 0) return null;
  const parts = partsOf(room.shop);
  return (
    <>
      <h4 className="shop-stock-title">In the workroom’s shop</h4>
      <ul className="room-list">
        {others.map((piece) => {
          const name = pieceName(piece, parts);
          const other = promisedTo.get(piece.id);
          return (
            <li key={piece.id}>
              <span>
                {name}, {lengthText(piece.lengthMm, units)}
                {"lot" in piece && piece.lot !== undefined ? `, lot ${piece.lot}` : ""}
                {other === undefined ? null : <span className="quiet small"> · promised to {other}</span>}
              </span>
              {other === undefined ? (
                <button
                  type="button"
                  className="button-plain small"
                  disabled={!mine}
                  onClick={() =>
                    edit({ label: "Take from the shop", patch: takePatch(job, room.shop, kind, piece) })
                  }
                >
                  Take for this job<span className="hidden-words">: {name}</span>
                </button>
              ) : null}
            </li>
          );
        })}
      </ul>
    </>
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
