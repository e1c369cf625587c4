import { groupedBy } from "../figures/index.ts";
import { type MotifLine, motifFallMm } from "../shade-plan/index.ts";
import { remainderMm, SAME_LENGTH_MM, toMark } from "../units/index.ts";
import { isFree, type RoomInput, type RoomWindow } from "./room-window.ts";

/** Where a pattern begins on one window, set by the room. */
export interface MotifStart {
  clothId: string;
  /** From the top line down to where a repeat begins, mm. */
  fromTopMm: number;
  /** As it hangs, mm. */
  repeatMm: number;
}

/** Pattern lines of a room. */
export interface Motifs {
  lines: MotifLine[];
  /** By shade. */
  starts: Map<string, MotifStart>;
  /** Shades whose maker placed the motif elsewhere, with the line that they miss. */
  elsewhere: { window: RoomWindow; line: MotifLine }[];
}

/** Patterned cloths on two or more windows: each begins anew at the same heights above the floor. */
export function motifLines(input: RoomInput): Motifs {
  const { settings, units } = input;
  const motifs: Motifs = { lines: [], starts: new Map(), elsewhere: [] };
  if (!settings.motif) return motifs;
  const patterned = input.windows
    .filter((one) => isFree(input, one))
    .flatMap((window) => patternedOf(window) ?? []);
  for (const group of groupedBy(patterned, ({ window }) => window.shade.cloths.face.id).values()) {
    if (group.length > 1) addLine(motifs, group, (mm) => toMark(mm, units.ruler));
  }
  return motifs;
}

interface Patterned {
  window: RoomWindow;
  topMm: number;
  /** Repeat as it hangs, shrinkage done. */
  repeatMm: number;
  /** A level at which the maker has it begin, where the maker placed it on this shade. */
  placedMm?: number;
}

function patternedOf(window: RoomWindow): Patterned | undefined {
  const { shade, size, hangsFlat } = window;
  const { repeat, shrinkLength = 0 } = shade.cloths.face;
  const topMm = size.topAboveFloorMm;
  if (repeat === undefined || topMm === undefined || !hangsFlat) return undefined;
  const repeatMm = repeat.verticalMm * (1 - shrinkLength);
  if (shade.own?.pattern?.place === undefined) return { window, topMm, repeatMm };
  const fromTopMm = motifFallMm(shade.making.pattern, size.finishedLengthMm, repeatMm);
  return { window, topMm, repeatMm, placedMm: topMm - fromTopMm };
}

/** One start line from the top for a set: at the top line that most of them share, or where the maker placed it. */
function addLine(motifs: Motifs, group: readonly Patterned[], onMark: (mm: number) => number): void {
  const [first] = group;
  if (first === undefined) return;
  const { repeatMm } = first;
  const { face } = first.window.shade.cloths;
  const levelMm = group.find(({ placedMm }) => placedMm !== undefined)?.placedMm ?? onMark(commonTop(group));
  const line: MotifLine = { clothId: face.id, clothName: face.name, repeatMm, levelMm, windows: [] };
  for (const { window, topMm, placedMm } of group) {
    const { shadeId } = window.shade;
    if (placedMm !== undefined && awayFrom(levelMm - placedMm, repeatMm) > SAME_LENGTH_MM) {
      motifs.elsewhere.push({ window, line });
      continue;
    }
    const hemMm = topMm - window.size.finishedLengthMm;
    line.windows.push({ shadeId, fromHemMm: remainderMm(levelMm - hemMm, repeatMm) });
    if (placedMm === undefined) {
      motifs.starts.set(shadeId, {
        clothId: face.id,
        fromTopMm: remainderMm(topMm - levelMm, repeatMm),
        repeatMm,
      });
    }
  }
  motifs.lines.push(line);
}

function commonTop(group: readonly Patterned[]): number {
  const times = (mm: number) => group.filter(({ topMm }) => Math.abs(topMm - mm) < SAME_LENGTH_MM).length;
  const [best] = [...group].sort((a, b) => times(b.topMm) - times(a.topMm) || b.topMm - a.topMm);
  return best?.topMm ?? 0;
}

/** How far a length is from the nearest whole number of steps, mm. */
export function awayFrom(mm: number, stepMm: number): number {
  return Math.abs(mm - Math.round(mm / stepMm) * stepMm);
}
