import { useRoom } from "../workroom/room-state.ts";
import type { StoredJob } from "./database.ts";

/** Whether who is signed in here may change a job: one of the workroom's asks for a role that may. */
export function mayEdit({ room }: StoredJob): boolean {
  const { me } = useRoom.getState();
  return room === undefined || me?.state !== "signed-in" || me.person.role !== "viewer";
}

/** Takes a job of the workroom to this device; undefined where there is no workroom, or it has no such job. */
export async function fetchShared(jobId: string): Promise<StoredJob | undefined> {
  const { foundRoom } = await import("../workroom/look-for-room.ts");
  if ((await foundRoom())?.state !== "signed-in") return undefined;
  const { takeToDevice } = await import("../workroom/take-to-device.ts");
  return takeToDevice(jobId);
}
