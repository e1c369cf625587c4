import { useEffect, useState } from "react";
import type { Stock } from "../../job/index.ts";
import { may } from "../../workroom/protocol/index.ts";
import { useJob } from "../state/fields.ts";
import { askServer, whyNot } from "./ask-server.ts";
import { type RoomShop, readRoomShop, useRoomShop } from "./room-shop.ts";
import { useRoom } from "./room-state.ts";

export interface StockPromises {
  room: RoomShop;
  /** The other job that has a piece of the shop's stock, by the piece's id. */
  promisedTo: ReadonlyMap<string, string>;
  /** Why the promises of this job could not be told to the workroom. */
  trouble: string | undefined;
}

/** Ids of everything in stock. */
export function stockIds({ cloth = [], lengths = [] }: Stock): string[] {
  return [...cloth, ...lengths].map(({ id }) => id);
}

/**
 * Keeps what the workroom has promised this job of its shop's stock equal to what the job has taken, whoever took it,
 * undid it or was away meanwhile: no piece is promised to two jobs. Undefined for a job of this device alone.
 */
export function useStockPromises(): StockPromises | undefined {
  const { id: jobId, stock } = useJob();
  const room = useRoomShop();
  const { me, isOnline, jobs } = useRoom();
  const mayPromise = isOnline && me?.state === "signed-in" && may(me.person.role, "change-shop");
  const [trouble, setTrouble] = useState<string>();
  const inShop = new Set(stockIds(room?.shop.stock ?? {}));
  const promisedTo = new Map(
    (room?.reservations ?? [])
      .filter((one) => one.jobId !== jobId)
      .map((one) => [one.stock, jobs?.find((job) => job.id === one.jobId)?.name ?? "another job"]),
  );
  const wanted = stockIds(stock)
    .filter((id) => inShop.has(id) && !promisedTo.has(id))
    .sort();
  const promised = (room?.reservations ?? [])
    .filter((one) => one.jobId === jobId)
    .map((one) => one.stock)
    .sort();
  const items = wanted.join(" ");
  const isTold = items === promised.join(" ");
  const isRead = room !== undefined;
  useEffect(() => {
    if (!isRead || !mayPromise || isTold) return;
    const body = { items: items === "" ? [] : items.split(" ").map((one) => ({ stock: one })) };
    askServer("reserve", { params: { job: jobId }, body })
      .then(() => setTrouble(undefined))
      .catch((error: unknown) => setTrouble(whyNot(error)))
      // Refused or not, what the workroom has now is what counts.
      .then(readRoomShop)
      .catch(() => {});
  }, [jobId, items, isTold, isRead, mayPromise]);
  return room && { room, promisedTo, trouble };
}
