import type { AlignedWindow } from "../shade-plan/index.ts";
import type { RoomWindow } from "./room-window.ts";
import type { Hindrance } from "./why.ts";

/** What became of one window, with what is in its way. */
export interface WindowOutcome {
  window: RoomWindow;
  aligned: AlignedWindow;
  hindrance?: Hindrance;
}
