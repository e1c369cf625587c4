import type { OwnParts, PartEntry, PartKind } from "../../job/index.ts";
import { type StoredPart, shelfDatabase } from "./database.ts";

/** All parts on the bench, each kind in the order in which its parts were laid there. */
export async function readBench(): Promise<OwnParts> {
  const stored = await (await shelfDatabase()).getAll("parts");
  const own: Record<string, PartEntry[]> = {};
  for (const { kind, part } of stored.sort((a, b) => a.since - b.since)) {
    own[kind] = [...(own[kind] ?? []), part];
  }
  return own as OwnParts;
}

/** Each part is a record of its own, so that two tabs at two parts never undo each other. */
export async function writeParts(list: readonly Pick<StoredPart, "kind" | "part">[]): Promise<void> {
  const transaction = (await shelfDatabase()).transaction("parts", "readwrite", { durability: "strict" });
  for (const { kind, part } of list) {
    const key = keyOf(kind, part.id);
    const before = await transaction.store.get(key);
    await transaction.store.put({ key, kind, part, since: before?.since ?? Date.now() });
  }
  await transaction.done;
}

export async function deletePart(kind: PartKind, id: string): Promise<void> {
  await (await shelfDatabase()).delete("parts", keyOf(kind, id));
}

function keyOf(kind: PartKind, id: string): string {
  return `${kind}/${id}`;
}
