import type { Plan, ShadePlan } from "../../plan/index.ts";
import type { RoomAlignment } from "../../shade-plan/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import type { Drawing, Facet, Fact, Point, Primitive, Role } from "../model.ts";
import { textWidthEm } from "../placing/text-width.ts";
import { drawFront } from "./front.ts";
import { dimensionOf, line, name, note } from "./shapes.ts";
import { lengthFact, raiseName } from "./sheet-input.ts";
import { BETWEEN_MM, type Standing, standInRoom } from "./stand-in-room.ts";

/** What of a plan the drawing of a room shows. */
export interface RoomView {
  roomId: string;
  roomName: string;
  /** Which part of a long wall it is, from 1. */
  part?: number;
  /** In the order along the wall. */
  shades: readonly ShadePlan[];
  alignment?: RoomAlignment;
}

export interface RoomOptions {
  /** 0 lowered, 1 raised. */
  raise?: number;
  /** Names under the windows; a screen that writes its own leaves them out. */
  names?: boolean;
  /** Heights and spacing of the shared levels. */
  measures?: boolean;
  /** By the id of its shade: how it hangs at this height (`smallPicture`), instead of its lines. */
  pictures?: ReadonlyMap<string, readonly Facet[]>;
}

/** More windows than this are drawn on sheets of their own: on one they would be specks. */
const MOST_ON_A_SHEET = 8;

/** The rooms of a plan as they are drawn, long walls in parts; those with a window. */
export function roomViews({ rooms, shades }: Pick<Plan, "rooms" | "shades">): RoomView[] {
  return rooms.flatMap(({ roomId, roomName, alignment }) => {
    const own = shades.filter((shade) => shade.roomId === roomId);
    const isLong = own.length > MOST_ON_A_SHEET;
    const views: RoomView[] = [];
    for (let from = 0; from < own.length; from += MOST_ON_A_SHEET) {
      const shown = own.slice(from, from + MOST_ON_A_SHEET);
      views.push({
        roomId,
        roomName: isLong ? `${roomName}, windows ${from + 1} to ${from + shown.length}` : roomName,
        ...(isLong ? { part: from / MOST_ON_A_SHEET + 1 } : {}),
        shades: shown,
        ...(alignment === undefined ? {} : { alignment }),
      });
    }
    return views;
  });
}

/** Lines that belong to one shade's own sheet. */
const LEFT_OUT: ReadonlySet<Role> = new Set<Role>(["floor", "ghost"]);

/**
 * All windows of a room to one scale on one floor, seen from the room, with the levels that their folds share as
 * light lines right across.
 */
export function drawRoom(
  { units }: Pick<Plan, "units">,
  view: RoomView,
  { raise = 0, names = true, measures = true, pictures }: RoomOptions = {},
): Drawing {
  const standing = standInRoom(view.shades);
  const { id, words } = raiseName(raise);
  const wall = wallOf(standing);
  const levels = levelsShown(view, raise);
  return {
    id: `room${view.part === undefined ? "" : `-${view.part}`}${id}`,
    title: view.roomName,
    caption: `Seen from the room, to one scale. ${words}.`,
    primitives: [
      ...standing.flatMap((one) => frontOf(one, units, raise, pictures?.get(one.shade.shadeId))),
      ...(wall.measured ? [line("floor", across(wall, 0))] : []),
      ...(raise > 0 ? [] : standing.flatMap((one) => motifOn(one, view))),
      ...levels.map((mm) => line("level", across(wall, -mm))),
      ...(measures ? levelMeasures(view, levels, wall, raise, units) : []),
      ...(names ? standing.flatMap((one) => nameOf(one, view, wall, units)) : []),
    ],
    facts: facts(view, raise, units),
  };
}

interface Wall {
  left: number;
  right: number;
  /** The height of some window above the floor is known. */
  measured: boolean;
}

function wallOf(standing: readonly Standing[]): Wall {
  const last = standing.at(-1);
  const right = last === undefined ? 0 : last.xMm + (last.widthMm + last.widestMm) / 2;
  return {
    left: -BETWEEN_MM / 2,
    right: right + BETWEEN_MM / 2,
    measured: standing.some(({ measured }) => measured),
  };
}

function across({ left, right }: Wall, y: number): Point[] {
  return [
    [left, y],
    [right, y],
  ];
}

/** Heights above the floor: of the rows, or of the hems once all is raised. */
function levelsShown({ alignment }: RoomView, raise: number): number[] {
  if (alignment === undefined) return [];
  if (raise < 1) return alignment.levelsMm;
  return alignment.raisedHemMm === undefined ? [] : [alignment.raisedHemMm];
}

function levelMeasures(
  { alignment }: RoomView,
  levels: readonly number[],
  { left, right }: Wall,
  raise: number,
  units: UnitChoice,
): Primitive[] {
  const heights = levels.map((mm) =>
    dimensionOf({ from: [right, 0], to: [right, -mm], offset: -3, running: "levels" }, units),
  );
  const [lowest, next] = levels;
  const isOneStep =
    lowest !== undefined &&
    next !== undefined &&
    alignment?.spacingMm !== undefined &&
    Math.abs(next - lowest - alignment.spacingMm) < 1e-6;
  if (raise >= 1 || !isOneStep) return heights;
  return [
    ...heights,
    dimensionOf({ from: [left, -lowest], to: [left, -next], offset: 3, figure: "align.spacing" }, units),
  ];
}

/** What is seen round and behind the cloth where that is a picture. */
const BEHIND: ReadonlySet<Role> = new Set<Role>(["opening", "glass", "wall", "board", "covering"]);
const BEFORE: ReadonlySet<Role> = new Set<Role>(["cord", "drive", "loop", "wand"]);
/** Where the section is the same all across, its folds lie in the picture where they are drawn: which ones line up shows. */
const FOLDS: ReadonlySet<Role> = new Set<Role>(["fold", "crease"]);

