import type { Facet } from "../model.ts";
import { type Camera, type PicturePoint, seenBy } from "./camera.ts";

/** What stands behind a shade, mm as on the shade: z out into the room from the plane of its rings. */
export interface WindowBehind {
  /** Visible stretch of the wall, and its plane. */
  wall: { left: number; right: number; top: number; bottom: number };
  wallZ: number;
  /** The opening in it, with the pane that far back. */
  opening?: { x: number; y: number; width: number; height: number };
  paneZ: number;
  /** The board, its front at the plane of the rings. */
  board: { left: number; right: number; thickness: number; depth: number };
}

/** Plain plaster, painted wood, daylight through a pane: quiet behind any cloth. */
export const WINDOW_COLOURS = {
  wall: "#e6e1d8",
  reveal: "#f3f0e9",
  frame: "#fbfaf6",
  pane: "#dce8ef",
  wood: "#d9bf95",
} as const;
const { wall: WALL, reveal: REVEAL, frame: FRAME, pane: PANE, wood: WOOD } = WINDOW_COLOURS;
/** Bars of the sash, mm. */
const FRAME_MM = 45;
const BAR_MM = 22;

/** Wall, opening and board, all behind the cloth. */
export function windowFaces(behind: WindowBehind, camera: Camera): Facet[] {
  const see = seenBy(camera);
  const face = (colour: string, light: number, ...places: PicturePoint[]): Facet => ({
    points: places.map((place) => see(place).at),
    colour,
    light,
  });
  const upright = (colour: string, light: number, box: readonly number[], z: number): Facet => {
    const [left, top, right, bottom] = box as [number, number, number, number];
    return face(colour, light, [left, top, z], [right, top, z], [right, bottom, z], [left, bottom, z]);
  };
  const { wall, wallZ, paneZ, board } = behind;
  const faces = [upright(WALL, 0.97, [wall.left, wall.top, wall.right, wall.bottom], wallZ)];
  if (behind.opening !== undefined) {
    const { x: left, y: top, width, height } = behind.opening;
    const [right, bottom] = [left + width, top + height];
    faces.push(
      upright(PANE, 1, [left, top, right, bottom], paneZ),
      ...sashBoxes([left, top, right, bottom]).map((box) => upright(FRAME, 0.94, box, paneZ)),
      face(REVEAL, 0.72, [left, top, wallZ], [right, top, wallZ], [right, top, paneZ], [left, top, paneZ]),
      face(
        REVEAL,
        0.82,
        [left, top, wallZ],
        [left, top, paneZ],
        [left, bottom, paneZ],
        [left, bottom, wallZ],
      ),
      face(
        REVEAL,
        0.98,
        [right, top, wallZ],
        [right, top, paneZ],
        [right, bottom, paneZ],
        [right, bottom, wallZ],
      ),
      face(
        REVEAL,
        1,
        [left, bottom, wallZ],
        [right, bottom, wallZ],
        [right, bottom, paneZ],
        [left, bottom, paneZ],
      ),
    );
  }
  const { thickness, depth } = board;
  for (const x of [board.left, board.right])
    faces.push(face(WOOD, 0.85, [x, 0, 0], [x, 0, -depth], [x, thickness, -depth], [x, thickness, 0]));
  return faces;
}

type Box = [left: number, top: number, right: number, bottom: number];

/** Four sides of a frame, a bar down its middle and one across. */
export function sashBoxes([left, top, right, bottom]: Readonly<Box>): Box[] {
  const [x, y] = [(left + right) / 2, top + (bottom - top) * 0.5];
  return [
    [left, top, right, top + FRAME_MM],
    [left, bottom - FRAME_MM, right, bottom],
    [left, top, left + FRAME_MM, bottom],
    [right - FRAME_MM, top, right, bottom],
    [x - BAR_MM / 2, top, x + BAR_MM / 2, bottom],
    [left, y - BAR_MM / 2, right, y + BAR_MM / 2],
  ];
}
