import type { News } from "../../workroom/protocol/index.ts";
import { inWorkroom } from "../store/store.ts";
import type { StoreDoor } from "../store/store-door.ts";
import { type NewsFor, readNews, sentTo } from "./read-news.ts";

/** Between a change and its telling, so that many changes are told at once. */
const GATHER_MS = 60;
/** Behind the wake-ups, which can get lost: a workroom that was not read for so long is read. */
const POLL_MS = 5000;
/** Those that are due are read in turns, so that they do not all stand before the edits at once. */
const TURN_MS = 250;
/** Reads at a time: the connections are for the requests. */
const READS_AT_ONCE = 3;

/** Someone who watches a workroom. */
export interface Watcher {
  session: string;
  personId: string;
  isClass: boolean;
  tell(news: News): void;
  end(): void;
}

interface Desk {
  watchers: Set<Watcher>;
  last?: NewsFor;
  isReading: boolean;
  isStale: boolean;
  /** By a clock that nobody sets, ms. */
  readAtMs: number;
}

/** Reads each watched workroom when something happened in it, and every few seconds, and tells what changed. */
export class NewsDesk {
  readonly #door: StoreDoor;
  readonly #desks = new Map<string, Desk>();
  readonly #toWake = new Set<string>();
  #timer: NodeJS.Timeout | undefined;
  #poll: NodeJS.Timeout | undefined;
  #stopListening: (() => void) | undefined;
  #reading = 0;
  readonly #waiting: (() => void)[] = [];

  constructor(door: StoreDoor) {
    this.#door = door;
  }

  /** Tells all processes that something was written in a workroom. */
  wake(workroomId: string): void {
    this.#toWake.add(workroomId);
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined;
      const workrooms = [...this.#toWake];
      this.#toWake.clear();
      this.#door
        .open()
        .then((store) => store.wake(workrooms))
        // Nobody hears of it at once; those who poll do.
        .catch(() => {});
    }, GATHER_MS).unref();
  }

  /** Begins to tell; gives back how to stop. */
  async watch(workroomId: string, watcher: Watcher): Promise<() => void> {
    const store = await this.#door.open();
    this.#stopListening ??= store.onWake((workrooms) => {
      for (const one of workrooms) this.#read(one);
    });
    this.#poll ??= setInterval(() => this.#readDue(performance.now()), TURN_MS).unref();
    const desk = this.#desks.get(workroomId) ?? {
      ...{ watchers: new Set<Watcher>(), isReading: false, isStale: false },
      readAtMs: performance.now(),
    };
    this.#desks.set(workroomId, desk);
    desk.watchers.add(watcher);
    desk.last ??= await inWorkroom(store, workroomId, (trx) => readNews(trx, workroomId));
    watcher.tell(sentTo(watcher, desk.last));
    return () => {
      desk.watchers.delete(watcher);
      if (desk.watchers.size === 0 && this.#desks.get(workroomId) === desk) this.#desks.delete(workroomId);
      if (this.#desks.size === 0) this.#rest();
    };
  }

  close(): void {
    for (const { watchers } of this.#desks.values()) for (const watcher of watchers) watcher.end();
    this.#desks.clear();
    clearTimeout(this.#timer);
    this.#rest();
  }

  #rest(): void {
    clearInterval(this.#poll);
    this.#poll = undefined;
    this.#stopListening?.();
    this.#stopListening = undefined;
  }

  /** The next turn of those that were not read for long, the longest first. */
  #readDue(nowMs: number): void {
    const due = [...this.#desks].filter(([, desk]) => !desk.isReading && nowMs - desk.readAtMs >= POLL_MS);
    const turn = Math.ceil((this.#desks.size * TURN_MS) / POLL_MS);
    const first = due.toSorted(([, a], [, b]) => a.readAtMs - b.readAtMs).slice(0, turn);
    for (const [one] of first) this.#read(one);
  }

  #read(workroomId: string): void {
    const desk = this.#desks.get(workroomId);
    if (!desk) return;
    if (desk.isReading) {
      desk.isStale = true;
      return;
    }
    desk.isReading = true;
    this.#inTurn(() => this.#tell(workroomId, desk))
      // The database is away: the next poll tries again.
      .catch(() => {})
      .finally(() => {
        desk.isReading = false;
        if (desk.isStale) this.#read(workroomId);
      });
  }

  async #inTurn(work: () => Promise<void>): Promise<void> {
    if (this.#reading >= READS_AT_ONCE) await new Promise<void>((go) => this.#waiting.push(go));
    this.#reading++;
    try {
      await work();
    } finally {
      this.#reading--;
      this.#waiting.shift()?.();
    }
  }

  async #tell(workroomId: string, desk: Desk): Promise<void> {
    desk.readAtMs = performance.now();
    // What is written from here on is read again.
    desk.isStale = false;
    const store = await this.#door.open();
    const now = await inWorkroom(store, workroomId, (trx) => readNews(trx, workroomId));
    const { last } = desk;
    desk.last = now;
    for (const watcher of desk.watchers) {
      if (!now.sessions.has(watcher.session)) watcher.end();
      else {
        const news = sentTo(watcher, now, last);
        if (news.jobs.length > 0 || news.isShelfChanged || news.isWorkChanged || isHereChanged(last, now)) {
          watcher.tell(news);
        }
      }
    }
  }
}

function isHereChanged(before: NewsFor | undefined, now: NewsFor): boolean {
  return JSON.stringify(before?.here) !== JSON.stringify(now.here);
}
