import { createHash } from "node:crypto";
import { Refused } from "../refused.ts";

/** Requests of one address in a minute, to one process: several screens at work stay far below. */
const MOST_A_MINUTE = 1200;
/** Requests of someone who has not signed in: what they can ask is guessed at. */
const MOST_UNKNOWN_A_MINUTE = 60;
const MINUTE_MS = 60_000;
/** Addresses and cookies remembered at a time. */
const MOST_REMEMBERED = 10_000;
/** So long a cookie that belonged to a session is taken to do so for counting, ms. */
const PROVEN_MS = 10 * MINUTE_MS;

/**
 * Counts requests by address, minute by minute. A cookie makes a request one of somebody known only where it belongs to
 * a session; whether it does is looked up no more often than strangers may ask. Time is told by a clock that nobody sets.
 */
export class RateLimit {
  #counts = new Map<string, number>();
  #since = Number.NEGATIVE_INFINITY;
  /** Cookies that belong to a session, hashed, and until when that is believed. */
  readonly #proven = new Map<string, number>();

  /**
   * @param isSession whether a cookie belongs to a session
   * @param nowMs of a clock that only goes forward
   * @throws {Refused} above the limit
   */
  async count(
    address: string,
    cookie: string | undefined,
    isSession: (cookie: string) => Promise<boolean>,
    nowMs: number,
  ): Promise<void> {
    if (nowMs - this.#since >= MINUTE_MS || this.#counts.size > MOST_REMEMBERED) {
      this.#counts.clear();
      this.#since = nowMs;
    }
    const isKnown = cookie !== undefined && (await this.#isKnown(address, cookie, isSession, nowMs));
    if (isKnown) this.#add(`known ${address}`, MOST_A_MINUTE);
    else if (cookie === undefined) this.#add(`unknown ${address}`, MOST_UNKNOWN_A_MINUTE);
  }

  /** A cookie whose session has ended. */
  forget(cookie: string): void {
    this.#proven.delete(hashOf(cookie));
  }

  async #isKnown(
    address: string,
    cookie: string,
    isSession: (cookie: string) => Promise<boolean>,
    nowMs: number,
  ): Promise<boolean> {
    const key = hashOf(cookie);
    if ((this.#proven.get(key) ?? Number.NEGATIVE_INFINITY) > nowMs) return true;
    // Counted as a stranger's before it is looked up, so that many at once are not all looked up.
    const stranger = `unknown ${address}`;
    this.#add(stranger, MOST_UNKNOWN_A_MINUTE);
    if (!(await isSession(cookie))) return false;
    this.#counts.set(stranger, Math.max(0, (this.#counts.get(stranger) ?? 0) - 1));
    if (this.#proven.size >= MOST_REMEMBERED) this.#proven.clear();
    this.#proven.set(key, nowMs + PROVEN_MS);
    return true;
  }

  #add(key: string, most: number): void {
    const count = (this.#counts.get(key) ?? 0) + 1;
    this.#counts.set(key, count);
    if (count > most) throw new Refused(429, "Too many requests. Wait a minute.");
  }
}

function hashOf(cookie: string): string {
  return createHash("sha256").update(cookie).digest("base64");
}
