import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Job, PartEntry, PartKind } from "../../job/index.ts";
import type { Replica } from "../../workroom/merge/index.ts";
import type { History } from "../state/history.ts";

/** A job as it is kept, with its undo history. `revision` counts its saves, so that no tab overwrites another. */
export interface StoredJob {
  id: string;
  revision: number;
  savedAt: number;
  job: Job;
  history: History;
  /** Of a job that a workroom shares: this device's side of it. */
  room?: Replica;
}

/** What the shelf shows before any job is opened. */
export interface Card {
  id: string;
  name: string;
  client?: string;
  demo: boolean;
  /** A workroom shares it. */
  inRoom?: true;
  windows: number;
  savedAt: number;
}

/** A job that was taken off the shelf, with its card, until it is put back or its time is over. */
export interface BinnedJob {
  binId: string;
  removedAt: number;
  /** Days since, counted when the planner is opened on another day: a clock that is set wrong empties no bin. */
  waitedDays?: number;
  /** The day on which it was last counted, days since 1970. */
  countedOn?: number;
  card: Card;
  stored: StoredJob;
}

/** A part on the bench, which all jobs share. */
export interface StoredPart {
  /** Kind and id. */
  key: string;
  kind: PartKind;
  part: PartEntry;
  /** When it was laid there: the order of the bench. */
  since: number;
}

interface Shelf extends DBSchema {
  /** Its index tells how often a job was saved without reading the job. */
  jobs: { key: string; value: StoredJob; indexes: { revision: [id: string, revision: number] } };
  cards: { key: string; value: Card };
  marks: { key: string; value: boolean };
  bin: { key: string; value: BinnedJob };
  parts: { key: string; value: StoredPart };
}

export type ShelfDatabase = IDBPDatabase<Shelf>;

const NAME = "shadewright";
const VERSION = 4;

let opened: Promise<ShelfDatabase> | undefined;

/** The shelf's database, opened once and again after it was lost. */
export function shelfDatabase(): Promise<ShelfDatabase> {
  opened ??= openDB<Shelf>(NAME, VERSION, {
    upgrade(database, before, _version, transaction) {
      if (before < 1) {
        database.createObjectStore("jobs", { keyPath: "id" });
        database.createObjectStore("cards", { keyPath: "id" });
        database.createObjectStore("marks");
      }
      if (before < 2) database.createObjectStore("bin", { keyPath: "binId" });
      if (before < 3) database.createObjectStore("parts", { keyPath: "key" });
      if (before < 4) transaction.objectStore("jobs").createIndex("revision", ["id", "revision"]);
    },
    // A newer version in another tab must not wait for this one.
    blocking: () => closeShelfDatabase(),
    terminated: () => {
      opened = undefined;
    },
  });
  opened.catch(() => {
    opened = undefined;
  });
  return opened;
}

export function closeShelfDatabase(): void {
  opened?.then((database) => database.close()).catch(() => {});
  opened = undefined;
}
