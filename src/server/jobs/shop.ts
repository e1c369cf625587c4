import { newJob } from "../../job/index.ts";
import type { UnitSystem } from "../../units/index.ts";
import { SHOP_ID } from "../../workroom/protocol/index.ts";
import type { RoomTrx } from "../store/store.ts";
import { makeJob } from "./make-job.ts";

/** Every workroom has its shop from the first day: a job without rooms. */
export async function makeShop(
  trx: RoomTrx,
  workroomId: string,
  ownerId: string,
  system: UnitSystem,
): Promise<void> {
  const job = newJob({ id: SHOP_ID, name: "Shop", system });
  await makeJob(trx, workroomId, ownerId, workroomId, { ...job, rooms: [] });
}
