import { alignWindows, type MotifStart, type RoomWindow } from "../align/index.ts";
import { type Finding, WorkingBook } from "../figures/index.ts";
import { type Job, type ResolvedShade, type Room, resolveLine } from "../job/index.ts";
import { chooseLiftParts } from "../lift/index.ts";
import { measure } from "../measure/index.ts";
import type { RowLayout } from "../shade-plan/index.ts";
import { STYLE_MODULES, STYLES_IN_LINE } from "../styles/index.ts";
import type { RoomPlan } from "./plan-types.ts";

/** What the room tells one of its shades. */
export interface AlignedShade {
  layout?: RowLayout;
  motif?: MotifStart;
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
 * Lines up one room before its shades are planned: each window is measured and asked what it needs, and the answer
 * is laid on top of its own settings. `resolved` are those, window by window; they are asked for only where needed.
 */
export function alignRoom(
  job: Job,
  room: Room,
  path: string,
  resolved: () => readonly ResolvedShade[],
): AlignedRoom {
  const book = new WorkingBook();
  const plain = { roomId: room.id, roomName: room.name };
  if (room.inLine === undefined) {
    return { room: { ...plain, workings: [] }, findings: [], shades: new Map() };
  }
  const answer = alignWindows(
    {
      path,
      roomName: room.name,
      units: job.units,
      inLine: room.inLine,
      settings: resolveLine(room.inLine),
      windows: resolved().map(ask),
    },
    book,
  );
  const shades = answer.alignment.windows.map(({ shadeId, layout }): [string, AlignedShade] => {
    const motif = answer.motifs.get(shadeId);
    const findings = answer.findings.filter((finding) => finding.shadeId === shadeId);
    return [
      shadeId,
      { ...(layout === undefined ? {} : { layout }), ...(motif === undefined ? {} : { motif }), findings },
    ];
  });
  return {
    room: { ...plain, alignment: answer.alignment, workings: book.workings },
    findings: answer.findings.filter(({ shadeId }) => shadeId === undefined),
    shades: new Map(shades),
  };
}

/** Measures one window and asks it what it needs; its own workings are written when it is planned. */
function ask(resolved: ResolvedShade): RoomWindow {
  const scratch = new WorkingBook();
  const style = STYLE_MODULES[resolved.style];
  const { values: size } = measure(resolved);
  const { columns } = style.columns(resolved, size, scratch);
  const liftParts = chooseLiftParts(resolved, size, columns, scratch);
  const { grid } = style.grid(resolved, size, columns, liftParts, scratch);
  const inLine = STYLES_IN_LINE[resolved.style];
  return {
    resolved,
    size,
    ask: typeof inLine === "string" ? inLine : inLine.ask(resolved, size, liftParts),
    hangsFlat: typeof inLine !== "string",
    own: { rows: grid.rows.length, raisedMm: grid.raisedHeightMm },
  };
}

/** The resolved shade as the room has it. */
export function followRoom(resolved: ResolvedShade, { layout, motif }: AlignedShade): ResolvedShade {
  const inLine = STYLES_IN_LINE[resolved.style];
  const placed =
    layout === undefined || typeof inLine === "string" ? resolved : inLine.follow(resolved, layout);
  if (motif === undefined) return placed;
  const pattern = { ...placed.making.pattern, place: "free" as const, offsetMm: motif.fromTopMm };
  return { ...placed, making: { ...placed.making, pattern } };
}
