import type { Store } from "./store.ts";

/** Opens the store when the first request needs it. */
export interface StoreDoor {
  /** Whether there may be a workroom in it; without one nothing is opened. */
  isBegun(): Promise<boolean>;
  /** Notes that there is one. */
  begin(): Promise<void>;
  open(): Promise<Store>;
}
