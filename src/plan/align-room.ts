import { alignWindows, type MotifStart, type RoomWindow } from "../align/index.ts";
import { type Finding, workingOf } from "../figures/index.ts";
import { type Job, type ResolvedShade, type Room, resolveLine } from "../job/index.ts";
import type { RowLayout } from "../shade-plan/index.ts";
import { STYLE_MODULES } from "../styles/index.ts";
import { type LaidShade, layShade } from "./lay-shade.ts";
import type { RoomPlan } from "./plan-types.ts";

/** What the room tells one of its shades. */
export interface AlignedShade {
  layout?: RowLayout;
  motif?: MotifStart;
  /** As it is laid where it follows nothing. */
  own?: LaidShade;
  findings: Finding[];
}

/** A room with what its windows share, and what each of them is reported. */
export interface AlignedRoom {
  room: RoomPlan;
  /** Findings of the room as a whole. */
  findings: Finding[];
  /** By shade; empty where the room is not to be in line. */
  shades: ReadonlyMap<string, AlignedShade>;
}

/**
 * Lines up one room before its shades are planned: each window is measured, laid and asked what it needs, and the
 * answer is laid on top of its own settings. `resolved` are those, window by window; they are asked for only where needed.
 */
export function alignRoom(
  job: Job,
  room: Room,
  path: string,
  resolved: () => readonly ResolvedShade[],
): AlignedRoom {
  const plain = { roomId: room.id, roomName: room.name };
  if (room.inLine === undefined) {
    return { room: { ...plain, workings: [] }, findings: [], shades: new Map() };
  }
  const own = resolved().map(layShade);
  const { values, findings, workings } = alignWindows({
    path,
    roomName: room.name,
    units: job.units,
    inLine: room.inLine,
    settings: resolveLine(room.inLine),
    windows: own.map(ask),
  });
  const { alignment, motifs } = values;
  const shades = own.map((one, i): [string, AlignedShade] => {
    const { shadeId } = one.shade;
    const layout = alignment.windows[i]?.layout;
    const motif = motifs.get(shadeId);
    return [
      shadeId,
      {
        own: one,
        ...(layout === undefined ? {} : { layout }),
        ...(motif === undefined ? {} : { motif }),
        findings: findings.filter((finding) => finding.shadeId === shadeId),
      },
    ];
  });
  return {
    room: { ...plain, alignment, workings: workings.map(workingOf) },
    findings: findings.filter(({ shadeId }) => shadeId === undefined),
    shades: new Map(shades),
  };
}

/** Asks one window what it needs of a common line. */
function ask({ shade, measured: { size }, headrail, laid }: LaidShade): RoomWindow {
  const { inLine } = STYLE_MODULES[shade.style];
  const { grid } = laid.values;
  return {
    shade,
    size,
    ask: typeof inLine === "string" ? inLine : inLine.ask({ shade, size, headrailNeededMm: headrail.value }),
    hangsFlat: typeof inLine !== "string",
    own: { rows: grid.rows.length, raisedMm: grid.raisedHeightMm },
  };
}

/** The resolved shade as the room has it. */
export function followRoom(shade: ResolvedShade, { layout, motif }: AlignedShade): ResolvedShade {
  const { inLine } = STYLE_MODULES[shade.style];
  const { making } = shade;
  const follows = layout !== undefined && typeof inLine !== "string";
  if (!follows && motif === undefined) return shade;
  const pattern =
    motif === undefined
      ? making.pattern
      : { ...making.pattern, place: "free" as const, offsetMm: motif.fromTopMm };
  const fold = follows ? inLine.follow(making.fold, layout) : making.fold;
  return { ...shade, making: { ...making, fold, pattern } };
}
