import { useState } from "react";
import { sameItems } from "../../figures/index.ts";

/** The list of before for as long as it holds the same items: what is made of them need not be made anew. */
export function useSameItems<T>(items: readonly T[]): readonly T[] {
  const [kept, keep] = useState(items);
  if (sameItems(kept, items)) return kept;
  keep(items);
  return items;
}
