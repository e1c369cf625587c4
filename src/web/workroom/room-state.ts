import { create } from "zustand";
import type { Me, Person, Presence, ShelvedJob } from "../../workroom/protocol/index.ts";

export type MeInside = Extract<Me, { state: "signed-in" }>;

interface RoomState {
  /** Who is signed in at the workroom of this address; undefined where there is none. */
  me?: Me | undefined;
  /** Whether its server answered last. */
  isOnline: boolean;
  people: readonly Person[];
  /** Who has which job open now. */
  here: readonly Presence[];
  /** Its shelf, the latest first; undefined until it was read. */
  jobs?: readonly ShelvedJob[];
  /** Counts the changes of work in hand that were told of. */
  workNews: number;
  /** The same of the shop and what is promised of its stock. */
  shopNews: number;
  /** An edit that the server turned down, to be said. */
  turnedDown?: string | undefined;
  /** Why edits of the open job wait although the server answers. */
  notKept?: string | undefined;
}

export const useRoom = create<RoomState>()(() => ({
  isOnline: false,
  people: [],
  here: [],
  workNews: 0,
  shopNews: 0,
}));

const KEY = "shadewright-workroom";
/** Work in hand as it was read last, and what of it waits to be sent. */
export const WORK_KEYS = { read: "shadewright-work", waiting: "shadewright-work-waiting" } as const;

/** Codes of labels that this device has seen. */
export const LABELS_KEY = "shadewright-labels";

/** Who was signed in when the server answered last, for days without it. */
export function rememberedMe(): Me | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null") as Me | null;
    return kept?.state === "signed-in" ? kept : undefined;
  } catch {
    return undefined;
  }
}

export function setMe(me: Me): void {
  useRoom.setState({ me, isOnline: true });
  try {
    if (me.state === "signed-in") localStorage.setItem(KEY, JSON.stringify(me));
  } catch {
    // A browser that keeps nothing asks again next time.
  }
}

/** Signed out by one's own wish: this device forgets who it was. */
export function forgetMe(): void {
  for (const key of [KEY, LABELS_KEY, ...Object.values(WORK_KEYS)]) localStorage.removeItem(key);
  useRoom.setState({ me: { state: "signed-out" }, people: [], here: [], jobs: [] });
}

/** The name of a person as it stands in a sentence. */
export function personName(people: readonly Person[], id: string): string {
  return people.find((person) => person.id === id)?.name ?? "someone who left";
}
