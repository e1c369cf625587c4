import type { RouteName } from "../../workroom/protocol/index.ts";
import type { Workroom } from "../room.ts";
import type { RoomTrx } from "../store/store.ts";
import type { PersonRow } from "../store/tables.ts";

/** A request as any handler gets it. */
export interface AskedByAnyone {
  room: Workroom;
  params: Record<string, string>;
  query: (name: string) => string | undefined;
  /** Read from JSON; undefined where there was none. */
  body: unknown;
  /** Origin of the page that asked, ours. */
  origin: string;
  address: string;
  device: string;
  cookie: string | undefined;
}

/** A request of someone who is signed in and may do what they ask, within the one transaction that it is done in. */
export interface AskedByPerson extends AskedByAnyone {
  trx: RoomTrx;
  workroomId: string;
  person: PersonRow;
  session: string;
  /** To be done once what was written stands. */
  afterwards(work: () => void): void;
}

/** What goes back. A plain `body` goes as JSON. */
export interface Answer {
  status?: 200 | 201;
  body?: unknown;
  /** The session cookie: a new one, or null to take it away. */
  cookie?: string | null;
  file?: { bytes: Uint8Array | string; type: string; name: string };
}

export type AnyoneHandler = (asked: AskedByAnyone) => Promise<Answer>;
export type PersonHandler = (asked: AskedByPerson) => Promise<Answer>;

/** Handlers of a group of routes, those of anyone and those of people apart. */
export type AnyoneHandlers = Partial<Record<RouteName, AnyoneHandler>>;
export type PersonHandlers = Partial<Record<RouteName, PersonHandler>>;
