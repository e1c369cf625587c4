import { Refused } from "../refused.ts";

/** Requests of one address in a minute, to one process: several screens at work stay far below. */
const MOST_A_MINUTE = 1200;
/** Requests of someone who has not signed in: what they can ask is guessed at. */
const MOST_UNKNOWN_A_MINUTE = 60;
const MINUTE_MS = 60_000;
/** Addresses remembered at a time. */
const MOST_ADDRESSES = 10_000;

/** Counts requests by address, minute by minute. */
export class RateLimit {
  #counts = new Map<string, number>();
  #since = 0;

  /** @throws {Refused} above the limit */
  count(address: string, isKnown: boolean, nowMs: number): void {
    if (nowMs - this.#since >= MINUTE_MS || this.#counts.size > MOST_ADDRESSES) {
      this.#counts.clear();
      this.#since = nowMs;
    }
    const key = `${isKnown} ${address}`;
    const count = (this.#counts.get(key) ?? 0) + 1;
    this.#counts.set(key, count);
    if (count > (isKnown ? MOST_A_MINUTE : MOST_UNKNOWN_A_MINUTE)) {
      throw new Refused(429, "Too many requests. Wait a minute.");
    }
  }
}
