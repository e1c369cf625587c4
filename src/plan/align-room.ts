import { alignWindows, type MotifStart, type RoomWindow } from "../align/index.ts";
import { type Finding, lazy, workingOf } from "../figures/index.ts";
import { type InLine, type ResolvedShade, resolveLine } from "../job/index.ts";
import type { RowLayout } from "../shade-plan/index.ts";
import { STYLE_MODULES } from "../styles/index.ts";
import type { UnitChoice } from "../units/index.ts";

import type { RoomPlan } from "./plan-types.ts";

/** What the room tells one of its shades. */
export interface AlignedShade {
  layout?: RowLayout;
  motif?: MotifStart;
  findings: Finding[];
}

/** A room with what its windows share, and what each of them is told. */
export interface AlignedRoom {
  room: RoomPlan;
  /** Findings of the room as a whole. */
  findings: Finding[];
  /** By shade; empty where the room is not to be in line. */
  shades: ReadonlyMap<string, AlignedShade>;
}

/** What lining up a room reads. */
export interface RoomToAlign {
  roomId: string;
  roomName: string;
  path: string;
  units: UnitChoice;
  inLine: InLine;
  /** Measured, and asked what they need, in the order along the wall. */
  windows: readonly RoomWindow[];
}

/** A room whose windows are not to be in line. */
export function roomByItself(roomId: string, roomName: string): AlignedRoom {
  return { room: { roomId, roomName, workings: [] }, findings: [], shades: new Map() };
}

/** Lines up one room before its shades are planned; the answer is laid on top of their own settings. */
export function alignRoom({ roomId, ...input }: RoomToAlign): AlignedRoom {
  const answer = alignWindows({ ...input, settings: resolveLine(input.inLine) });
  const { alignment, motifs } = answer.values;
  const shades = alignment.windows.map(({ shadeId, layout }): [string, AlignedShade] => {
    const motif = motifs.get(shadeId);
    const findings = answer.findings.filter((finding) => finding.shadeId === shadeId);
    return [
      shadeId,
      { ...(layout === undefined ? {} : { layout }), ...(motif === undefined ? {} : { motif }), findings },
    ];
  });
  const workings = lazy(() => answer.workings.map(workingOf));
  return {
    room: {
      roomId,
      roomName: input.roomName,
      alignment,
      get workings() {
        return workings();
      },
    },
    findings: answer.findings.filter(({ shadeId }) => shadeId === undefined),
    shades: new Map(shades),
  };
}

/** The resolved shade as the room has it. */
export function followRoom(shade: ResolvedShade, { layout, motif }: AlignedShade): ResolvedShade {
  const { inLine } = STYLE_MODULES[shade.style];
  const { making } = shade;
  const follows = layout !== undefined && typeof inLine !== "string";
  if (!follows && motif === undefined) return shade;
  const fold = follows ? inLine.follow(making.fold, layout) : making.fold;
  const pattern =
    motif === undefined
      ? making.pattern
      : { ...making.pattern, place: "free" as const, offsetMm: motif.fromTopMm };
  return { ...shade, making: { ...making, fold, pattern } };
}
