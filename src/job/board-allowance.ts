import { inches } from "../units/index.ts";
import type { ResolvedMaking, ResolvedShade } from "./resolve.ts";

/** Stapled cloth passes over the board and an inch beyond; hook-and-loop turns down an inch and a half. */
const STAPLE_BEYOND_MM = inches(1);
const HOOK_TURN_DOWN_MM = inches(1.5);

/** Cloth beyond the top line, for the board, mm: as the maker set it, else by how the shade is fixed to the board. */
export function boardAllowanceMm({
  making,
  board,
}: Pick<ResolvedShade, "board"> & { making: Pick<ResolvedMaking, "hems" | "board"> }): number {
  const given = making.hems.boardAllowanceMm;
  if (given !== undefined) return given;
  return making.board.attachment === "staple" ? board.depthMm + STAPLE_BEYOND_MM : HOOK_TURN_DOWN_MM;
}
