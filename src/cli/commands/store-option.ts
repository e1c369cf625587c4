import type { OwnedDoor, Store } from "../../server/index.ts";
import { badInput } from "../bad-input.ts";

/** For commands that open the workroom's database. */
export const FOLDER_OPTION = [
  "--folder <folder>",
  "folder of the embedded database; DATABASE_URL takes its place",
] as const;

/** The database that the surroundings name, not opened yet. */
export async function doorOf(folder?: string): Promise<OwnedDoor> {
  const { roomDoor } = await import("../../server/index.ts");
  try {
    return roomDoor(folder);
  } catch (error) {
    throw badInput("DATABASE_URL", "another text", error instanceof Error ? error.message : String(error));
  }
}

/** Does something with the database and shuts it. What keeps it from opening is told as a fault of the input. */
export async function withStore<T>(
  folder: string | undefined,
  work: (store: Store, door: OwnedDoor) => Promise<T>,
): Promise<T> {
  const { roomFolder } = await import("../../server/index.ts");
  const door = await doorOf(folder);
  const store = await door.open().catch((error: Error & { code?: unknown }) => {
    const said = error.message || String(error.code);
    throw (process.env.DATABASE_URL ?? "") === ""
      ? badInput("--folder", roomFolder(folder), said)
      : badInput("DATABASE_URL", "a database that does not open", said);
  });
  try {
    return await work(store, door);
  } finally {
    await door.close();
  }
}
