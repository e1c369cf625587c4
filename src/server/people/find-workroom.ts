import type { Store } from "../store/store.ts";

/** The workroom of a short name; without one, the only workroom of the database. Undefined where it cannot be told. */
export async function findWorkroom({ db }: Store, shortName?: string): Promise<string | undefined> {
  const found = await db
    .selectFrom("workrooms")
    .select("id")
    .$if(shortName !== undefined, (query) => query.where("short_name", "=", String(shortName).toLowerCase()))
    .limit(2)
    .execute();
  return found.length === 1 ? found[0]?.id : undefined;
}

/** A name for addresses and sign-in, of the letters and digits that every keyboard has. */
export function shortNameOf(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
  return plain.slice(0, 40) || "workroom";
}
