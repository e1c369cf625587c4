import { useEffect } from "react";
import { create } from "zustand";
import { type Job, type OwnParts, ownPartsOf, PART_KINDS } from "../../job/index.ts";
import { type HeldJob, type Reservation, SHOP_ID } from "../../workroom/protocol/index.ts";
import { usePlanner } from "../state/store.ts";
import { askServer } from "./ask-server.ts";
import { useRoom } from "./room-state.ts";

/** The workroom's shop as the server had it last, and which job has been promised what of its stock. */
export interface RoomShop {
  shop: Job;
  reservations: readonly Reservation[];
}

const useRead = create<{ read?: RoomShop }>()(() => ({}));

/** @throws where the server does not answer */
export async function readRoomShop(): Promise<void> {
  const [{ job }, { reservations }] = await Promise.all([
    askServer<HeldJob>("job", { params: { job: SHOP_ID } }),
    askServer<{ reservations: Reservation[] }>("reservations"),
  ]);
  useRead.setState({ read: { shop: job, reservations } });
}

let readAt: string | undefined;

/** Reads the shop once for all who show it. `at` tells one state of the news from the next. */
function readOnce(at: string): void {
  if (readAt === at) return;
  readAt = at;
  readRoomShop().catch(() => {
    // Without the server what was read last stays, and who comes next asks again.
    if (readAt === at) readAt = undefined;
  });
}

/** The shop of the workroom that shares the open job; undefined for a job of this device alone, and until it was read. */
export function useRoomShop(): RoomShop | undefined {
  const isShop = usePlanner(({ job }) => job?.id === SHOP_ID);
  const read = useReadShop();
  return isShop ? undefined : read;
}

/** The same, in the shop itself too: what of it is promised. */
export function useReadShop(): RoomShop | undefined {
  const isShared = usePlanner(({ room }) => room !== undefined);
  const session = useRoom(({ me }) => (me?.state === "signed-in" ? me.session : undefined));
  const news = useRoom(({ shopNews }) => shopNews);
  const read = useRead((state) => state.read);
  useEffect(() => {
    if (isShared && session !== undefined) readOnce(`${session} ${news}`);
  }, [isShared, session, news]);
  return isShared ? read : undefined;
}

/** The parts that lie in the shop, as they lie on a bench. */
export function partsOfShop(shop: Job): OwnParts {
  return Object.fromEntries(PART_KINDS.map((kind) => [kind, ownPartsOf(shop, kind)]));
}