function frontOf(
  { shade, xMm, topMm }: Standing,
  units: UnitChoice,
  raise: number,
  picture: readonly Facet[] | undefined,
): Primitive[] {
  const { primitives } = drawFront({ units, shade, raise });
  const shown = (isShown: (role: Role) => boolean) =>
    primitives.flatMap((primitive) => (isShown(primitive.role) ? moved(primitive, xMm, topMm) : []));
  if (picture === undefined) return shown((role) => !LEFT_OUT.has(role));
  const faces = picture.map((face) => ({
    ...face,
    points: face.points.map(([x, y]): Point => [x + xMm, y + topMm]),
  }));
  return [
    ...shown((role) => BEHIND.has(role)),
    { kind: "facets", role: "picture", faces },
    ...shown((role) => BEFORE.has(role) || (shade.folds !== undefined && FOLDS.has(role))),
  ];
}

/** Shapes move; measures and words stay on the shade's own page. */
function moved(primitive: Primitive, dx: number, dy: number): Primitive[] {
  // What can be pressed belongs to one shade, and here there are several.
  const { figure: _figure, field: _field, part: _part, ...bare } = primitive;
  if (bare.kind === "polyline") {
    return [{ ...bare, points: bare.points.map(([x, y]) => [x + dx, y + dy] as const) }];
  }
  if (bare.kind === "circle") {
    const [x, y] = bare.centre;
    return [{ ...bare, centre: [x + dx, y + dy] }];
  }
  return [];
}

/** Repeats closer than this would hide the cloth, mm. */
const CLOSEST_REPEAT_MM = 100;

/** Where the pattern begins anew, on the shades that share a motif line. */
function motifOn({ shade, xMm, topMm, widthMm, heightMm }: Standing, { alignment }: RoomView): Primitive[] {
  const motif = alignment?.motifs.find(({ windows }) =>
    windows.some(({ shadeId }) => shadeId === shade.shadeId),
  );
  const fromHemMm = motif?.windows.find(({ shadeId }) => shadeId === shade.shadeId)?.fromHemMm;
  if (motif === undefined || fromHemMm === undefined || motif.repeatMm < CLOSEST_REPEAT_MM) return [];
  const lines: Primitive[] = [];
  for (let mm = fromHemMm; mm <= heightMm; mm += motif.repeatMm) {
    const y = topMm + heightMm - mm;
    lines.push(
      line("repeatLine", [
        [xMm, y],
        [xMm + widthMm, y],
      ]),
    );
  }
  return lines;
}

/** Longer names take two lines where they have a gap. */
const LONG_NAME = 12;

/** Under its window: its name, its size, or why its folds are not at the levels. */
function nameOf(
  { shade, xMm, widthMm, topMm, heightMm, widestMm, measured }: Standing,
  { alignment }: RoomView,
  wall: Wall,
  units: UnitChoice,
): Primitive[] {
  const at: Point = [xMm + widthMm / 2, wall.measured ? 0 : topMm + heightMm];
  const roomMm = [widestMm + 0.8 * BETWEEN_MM, 400] as const;
  const own = alignment?.windows.find(({ shadeId }) => shadeId === shade.shadeId);
  const { finishedWidthMm, finishedLengthMm } = shade.size;
  const size = `${lengthText(finishedWidthMm, units)} × ${lengthText(finishedLengthMm, units)}`;
  const apart = alignment !== undefined && alignment.levelsMm.length > 0 && own?.follows !== "levels";
  const under = wall.measured && !measured ? "height not measured" : apart ? "not on the levels" : size;
  const lines = inTwo(shade.windowName);
  const widest = Math.max(...lines.map(textWidthEm));
  return [
    ...lines.map((words, i) =>
      // Half a name is none: both lines shrink, or are left out, together.
      name(at, words, {
        shiftPaperMm: [0, 4 + 4 * i],
        roomMm: [(roomMm[0] * textWidthEm(words)) / widest, roomMm[1]],
      }),
    ),
    note(at, under, { shiftPaperMm: [0, 4.2 + 4 * lines.length], roomMm, yields: true }),
  ];
}

function inTwo(words: string): string[] {
  if (words.length <= LONG_NAME) return [words];
  const gaps = [...words.matchAll(/ /g)].map(({ index }) => index);
  const [middle] = gaps.sort((a, b) => Math.abs(a - words.length / 2) - Math.abs(b - words.length / 2));
  return middle === undefined ? [words] : [words.slice(0, middle), words.slice(middle + 1)];
}

function facts({ shades, alignment }: RoomView, raise: number, units: UnitChoice): Fact[] {
  return [
    ...shades.map((shade) => {
      const { finishedWidthMm, finishedLengthMm } = shade.size;
      const own = alignment?.windows.find(({ shadeId }) => shadeId === shade.shadeId);
      const size = `${lengthText(finishedWidthMm, units)} × ${lengthText(finishedLengthMm, units)}`;
      return { label: shade.windowName, text: own === undefined ? size : `${size}. ${own.words}` };
    }),
    ...(alignment?.spacingMm === undefined
      ? []
      : [lengthFact("Shared spacing of rows", alignment.spacingMm, units)]),
    ...(raise < 1 ? (alignment?.levelsMm ?? []) : []).map((mm, i) =>
      lengthFact(`Level ${i + 1} above the floor`, mm, units),
    ),
    ...(alignment?.raisedHemMm === undefined
      ? []
      : [lengthFact("Shared raised hem above the floor", alignment.raisedHemMm, units)]),
  ];
}
