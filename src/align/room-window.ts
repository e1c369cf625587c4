import { type InLine, type ReadOf, type ResolvedLine, reads } from "../job/index.ts";
import type { LineAsk, Size } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";

/** What lining up a room reads of each of its shades. */
export const ALIGN_READS = reads({
  shade: ["shadeId", "windowName", "path", "units", "ownGroups", "mount", "cloths"],
  making: ["mount", "pattern"],
  own: ["fold", "pattern"],
});

/** One window of a room, measured, with what its style asks of a common line. */
export interface RoomWindow {
  shade: ReadOf<typeof ALIGN_READS>;
  size: Size;
  /** What it asks, or why it cannot follow a line, as the end of “… since”. */
  ask: LineAsk | string;
  /** Its cloth hangs flat, so that a pattern can be placed by a height above the floor. */
  hangsFlat: boolean;
  /** How it is made where it follows nothing. */
  own: { rows: number; raisedMm: number };
}

/** A room that is to be in line. */
export interface RoomInput {
  /** JSON pointer of the room in the job. */
  path: string;
  roomName: string;
  units: UnitChoice;
  /** As the job has it, and with every question answered. */
  inLine: InLine;
  settings: ResolvedLine;
  /** In the order along the wall. */
  windows: readonly RoomWindow[];
}

/** Not left out of the line by the maker. */
export function isFree({ settings }: Pick<RoomInput, "settings">, { shade }: RoomWindow): boolean {
  return !settings.without.includes(shade.shadeId);
}
