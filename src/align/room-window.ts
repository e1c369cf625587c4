import type { InLine, ResolvedLine, ResolvedShade } from "../job/index.ts";
import type { LineAsk, Size } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";

/** One window of a room, measured, with what its style asks of a common line. */
export interface RoomWindow {
  resolved: ResolvedShade;
  size: Size;
  /** What it asks, or why it cannot follow a line, as the end of “… since”. */
  ask: LineAsk | string;
  /** Its cloth hangs flat, so that a pattern can be placed by a height above the floor. */
  hangsFlat: boolean;
  /** How it is made where it follows nothing. */
  own: { rows: number; raisedMm: number };
}

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
export function isFree({ settings }: Pick<RoomInput, "settings">, { resolved }: RoomWindow): boolean {
  return !settings.without.includes(resolved.shadeId);
}
