import { useEffect, useRef, useState } from "react";
import { heldStock, type Job, type StockPiece, stockPieces } from "../../job/index.ts";
import type { CuttingPlan } from "../../plan/index.ts";
import { goesByLength, may, type Reservation, SHOP_ID } from "../../workroom/protocol/index.ts";
import { useCuttingStore } from "../cutting/cutting-store.ts";
import { useJob } from "../state/fields.ts";
import { askServer, whyNot } from "./ask-server.ts";
import { type RoomShop, readRoomShop, useReadShop } from "./room-shop.ts";
import { useRoom } from "./room-state.ts";

export interface StockPromises {
  room: RoomShop;
  /** Why the promises of this job could not be told to the workroom. */
  trouble: string | undefined;
}

/** So much of a piece is promised to a job, mm. */
export interface PiecePromise {
  jobId: string;
  lengthMm: number;
}

/** What is promised of a piece of the shop, and how much of it is free for a job, mm. */
export function promisesOf(
  piece: StockPiece,
  reservations: readonly Reservation[],
  jobId: string,
): { own: PiecePromise | undefined; others: PiecePromise[]; leftMm: number } {
  const all = reservations
    .filter(({ stock }) => stock === piece.id)
    .map((one): PiecePromise => ({ jobId: one.jobId, lengthMm: one.lengthMm ?? piece.lengthMm }));
  const others = all.filter((one) => one.jobId !== jobId);
  const takenMm = others.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return {
    own: all.find((one) => one.jobId === jobId),
    others,
    leftMm: Math.max(0, piece.lengthMm - takenMm),
  };
}

/** How much the cutting plan takes of a bolt, mm; undefined where there is no plan of its cloth. */
export function takenByPlanMm(cutting: CuttingPlan | undefined, piece: StockPiece): number | undefined {
  if (!("cloth" in piece)) return undefined;
  const of = cutting?.cloths.find(({ clothId }) => clothId === piece.cloth);
  if (of === undefined) return cutting && 0;
  if (!("bolts" in of.answer)) return undefined;
  return of.answer.bolts.find(({ boltId }) => boltId === piece.id)?.usedMm ?? 0;
}

/** The cutting plan of the open job as it stands; undefined until it is there. */
export function useCuttingOf(job: Job): CuttingPlan | undefined {
  return useCuttingStore((cutting) => (cutting.job === job ? cutting.progress?.cutting : undefined));
}

interface Item {
  stock: string;
  /** Left out: all of it. */
  lengthMm?: number;
}

/** What a job wants of the shop: a length of a shared bolt as its cutting plan takes it, of the rest all or nothing. */
function wantedOf(job: Job, { shop, reservations }: RoomShop, cutting: CuttingPlan | undefined): Item[] {
  const inShop = new Map(stockPieces(shop.stock).map((piece) => [piece.id, piece]));
  return stockPieces(heldStock(job)).flatMap(({ id }): Item[] => {
    const piece = inShop.get(id);
    if (piece === undefined) return [];
    const { own, others, leftMm } = promisesOf(piece, reservations, job.id);
    if (!goesByLength(piece)) return others.length === 0 ? [{ stock: id }] : [];
    // Until the plan is there, what was promised stays.
    const takenMm = takenByPlanMm(cutting, piece) ?? own?.lengthMm ?? 0;
    const lengthMm = Math.min(Math.ceil(takenMm), leftMm);
    return lengthMm > 0 ? [{ stock: id, lengthMm }] : [];
  });
}

function textOf(items: readonly Item[]): string {
  return JSON.stringify(items.toSorted((a, b) => a.stock.localeCompare(b.stock)));
}

/** A plan gets better in steps; it is told when it has rested, ms. */
const PAUSE_MS = 400;

/**
 * Keeps what the workroom has promised this job of its shop's stock equal to what the job and its cutting plan take,
 * whoever took it, undid it or was away meanwhile. Undefined for a job of this device alone.
 */
export function useStockPromises(): StockPromises | undefined {
  const job = useJob();
  const room = useReadShop();
  const cutting = useCuttingOf(job);
  const { me, isOnline } = useRoom();
  const mayPromise = isOnline && me?.state === "signed-in" && may(me.person.role, "change-shop");
  const [trouble, setTrouble] = useState<string>();
  const toldLast = useRef("");
  const wanted = room === undefined || job.id === SHOP_ID ? [] : wantedOf(job, room, cutting);
  const promised = (room?.reservations ?? [])
    .filter(({ jobId }) => jobId === job.id)
    .map(({ stock, lengthMm }): Item => ({ stock, ...(lengthMm === undefined ? {} : { lengthMm }) }));
  const items = textOf(wanted);
  const isTold = job.id === SHOP_ID || items === textOf(promised);
  const isRead = room !== undefined;
  // Two screens may have found plans of different lengths: each tells its own once, and again only where it needs more.
  const isEnough = wanted.every(({ stock, lengthMm }) =>
    promised.some(
      (one) => one.stock === stock && (one.lengthMm ?? Infinity) >= (lengthMm ?? one.lengthMm ?? 0),
    ),
  );
  const isOwed = isRead && mayPromise && !isTold;
  useEffect(() => {
    if (!isOwed || (isEnough && toldLast.current === items)) return;
    const timer = setTimeout(() => {
      toldLast.current = items;
      askServer("reserve", { params: { job: job.id }, body: { items: JSON.parse(items) } })
        .then(() => setTrouble(undefined))
        .catch((error: unknown) => setTrouble(whyNot(error)))
        // Refused or not, what the workroom has now is what counts.
        .then(readRoomShop)
        .catch(() => {});
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [job.id, items, isOwed, isEnough]);
  return room && { room, trouble };
}
