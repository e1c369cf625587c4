import { useState } from "react";

/** The list of before for as long as it holds the same items: what is made of them need not be made anew. */
export function useSameItems<T>(items: readonly T[]): readonly T[] {
  const [kept, keep] = useState(items);
  if (kept.length === items.length && kept.every((item, i) => item === items[i])) return kept;
  keep(items);
  return items;
}
