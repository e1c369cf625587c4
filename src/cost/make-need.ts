import type { Bar, Board, Tube } from "../job/index.ts";
import type { CountedNeed, LengthsNeed } from "./need.ts";
import { SUNDRIES } from "./sundries.ts";

/** How a part is sold: price of one, or of a pack of so many. */
export interface Sold {
  price?: number;
  packOf?: number;
  packNoun?: string;
  demo?: boolean;
}

/** Pieces bought one by one or by the pack. */
export function countedNeed(
  id: string,
  group: CountedNeed["group"],
  label: CountedNeed["label"],
  pieces: number,
  { price, packOf, packNoun = "pack", demo }: Sold = {},
): CountedNeed {
  return {
    sort: "counted",
    id,
    group,
    label,
    pieces,
    packOf: packOf ?? 1,
    ...(packOf === undefined ? {} : { packNoun }),
    price,
    demo,
  };
}

/** Pieces sawn from lengths as they are sold. */
export function lengths(
  kind: string,
  group: LengthsNeed["group"],
  part: Pick<Bar | Board | Tube, "id" | "name" | "price" | "demo" | "stockMm"> & Pick<Bar, "alsoSold">,
  cutsMm: number[],
): LengthsNeed {
  return {
    sort: "lengths",
    id: `${kind}-${part.id}`,
    group,
    label: part.name,
    price: part.price,
    demo: part.demo,
    stockId: part.id,
    cutsMm,
    stockMm: part.stockMm,
    ...(part.alsoSold === undefined ? {} : { alsoSold: part.alsoSold }),
    kerfMm: SUNDRIES.sawKerfMm.value,
    noun: "length",
  };
}
